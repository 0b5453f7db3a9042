using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Pages.Parts;

/// <summary>Paper a marking strip is printed on, the piece running along the feed.</summary>
/// <param name="Across">Width of the paper.</param>
/// <param name="Along">Length of a sheet; the longest page of a roll.</param>
public sealed record StripStock(string Title, Length Across, Length Along, bool IsRoll)
{
    /// <summary>On all sides of a page: a quarter inch, which cheap printers leave white.</summary>
    public static Length Margin { get; } = Length.FromInches(0.25);

    /// <summary>The least width of a roll.</summary>
    public static Length NarrowestRoll { get; } = Length.FromMillimeters(50);

    /// <summary>
    /// A page of a PDF is at most 14,400 units of 1/72 in, 200 in (ISO 32000-1, annex C.2); this leaves room for the
    /// greatest correction of a printer.
    /// </summary>
    public static Length LongestRollPage { get; } = Length.FromInches(190);

    public static StripStock Sheet(Paper paper) => new(paper.Title, paper.Width, paper.Height, IsRoll: false);

    public static StripStock Roll(Length width) => new("roll", width, LongestRollPage, IsRoll: true);
}

/// <summary>Which places a strip shows.</summary>
public enum StripPositions
{
    /// <summary>Of the finished piece over measuring pins.</summary>
    Finished,

    /// <summary>Of the untwisted loop on the jig.</summary>
    OnJig,
}
