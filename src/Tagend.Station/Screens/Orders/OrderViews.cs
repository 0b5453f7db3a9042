using Tagend.Jobs;
using Tagend.Problems;
using Tagend.Workshop.Books;

namespace Tagend.Station.Screens.Orders;

/// <summary>One cell of a row, with what is wrong in it.</summary>
/// <param name="Column">From 0; as many as the file has where it lacks the column.</param>
/// <param name="Title">As the file's header has it.</param>
public sealed record CellView(int Column, string Title, string Text, IReadOnlyList<Problem> Problems)
{
    /// <summary>The title as a person reads it.</summary>
    public string Heading => Title.Replace('_', ' ');

    /// <summary>It is read on several lines.</summary>
    public bool IsLong => Text.Length > 28;

    public bool IsRefused => Problems.Any(p => p.Severity == Severity.Refusal);
}

/// <summary>A problem in a sentence.</summary>
/// <param name="HasColumn">Its column and text are said: it does not stand at its cell.</param>
public sealed record SaidProblem(Problem Problem, bool HasColumn);

/// <summary>One row of the file.</summary>
/// <param name="Index">From 0.</param>
/// <param name="Problems">Of the row as a whole.</param>
public sealed record RowView(int Index, int Line, IReadOnlyList<CellView> Cells, IReadOnlyList<Problem> Problems);

/// <summary>An order whose number the job book has for another customer.</summary>
/// <param name="Customer">Whose it is in the file.</param>
/// <param name="IsMeant">The shop said that the number is used again on purpose.</param>
public sealed record ReusedNumber(string Customer, bool IsMeant);

/// <summary>The rows of one order.</summary>
/// <param name="Order">Empty for rows that name none.</param>
/// <param name="Listed">What the job book knows of it; null where it cannot be read.</param>
/// <param name="IsReady">It can be printed.</param>
/// <param name="Reused">Null where its number is nobody else's.</param>
public sealed record SetView(string File, string Order, ListedOrder? Listed, IReadOnlyList<RowView> Rows, bool IsReady, ReusedNumber? Reused)
{
    public string Id => $"set-{(Order.Length == 0 ? "none" : string.Concat(Order.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_')))}-{Rows[0].Index}";

    public IEnumerable<Problem> Problems => Rows.SelectMany(r => r.Problems.Concat(r.Cells.SelectMany(c => c.Problems)));

    public int Refusals => Problems.Count(p => p.Severity == Severity.Refusal);

    public int Warnings => Problems.Count(p => p.Severity == Severity.Warning);

    public OrderState State => Listed?.State ?? OrderState.New;

    /// <summary>Its pieces that are printed and wait to be built.</summary>
    public IEnumerable<string> ToBuild => Listed?.In(PieceState.Printed, PieceState.Remade).Select(p => p.Piece) ?? [];

    /// <summary>Due today, or it was.</summary>
    public bool IsDue(DateOnly today) => State is not (OrderState.Built or OrderState.Shipped or OrderState.Cancelled) && Listed?.Due is { } due && due <= today;

    /// <summary>Of a link to the set by itself.</summary>
    public string Path => $"/orders/{Uri.EscapeDataString(File)}/sets/{Uri.EscapeDataString(Order)}";
}

/// <summary>Which sets are shown.</summary>
public enum OrderFilter
{
    All,
    Problems,
    Due,
    Unprinted,
    Unbuilt,
}

/// <summary>An order file on the screen.</summary>
/// <param name="Whole">What is wrong with the file as a whole, or with its header.</param>
/// <param name="Fault">What a job book failed at; null for nothing.</param>
/// <param name="Remarks">How it was read, where it is the shop's own.</param>
/// <param name="IsUnknown">Its columns are neither ours nor of any map.</param>
public sealed record FileView(
    string Name,
    bool HasDraft,
    bool IsChangedElsewhere,
    OrderFilter Filter,
    DateOnly Today,
    IReadOnlyList<string> Titles,
    IReadOnlyList<Problem> Whole,
    IReadOnlyList<SetView> Sets,
    BookFault? Fault,
    IReadOnlyList<string> Remarks,
    bool IsUnknown)
{
    /// <summary>The map that was just made for it; null for none.</summary>
    public MadeMap? Made { get; init; }

    public string Path => $"/orders/{Uri.EscapeDataString(Name)}";

    public int Count(OrderFilter filter) => Sets.Count(s => Has(s, filter));

    public IEnumerable<SetView> Shown => Sets.Where(s => Has(s, Filter));

    /// <summary>Orders that can be printed and were not.</summary>
    public IReadOnlyList<string> Ready => [.. Sets.Where(s => s.IsReady && s.State == OrderState.New).Select(s => s.Order)];

    private bool Has(SetView set, OrderFilter filter) => filter switch
    {
        OrderFilter.Problems => set.Problems.Any(),
        OrderFilter.Due => set.IsDue(Today),
        OrderFilter.Unprinted => set.State == OrderState.New,
        OrderFilter.Unbuilt => set.State is OrderState.Printed or OrderState.PartBuilt or OrderState.Remade,
        _ => true,
    };
}

/// <summary>A map that was just made for a file.</summary>
/// <param name="Unprinted">Headers that are on no paper.</param>
/// <param name="Doubts">What was chosen on little evidence; in sentences.</param>
/// <param name="Unplanned">Pieces of which it must be said how they are built.</param>
/// <param name="Plans">The plans there are to build by.</param>
public sealed record MadeMap(
    string Name, IReadOnlyList<string> Unprinted, IReadOnlyList<string> Doubts, IReadOnlyList<string> Unplanned, IReadOnlyList<string> Plans);

/// <summary>What became of a cell that was edited: its set, and the counts of the file.</summary>
public sealed record MendedView(FileView File, SetView Set);

/// <summary>A file in the list of files.</summary>
public sealed record FileEntry(string Name, bool HasDraft, bool IsShown)
{
    public string Path => $"/orders/{Uri.EscapeDataString(Name)}";
}

/// <summary>What the screen of orders shows.</summary>
/// <param name="Shown">Null where there is no file yet.</param>
/// <param name="Folder">Where order files are kept.</param>
public sealed record OrdersModel(IReadOnlyList<FileEntry> Files, FileView? Shown, string Folder);
