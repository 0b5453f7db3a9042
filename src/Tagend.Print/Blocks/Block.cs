using Tagend.Output;

namespace Tagend.Blocks;

/// <summary>Part of a page, before it has a place. Immutable.</summary>
public abstract record Block
{
    /// <summary>Lays the block out at its natural height within a room, or says why it does not fit.</summary>
    public abstract Placement Place(Fonts fonts, Room room);

    /// <summary>Width the block takes when nothing presses it, in points.</summary>
    public virtual float NaturalWidth(Fonts fonts) =>
        Place(fonts, new Room(Room.Endless, Room.Endless)) is Placed placed ? placed.Width : 0;

    /// <summary>What of the block fits into a room, and what is left for the next page.</summary>
    /// <remarks>A block that cannot be split goes to the next page whole.</remarks>
    public virtual PageSplit Split(Fonts fonts, Room room) => new(null, this);
}

/// <summary>Space for a block, in points.</summary>
/// <param name="Fill">The block takes all of the height, if it can be of any height.</param>
public readonly record struct Room(float Width, float Height, bool Fill = false)
{
    /// <summary>More than any page has.</summary>
    public const float Endless = 100_000;

    /// <summary>What sums of widths may differ by and still be equal.</summary>
    private const float Slack = 0.01f;

    public bool HoldsWidth(float width) => width <= Width + Slack;

    public bool HoldsHeight(float height) => height <= Height + Slack;
}

/// <summary>A block with a place, or the reason it has none.</summary>
public abstract record Placement;

/// <summary>A block laid out: all that is left is to draw it.</summary>
/// <param name="Inks">Relative to the block's top left.</param>
/// <param name="Children">Blocks within, each with its top left relative to this block's.</param>
/// <param name="Baseline">Of the first line of text, from the top; 0 where there is none.</param>
public sealed record Placed(
    float Width,
    float Height,
    IReadOnlyList<Ink> Inks,
    IReadOnlyList<PlacedChild> Children,
    float Baseline = 0) : Placement
{
    public Placed(float width, float height, params IReadOnlyList<Ink> inks)
        : this(width, height, inks, [])
    {
    }

    /// <summary>What the block is to someone who cannot see it; null where its children say so.</summary>
    public PartStart? Part { get; init; }

    /// <summary>All inks with their place on the page.</summary>
    /// <param name="x">Of the block's left edge, in points.</param>
    /// <param name="y">Of the block's top edge, in points.</param>
    public IEnumerable<Ink> InksAt(float x, float y)
    {
        if (Part is not null)
        {
            yield return Part;
        }

        foreach (var ink in Inks)
        {
            yield return ink.Moved(x, y);
        }

        foreach (var child in Children)
        {
            foreach (var ink in child.Placed.InksAt(x + child.X, y + child.Y))
            {
                yield return ink;
            }
        }

        if (Part is not null)
        {
            yield return PartEnd.Ink;
        }
    }

    /// <summary>The same as a part, whose children are parts of kinds of their own.</summary>
    public Placed With(PartKind kind, params IReadOnlyList<PartKind> children) => this with
    {
        Part = new PartStart(kind),
        Children = [.. Children.Zip(children, (child, k) => child with { Placed = child.Placed.As(k) })],
    };

    /// <summary>The same as a part of another kind: a paragraph becomes it, anything else is within it.</summary>
    private Placed As(PartKind kind) => Part is null or { Kind: PartKind.Paragraph }
        ? this with { Part = new PartStart(kind) }
        : new Placed(Width, Height, [], [new PlacedChild(0, 0, this)], Baseline) { Part = new PartStart(kind) };

    /// <summary>The same as a figure; the texts in it say what it shows.</summary>
    public Placed AsFigure() => this with { Part = PartStart.Figure(InksAt(0, 0)) };
}

/// <summary>A block within another.</summary>
public sealed record PlacedChild(float X, float Y, Placed Placed);

/// <summary>Why a block does not fit, in words: what, how large, how much room.</summary>
public sealed record Misfit(IReadOnlyList<string> Reasons) : Placement
{
    public Misfit(string reason)
        : this([reason])
    {
    }
}

/// <summary>A block at the foot of a page: what stays, what goes over; null where there is no such part.</summary>
public sealed record PageSplit(Placed? Here, Block? Rest);
