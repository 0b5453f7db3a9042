using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>A sheet of paper, upright.</summary>
/// <param name="Title">As people call it: <c>half letter</c>.</param>
/// <param name="Width">Of the short side.</param>
/// <param name="Height">Of the long side.</param>
/// <remarks>A sizes: ISO 216. Letter: ANSI/ASME Y14.1, size A; half letter is a letter sheet cut across.</remarks>
public sealed record Paper(string Title, Length Width, Length Height)
{
    /// <summary>8.5 × 11 in.</summary>
    public static Paper Letter { get; } = new("letter", Length.FromInches(8.5), Length.FromInches(11)) { MediaName = "na_letter_8.5x11in" };

    /// <summary>210 × 297 mm.</summary>
    public static Paper A4 { get; } = new("A4", Length.FromMillimeters(210), Length.FromMillimeters(297)) { MediaName = "iso_a4_210x297mm" };

    /// <summary>5.5 × 8.5 in.</summary>
    public static Paper HalfLetter { get; } =
        new("half letter", Length.FromInches(5.5), Length.FromInches(8.5)) { MediaName = "na_invoice_5.5x8.5in" };

    /// <summary>148 × 210 mm.</summary>
    public static Paper A5 { get; } = new("A5", Length.FromMillimeters(148), Length.FromMillimeters(210)) { MediaName = "iso_a5_148x210mm" };

    /// <summary>5 × 8 in, a stock size of index cards.</summary>
    public static Paper IndexCard { get; } =
        new("5 × 8 in index card", Length.FromInches(5), Length.FromInches(8)) { MediaName = "na_index-5x8_5x8in" };

    /// <summary>The self-describing name of PWG 5101.1-2013; null for a size that has none.</summary>
    public string? MediaName { get; init; }
}

/// <summary>The paper a shop prints on: a sheet for what is read at the desk, a card for the bench.</summary>
/// <param name="Name">As shop.toml and the command line name it.</param>
/// <param name="Sheet">For customer sheets, pull sheets, strips in parts and test pages.</param>
/// <param name="Card">For jig cards and plots of fits.</param>
public sealed record PaperSet(string Name, Paper Sheet, Paper Card)
{
    /// <summary>Letter sheets, and half letter for cards.</summary>
    public static PaperSet Letter { get; } = new("letter", Paper.Letter, Paper.HalfLetter);

    /// <summary>A4 sheets, and A5 for cards.</summary>
    public static PaperSet A4 { get; } = new("a4", Paper.A4, Paper.A5);

    /// <summary>All there are, the usual one first. A new size of cards is an entry here and nothing else.</summary>
    public static IReadOnlyList<PaperSet> All { get; } = [Letter, A4, new("5x8", Paper.Letter, Paper.IndexCard)];

    /// <summary>The set of a name, as shop.toml and the command line write it.</summary>
    /// <returns>Null where there is none of that name.</returns>
    public static PaperSet? Named(string? name) => All.FirstOrDefault(set => set.Name == name);
}
