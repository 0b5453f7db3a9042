using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>A sheet of paper, upright.</summary>
/// <param name="Title">As people call it: <c>half letter</c>.</param>
/// <remarks>A sizes: ISO 216. Letter: ANSI/ASME Y14.1, size A; half letter is a letter sheet cut across.</remarks>
public sealed record Paper(string Title, Length Width, Length Height)
{
    public static Paper Letter { get; } = new("letter", Length.FromInches(8.5), Length.FromInches(11)) { MediaName = "na_letter_8.5x11in" };

    public static Paper A4 { get; } = new("A4", Length.FromMillimeters(210), Length.FromMillimeters(297)) { MediaName = "iso_a4_210x297mm" };

    public static Paper HalfLetter { get; } =
        new("half letter", Length.FromInches(5.5), Length.FromInches(8.5)) { MediaName = "na_invoice_5.5x8.5in" };

    public static Paper A5 { get; } = new("A5", Length.FromMillimeters(148), Length.FromMillimeters(210)) { MediaName = "iso_a5_148x210mm" };

    public static Paper IndexCard { get; } =
        new("5 × 8 in index card", Length.FromInches(5), Length.FromInches(8)) { MediaName = "na_index-5x8_5x8in" };

    /// <summary>The self-describing name of PWG 5101.1-2013; null for a size that has none.</summary>
    public string? MediaName { get; init; }
}

/// <summary>The paper a shop prints on: a sheet for what is read at the desk, a card for the bench.</summary>
/// <param name="Name">As shop.toml and the command line name it.</param>
public sealed record PaperSet(string Name, Paper Sheet, Paper Card)
{
    public static PaperSet Letter { get; } = new("letter", Paper.Letter, Paper.HalfLetter);

    public static PaperSet A4 { get; } = new("a4", Paper.A4, Paper.A5);

    /// <summary>All there are, the usual one first. A new size of cards is an entry here and nothing else.</summary>
    public static IReadOnlyList<PaperSet> All { get; } = [Letter, A4, new("5x8", Paper.Letter, Paper.IndexCard)];

    /// <returns>Null where there is none of that name.</returns>
    public static PaperSet? Named(string? name) => All.FirstOrDefault(set => set.Name == name);
}
