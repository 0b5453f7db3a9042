using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>How the strands are laid on the jig, a color after the other.</summary>
/// <param name="Colors">In the order they are laid.</param>
/// <param name="Tail">Length left at each tag end for tying.</param>
public sealed record Layup(ValueList<ColorShare> Colors, Length Tail)
{
    /// <summary>Of all colors; even for a whole piece.</summary>
    public int Strands
    {
        get
        {
            var sum = 0;
            foreach (var color in Colors)
            {
                sum += color.Strands;
            }

            return sum;
        }
    }

    /// <summary>Whole loops of all strands.</summary>
    public int Loops => Strands / 2;

    /// <summary>Gives each color its post: the first starts at A, the second at B, and so on (common practice).</summary>
    public static Layup Of(IEnumerable<(string Color, int Strands)> colors, Length tail)
    {
        var shares = new List<ColorShare>();
        foreach (var (color, strands) in colors)
        {
            shares.Add(new ColorShare(color, strands, shares.Count % 2 == 0 ? PieceEnd.A : PieceEnd.B));
        }

        return new Layup(shares.ToValueList(), tail);
    }

    /// <summary>What is tied at each post: the tag ends of its colors, or a dummy tag where there are none.</summary>
    public ValueList<EndTag> EndTags() => [EndTagAt(PieceEnd.A), EndTagAt(PieceEnd.B)];

    /// <summary>What is tied at one post.</summary>
    public EndTag EndTagAt(PieceEnd post)
    {
        var colors = new List<string>();
        foreach (var color in Colors)
        {
            if (color.Post == post || color.EndPost == post)
            {
                colors.Add(color.Color);
            }
        }

        return new EndTag(post, colors.ToValueList());
    }

    /// <summary>Its colors with their strands: <c>16 black, 8 red</c>.</summary>
    public string Words() => string.Join(", ", Colors.Select(c => FormattableString.Invariant($"{c.Strands} {c.Color}")));

    /// <summary>The strands on each side of a separator, and in each leg of a yoke: the first half that is laid, and the second.</summary>
    public (Layup First, Layup Second) Halves()
    {
        var (first, second) = (new List<(string, int)>(), new List<(string, int)>());
        var left = Strands / 2;
        foreach (var color in Colors)
        {
            var taken = Math.Min(color.Strands, left);
            left -= taken;
            Add(first, color.Color, taken);
            Add(second, color.Color, color.Strands - taken);
        }

        return (Of(first, Tail), Of(second, Tail));

        static void Add(List<(string, int)> half, string color, int strands)
        {
            if (strands > 0)
            {
                half.Add((color, strands));
            }
        }
    }
}

/// <summary>A color's share of the strands.</summary>
/// <param name="Strands">1 or more; an odd number ends in half a loop.</param>
/// <param name="Post">Where it starts.</param>
public sealed record ColorShare(string Color, int Strands, PieceEnd Post)
{
    /// <summary>Whole loops; <see cref="IsHalf"/> says whether half a loop is more.</summary>
    public int Loops => Strands / 2;

    /// <summary>Whether its last strand is half a loop, from post to post.</summary>
    public bool IsHalf => Strands % 2 != 0;

    /// <summary>Where it ends: at the post it starts at, or with half a loop at the other.</summary>
    public PieceEnd EndPost => !IsHalf ? Post : Post == PieceEnd.A ? PieceEnd.B : PieceEnd.A;

    /// <summary>Loops as people count them: <c>6</c>, <c>6 1/2</c>.</summary>
    public string LoopCount() => HalvesWriter.Write(Strands);
}

/// <summary>The tag ends tied at one post.</summary>
/// <param name="Leg">1 or 2 for that of a yoke's leg; 0 for the whole piece.</param>
public sealed record EndTag(PieceEnd Post, ValueList<string> Colors, int Leg = 0)
{
    /// <summary>No color ends here: a short bundle is tied in so that all end loops are equally thick.</summary>
    public bool IsDummy => Colors.Count == 0;
}
