namespace Tagend.Output;

/// <summary>What a part of a page is to someone who cannot see it: the standard structure types of ISO 32000-1, 14.8.4.</summary>
public enum PartKind
{
    Paragraph,

    /// <summary>The title of a page.</summary>
    Heading1,
    Heading2,
    Heading3,

    /// <summary>Of rows.</summary>
    Table,
    Row,

    /// <summary>Over a column.</summary>
    HeaderCell,
    Cell,

    /// <summary>Of items; begun by itself where they follow each other.</summary>
    List,
    Item,

    /// <summary>An item's number or bullet.</summary>
    Label,

    /// <summary>What an item says.</summary>
    Body,

    /// <summary>Has its meaning in words.</summary>
    Figure,

    /// <summary>No part of what the page says: its foot, its frames.</summary>
    Artifact,
}

/// <summary>Begins a part: all inks to its <see cref="PartEnd"/> belong to it. Parts may lie within each other.</summary>
/// <param name="InWords">What a figure shows.</param>
public sealed record PartStart(PartKind Kind, string? InWords = null) : Ink
{
    private static readonly PartStart[] Plain = [.. Enum.GetValues<PartKind>().Select(kind => new PartStart(kind))];

    /// <summary>Begins a part that needs no words.</summary>
    public static PartStart Of(PartKind kind) => Plain[(int)kind];

    /// <summary>Begins a figure: the texts in it say what it shows. Where there is none, it decorates.</summary>
    public static PartStart Figure(IEnumerable<Ink> inks)
    {
        var words = string.Join(", ", inks.OfType<TextInk>().Select(t => t.Text.Trim()).Where(t => t.Length > 0));
        return words.Length > 0 ? new PartStart(PartKind.Figure, words) : new PartStart(PartKind.Artifact);
    }

    public override Ink Moved(float dx, float dy) => this;
}

/// <summary>Ends the part that was begun last.</summary>
public sealed record PartEnd : Ink
{
    public static PartEnd Ink { get; } = new();

    public override Ink Moved(float dx, float dy) => this;
}
