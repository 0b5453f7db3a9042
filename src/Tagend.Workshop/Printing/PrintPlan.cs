using Tagend.Pages.Parts;

namespace Tagend.Workshop.Printing;

/// <summary>What is printed of orders, on what and to where.</summary>
public sealed record PrintPlan
{
    /// <summary>The folder for the files; it is made if need be.</summary>
    public required string Folder { get; init; }

    /// <summary>The kinds of paper, in the order of their list.</summary>
    public required IReadOnlyList<IPageKind> Kinds { get; init; }

    /// <summary>What they are printed on.</summary>
    public required PageSetting Setting { get; init; }

    /// <summary>Dots an inch of the one-bit pictures beside the tags; null for none.</summary>
    public int? LabelDpi { get; init; }

    /// <summary>Dots an inch of the pictures beside each PDF; null for none.</summary>
    public int? PreviewDpi { get; init; }

    /// <summary>Most pieces of a volume, but for a set that has more.</summary>
    public required int VolumePieces { get; init; }
}

/// <summary>A PDF that was made.</summary>
/// <param name="Title">Also the job's name at a printer.</param>
/// <param name="Paper">Of its first page; where it goes to a printer, of all.</param>
public sealed record PrintedPaper(string Path, string Title, int Pages, Catalog.Paper Paper);

/// <summary>One of the parts that a large batch is printed in.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">Of all; files are numbered where there are several.</param>
public sealed record Volume(int Number, int Count)
{
    internal string FileOf(string document) => Count == 1 ? document : $"{document}-{Number:000}";
}

/// <summary>What became of the sets of a volume.</summary>
/// <param name="Sets">Printed whole: on every paper asked for.</param>
/// <param name="Withheld">Orders with something that did not fit its paper.</param>
public sealed record PrintedSets(
    IReadOnlyList<Specs.BuildSet> Sets,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problems.Problem> Problems,
    IReadOnlyList<PrintedPaper> Papers)
{
    /// <summary>Paths of all files, pictures among them.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];
}
