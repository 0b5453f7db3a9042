using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Book;

/// <summary>Jobs that were found.</summary>
/// <param name="Text">What was looked for.</param>
/// <param name="HasMore">There are more than these.</param>
public sealed record JobList(string Text, IReadOnlyList<PrintedJob> Jobs, bool HasMore, LengthUnit Unit)
{
    /// <summary>Jobs that a customer's name was taken out of.</summary>
    public int Forgotten { get; init; }

    /// <summary>A name that no job has; null where none was given.</summary>
    public string? Unknown { get; init; }
}

/// <summary>An order or a piece with all that was done to it.</summary>
public sealed record PartModel
{
    public required string Order { get; init; }

    /// <summary>Null for the whole order.</summary>
    public required string? Piece { get; init; }

    /// <summary>All issues, in the order of printing; one at least.</summary>
    public required IReadOnlyList<PrintedJob> Jobs { get; init; }

    /// <summary>As they are by their newest papers.</summary>
    public required IReadOnlyList<ListedPiece> Pieces { get; init; }

    public required IReadOnlyList<HistoryEntry> History { get; init; }

    public required LengthUnit Unit { get; init; }

    /// <summary>The newest papers say so beside the setting of the posts.</summary>
    public required string Setting { get; init; }

    /// <summary>What was just done, in sentences.</summary>
    public IReadOnlyList<string> Done { get; init; } = [];

    /// <summary>Why something was not done.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    /// <summary>Files that were just made, by their names.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];

    /// <summary>The change that was typed and refused.</summary>
    public (string Column, string Text) Change { get; init; } = ("finished_length", "");

    public PrintedJob Newest => Jobs[^1];

    public string Path => Piece is null ? $"/book/{Order}" : $"/book/{Order}/{Piece}";

    public bool Is(params IEnumerable<PieceState> states) => Pieces.All(p => states.Contains(p.State));

    /// <summary>What a tag serves for.</summary>
    public static IEnumerable<IPageKind> Kinds => Tagend.Pages.PageKinds.All.Where(k => k.FromTag is not null);
}

/// <summary>What was just done.</summary>
/// <param name="Files">That were made, by their names.</param>
public sealed record SaidModel(IReadOnlyList<string> Done, IReadOnlyList<string> Faults, IReadOnlyList<string> Files);

/// <summary>The shop's spools.</summary>
/// <param name="Typed">The form as it was sent.</param>
public sealed record SpoolModel(
    IReadOnlyList<KeptSpool> Spools, IReadOnlyList<string> Names, IReadOnlyList<string> Colors, LengthUnit Unit, SpoolForm Typed, IReadOnlyList<SpoolFault> Faults)
{
    public IReadOnlyList<string> Done { get; init; } = [];

    public IReadOnlyList<string> Files { get; init; } = [];

    /// <summary>What is wrong with a value; null where nothing is.</summary>
    public string? FaultOf(string field) => Faults.FirstOrDefault(f => f.Field == field)?.Message;
}

/// <summary>Everything that was built of a lot.</summary>
/// <param name="Lot">Empty before one was named.</param>
public sealed record LotModel(string Lot, IReadOnlyList<PrintedJob> Jobs);

/// <summary>A fit as it is shown.</summary>
/// <param name="PerTurn">With its error; null where there is no result yet.</param>
/// <param name="Helix">Of one turn; null where it is not known.</param>
public sealed record FitView(TakeUpFit Fit, string Title, IReadOnlyList<FitFact> Facts, string? PerTurn, string Rule, string? Helix)
{
    /// <summary>Of thousands the ones that somebody may want to leave out or take in: logged lately, or not like the others.</summary>
    private const int Latest = 50;

    /// <summary>The newest builds, and all that are outliers or left out; the newest first.</summary>
    public IReadOnlyList<FitPoint> Shown { get; } =
        [.. Fit.Points.Where((point, i) => i >= Fit.Points.Count - Latest || point.IsOutlier || point.Build.IsLeftOut).Reverse()];

    /// <summary>How many more are in the fit.</summary>
    public int Others => Fit.Points.Count - Shown.Count;
}

/// <summary>What the builds teach.</summary>
/// <param name="Moved">Cards that wait to be built and would be set otherwise by it.</param>
public sealed record FitModel(IReadOnlyList<FitView> Fits, IReadOnlyList<OpenCard> Moved, LengthUnit Unit);
