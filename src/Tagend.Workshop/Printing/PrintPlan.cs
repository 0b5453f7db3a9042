using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>What is printed of orders, on what and to where.</summary>
public sealed record PrintPlan
{
    /// <summary>The folder for the files; it is made if need be.</summary>
    public required string Folder { get; init; }

    /// <summary>The kinds of paper, in the order of their list.</summary>
    public required IReadOnlyList<IPageKind> Kinds { get; init; }

    /// <summary>What they are printed on, and with which printer's scale.</summary>
    public required PageSetting Setting { get; init; }

    /// <summary>The resolution in dots an inch of black-and-white pictures beside the tags; null for no pictures.</summary>
    public int? LabelDpi { get; init; }

    /// <summary>The resolution in dots an inch of pictures beside each PDF; null for no pictures.</summary>
    public int? PreviewDpi { get; init; }

    /// <summary>The shop's spools, which the first volume's pull sheet names.</summary>
    public IReadOnlyList<ShelfSpool> Shelf { get; init; } = [];

    /// <summary>The most pieces of a volume, but for a set that has more; 1 or more.</summary>
    public required int VolumePieces { get; init; }
}

/// <summary>A PDF that was made.</summary>
/// <param name="Path">Where it is.</param>
/// <param name="Title">The title in the document, and the job's name at a printer.</param>
/// <param name="Pages">The number of its pages.</param>
/// <param name="Paper">The paper of its first page; where it goes to a printer, of all.</param>
public sealed record PrintedPaper(string Path, string Title, int Pages, Catalog.Paper Paper);

/// <summary>One of the parts that a large batch is printed in.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">The number of volumes; files are numbered where there are several.</param>
public sealed record Volume(int Number, int Count)
{
    internal string FileOf(string document) => Count == 1 ? document : $"{document}-{Number:000}";
}

/// <summary>What became of the sets of a volume.</summary>
/// <param name="Sets">The sets that are on every paper asked for.</param>
/// <param name="Withheld">The orders that are on none, for something did not fit its paper.</param>
/// <param name="Problems">What did not fit, and how much room there is.</param>
/// <param name="Papers">The PDFs, in the order of the kinds.</param>
public sealed record PrintedSets(
    IReadOnlyList<Specs.BuildSet> Sets,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problems.Problem> Problems,
    IReadOnlyList<PrintedPaper> Papers)
{
    /// <summary>Paths of all files, pictures among them.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];

    /// <summary>The next free label on the last sheet of each label stock, by the stock's name; none of rolls.</summary>
    public IReadOnlyDictionary<string, int> NextLabels { get; init; } = new Dictionary<string, int>();
}
