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
    public List<Ink> InksAt(float x, float y)
    {
        var inks = new List<Ink>();
        Gather(inks, x, y);
        return inks;
    }

    /// <summary>The same as a part, whose children are parts of kinds of their own.</summary>
    /// <param name="children">A kind for each child, or one for all of them.</param>
    public Placed With(PartKind kind, params ReadOnlySpan<PartKind> children)
    {
        var parts = new PlacedChild[Children.Count];
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = Children[i] with { Placed = Children[i].Placed.As(children[Math.Min(i, children.Length - 1)]) };
        }

        return this with { Part = PartStart.Of(kind), Children = parts };
    }

    /// <summary>The same as a part of another kind: a paragraph becomes it, anything else is within it.</summary>
    private Placed As(PartKind kind) => Part is null or { Kind: PartKind.Paragraph }
        ? this with { Part = PartStart.Of(kind) }
        : new Placed(Width, Height, [], [new PlacedChild(0, 0, this)], Baseline) { Part = PartStart.Of(kind) };

    /// <summary>The same as a figure; the texts in it say what it shows.</summary>
    public Placed AsFigure() => this with { Part = PartStart.Figure(InksAt(0, 0)) };

    private void Gather(List<Ink> inks, float x, float y)
    {
        if (Part is not null)
        {
            inks.Add(Part);
        }

        for (var i = 0; i < Inks.Count; i++)
        {
            inks.Add(Inks[i].Moved(x, y));
        }

        for (var i = 0; i < Children.Count; i++)
        {
            Children[i].Placed.Gather(inks, x + Children[i].X, y + Children[i].Y);
        }

        if (Part is not null)
        {
            inks.Add(PartEnd.Ink);
        }
    }
}

/// <summary>A block within another.</summary>
public sealed record PlacedChild(float X, float Y, Placed Placed);

/// <summary>Why a block does not fit, in words: what, how large, how much room.</summary>
public sealed record Misfit(IReadOnlyList<string> Reasons) : Placement
{
    /// <summary>All reasons of blocks that do not fit; null where all fit.</summary>
    public static Misfit? Of(ReadOnlySpan<Placement> placements)
    {
        List<string>? reasons = null;
        foreach (var placement in placements)
        {
            if (placement is Misfit misfit)
            {
                (reasons ??= []).AddRange(misfit.Reasons);
            }
        }

        return reasons is null ? null : new Misfit(reasons);
    }

    public Misfit(string reason)
        : this([reason])
    {
    }
}

/// <summary>A block at the foot of a page: what stays, what goes over; null where there is no such part.</summary>
public sealed record PageSplit(Placed? Here, Block? Rest);
