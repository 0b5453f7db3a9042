using Tagend.Problems;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Papers;

/// <summary>Something that can be ticked.</summary>
/// <param name="Note">What is to be known of it; empty for nothing.</param>
public sealed record Choice(string Name, string Title, bool IsChosen, string Note = "");

/// <summary>A sheet of labels to click the used ones on.</summary>
/// <param name="Used">From 1, row by row.</param>
/// <param name="IsKept">They are what earlier papers left, and nobody said so.</param>
public sealed record LabelSheet(string Title, int Rows, int Columns, IReadOnlyList<int> Used, bool IsKept)
{
    /// <summary>It takes the place of one that is on the page.</summary>
    public bool IsUpdate { get; init; }
}

/// <summary>A paper to look at.</summary>
/// <param name="Index">From 0, among the papers drawn.</param>
/// <param name="Shown">Of its pages; there may be more.</param>
public sealed record PaperView(int Index, DrawnPaper Paper, string Title, int Shown);

/// <summary>The screen of papers.</summary>
/// <param name="Query">What was chosen, for the address of a page's picture.</param>
/// <param name="Printers">Queues; none where the system has none, and why is in the note.</param>
/// <param name="Unmeasured">The printer that is chosen and was never measured; empty for none.</param>
public sealed record PapersModel(
    string File,
    IReadOnlyList<Choice> Orders,
    IReadOnlyList<Choice> Kinds,
    LabelSheet? Labels,
    IReadOnlyList<Choice> Printers,
    string PrinterNote,
    string Unmeasured,
    IReadOnlyList<PaperView> Papers,
    IReadOnlyList<Problem> Problems,
    string Query)
{
    public string Path => $"/papers/{Uri.EscapeDataString(File)}";
}

/// <summary>A paper that was made.</summary>
/// <param name="Name">Of its file.</param>
public sealed record MadeView(string Name, string Title, int Pages, string? Job, string? Refusal);

/// <summary>What was made.</summary>
/// <param name="Labels">The sheet as it is now; null where labels are on rolls.</param>
public sealed record MadeModel(
    string File,
    IReadOnlyList<MadeView> Papers,
    IReadOnlyList<string> Orders,
    IReadOnlyList<string> Notes,
    IReadOnlyList<Problem> Problems,
    string Folder,
    LabelSheet? Labels)
{
    public string Path => $"/papers/{Uri.EscapeDataString(File)}";
}

/// <summary>What became of a job in a print queue.</summary>
/// <param name="IsOver">It will not change any more.</param>
public sealed record JobModel(string Job, string Sentence, bool IsOver, bool IsGood);
