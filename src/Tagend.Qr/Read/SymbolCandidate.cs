using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Three finder patterns looked at more closely: whether they belong to one symbol, and of what size.</summary>
/// <param name="Triple">In pixels of the whole picture.</param>
/// <param name="Patterns">1 where all that were seen are finder patterns turned as the lines between them say; about 0 where one is none.</param>
/// <param name="Side">By the finder patterns' own size, in modules.</param>
/// <param name="SidesByTiming">By the timing patterns across and down.</param>
/// <param name="Corners">The finder patterns' middles, and the fourth corner in the perspective that their sizes show.</param>
/// <param name="Shapes">The finder patterns in the level they are sampled in: corner, right, below.</param>
internal sealed record SymbolCandidate(
    FinderTriple Triple, float Patterns, float Side, (int Across, int Down) SidesByTiming, Quadrilateral Corners, FinderShape[] Shapes)
{
    private const long TimingLooks = 400;

    /// <summary>What a square seen straight on is worth against the patterns.</summary>
    private const float OddnessWeight = 0.25f;

    private const float TimingWeight = 0.6f;

    /// <summary>How far the finder patterns' own size may be off.</summary>
    private const float SideError = 0.14f;

    /// <summary>Whether both timing patterns say the same, and the finder patterns nearly.</summary>
    public bool HasTiming => SidesByTiming.Across == SidesByTiming.Down && SymbolLayout.IsSize(SidesByTiming.Across)
        && Math.Abs(SidesByTiming.Across - Side) < 3 + (SideError * Side);

    /// <summary>The likelier to be a symbol that can be read, the more.</summary>
    public float Evidence => Patterns - (OddnessWeight * Triple.Oddness) + (HasTiming ? TimingWeight : TimingWeight * (0.5f - Math.Min(0.5f, TimingError)));

    private float TimingError => (Math.Abs(SidesByTiming.Across - Side) + Math.Abs(SidesByTiming.Down - Side)) / (2 * Side);

    /// <summary>Sizes the symbol may have, the likeliest first.</summary>
    public IEnumerable<int> Sizes()
    {
        var nearest = ((int)Math.Round((Side - 17) / 4) * 4) + 17;
        var towards = Side > nearest ? 4 : -4;
        int[] sizes = nearest > 60 ? [nearest, nearest + towards, nearest - towards, nearest + (2 * towards)] : [nearest, nearest + towards, nearest - towards];
        int[] byTiming = HasTiming ? [SidesByTiming.Across] : [];
        return byTiming.Concat(sizes).Where(SymbolLayout.IsSize).Distinct();
    }

    /// <summary>The finder patterns' middles and the fourth corner of a symbol of a size: where one was not seen, the modules of the other two point there.</summary>
    public Quadrilateral CornersFor(int size)
    {
        if (Triple.Guessed is not { } guessed)
        {
            return Corners;
        }

        var (corner, right, below) = (Shapes[0], Shapes[1], Shapes[2]);
        var side = size - (2 * ModuleGrid.FinderInset);
        return guessed == Triple.Below ? Corners with { BottomLeft = corner.At(0, side), BottomRight = right.At(0, side) }
            : guessed == Triple.Right ? Corners with { TopRight = corner.At(side, 0), BottomRight = below.At(side, 0) }
            : Corners with { TopLeft = Between(right.At(-side, 0), below.At(0, -side)), BottomRight = Between(right.At(0, side), below.At(side, 0)) };

        static Point Between(Point a, Point b) => (a + b) * 0.5f;
    }

    /// <summary>Looks closer; null where one is no finder pattern.</summary>
    /// <param name="picture">The level to sample the symbol in.</param>
    /// <param name="scaled">In pixels of that level.</param>
    /// <param name="triple">The same in pixels of the whole picture.</param>
    /// <param name="leastPatterns">Less is something else.</param>
    /// <param name="looks">Pixels looked at, about.</param>
    public static SymbolCandidate? Of(GrayPicture picture, FinderTriple scaled, FinderTriple triple, float leastPatterns, out long looks)
    {
        var (across, down) = (scaled.Right.Middle - scaled.Corner.Middle, scaled.Below.Middle - scaled.Corner.Middle);
        var patterns = 1f;
        looks = 0;
        var shapes = new FinderShape[3];
        FinderPattern[] finders = [scaled.Corner, scaled.Right, scaled.Below];
        for (var i = 0; i < shapes.Length; i++)
        {
            looks += FinderShape.Looks;
            shapes[i] = FinderShape.Of(picture, finders[i], across, down);
            if (finders[i] == scaled.Guessed)
            {
                continue;
            }

            patterns = Math.Min(patterns, shapes[i].Correlation(picture));
            if (patterns < leastPatterns)
            {
                return null;
            }

            if (scaled.Guessed is not null)
            {
                // Where the third is, is known from the slant of these two.
                looks += FinderShape.LooksToFit;
                shapes[i] = shapes[i].Fitted(picture);
            }
        }

        looks += TimingLooks;
        var (corner, right, below) = (shapes[0], shapes[1], shapes[2]);

        // Of a guessed pattern nothing is known: the others' modules stand in.
        var guessed = scaled.Guessed;
        var acrossModule = Mean(guessed == scaled.Corner ? right.Across : corner.Across, guessed == scaled.Right ? corner.Across : right.Across);
        var downModule = Mean(guessed == scaled.Corner ? below.Down : corner.Down, guessed == scaled.Below ? corner.Down : below.Down);
        var side = (guessed == scaled.Below ? across.Length / acrossModule
            : guessed == scaled.Right ? down.Length / downModule
            : ((across.Length / acrossModule) + (down.Length / downModule)) / 2) + (2 * ModuleGrid.FinderInset);
        var timing = (
            TimingPattern.SideBy(picture, corner.Middle + ((corner.Across + corner.Down) * 3), right.Middle + ((right.Down - right.Across) * 3), side - 13),
            TimingPattern.SideBy(picture, corner.Middle + ((corner.Across + corner.Down) * 3), below.Middle + ((below.Across - below.Down) * 3), side - 13));
        var corners = guessed is null ? InPerspective(corner, right, below) : scaled.Corners;
        return new SymbolCandidate(triple, patterns, side, timing, corners, shapes);

        static float Mean(Point a, Point b) => (a.Length + b.Length) / 2;
    }

    /// <summary>The fourth corner: modules that get smaller along a side say how much farther away its end is.</summary>
    private static Quadrilateral InPerspective(FinderShape corner, FinderShape right, FinderShape below)
    {
        // Along a line a module's length goes with the square of 1 / (1 + g · share of the line).
        var g = Farther(corner.Across, right.Across);
        var h = Farther(corner.Down, below.Down);
        var (a, b, c) = (corner.Middle, right.Middle, below.Middle);
        var fourth = (a + ((b * (1 + g)) - a) + ((c * (1 + h)) - a)) * (1 / (1 + g + h));
        return new Quadrilateral(a, b, c, fourth);

        static float Farther(Point near, Point far) => Math.Clamp(MathF.Sqrt(near.Length / far.Length) - 1, -0.35f, 0.6f);
    }
}
