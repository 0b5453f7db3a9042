using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Books;

namespace Tagend.Workshop.Printing;

/// <summary>A cell of a piece's order that is another one now.</summary>
/// <param name="Piece">The piece's name, in lower case; null for the only piece, or for what all pieces of an order have in common.</param>
/// <param name="Column">As <see cref="OrderColumn"/> names it.</param>
/// <param name="Text">As in an order; of a serving also a color alone.</param>
public sealed record CellChange(string? Piece, string Column, string Text);

/// <summary>What is made again of each tag.</summary>
public sealed record AgainPlan
{
    /// <summary>The kinds of paper, each one that a tag serves for.</summary>
    public required IReadOnlyList<IPageKind> Kinds { get; init; }

    /// <summary>Rows of an order file are gathered.</summary>
    public bool AsOrder { get; init; }

    /// <summary>The number of a new order, as it stands in one; null where it is the same order again.</summary>
    public string? NewOrder { get; init; }

    /// <summary>Cells of the pieces' orders that are others now.</summary>
    public required IReadOnlyList<CellChange> Changes { get; init; }

    /// <summary>Where the files are written; it is made where it is not there yet.</summary>
    public required string Folder { get; init; }

    /// <summary>Null for the shop's own.</summary>
    public PaperSet? Paper { get; init; }

    /// <summary>Label stock of tags; null for the shop's own.</summary>
    public string? Labels { get; init; }

    /// <summary>The date of a new revision.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Something is other than on the tag, so that what is printed is entered in the job book.</summary>
    internal bool IsNew => NewOrder is not null || Changes.Count > 0;
}

/// <summary>What was made of one tag.</summary>
/// <param name="Problems">With a refusal among them nothing was printed.</param>
/// <param name="Papers">The files that were written; none where something was refused.</param>
/// <param name="Entry">The new revision's entry in the job book; null for none.</param>
public sealed record AgainResult(IReadOnlyList<Problem> Problems, IReadOnlyList<PrintedPaper> Papers, BookEntry? Entry);

/// <summary>Prints and orders again what tags carry: a page or a row for each tag, as it comes. What the job book knows of a piece is used.</summary>
public sealed class AgainRun(ShopCatalog catalog, AgainPlan plan, RunBook book)
{
    private static readonly string[] SlipColumns =
        [OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.Notes, OrderColumn.Language, OrderColumn.Units, OrderColumn.Accessories];

    private readonly AgainPapers _papers = new(catalog, plan);
    private readonly List<IReadOnlyDictionary<string, string>> _rows = [];

    /// <summary>Whether something could not be made.</summary>
    public bool HasRefusals { get; private set; }

    /// <summary>Makes what is wanted of one tag.</summary>
    /// <param name="specs">The tag's specs: a piece, or the pieces of a bag; one at least.</param>
    /// <exception cref="TagendException">A file cannot be written.</exception>
    public AgainResult Add(IReadOnlyList<BuildSpec> specs)
    {
        var problems = new List<Problem>(plan.Changes.Select(c => Misplaced(c, specs)).OfType<Problem>());
        var result = new AgainResult(problems, [], null);
        if (problems.Count == 0)
        {
            var jobs = book.JobsOf(specs[0].Order);
            var builds = specs.Select(spec => Changed(spec, jobs, problems)).ToList();
            if (!builds.Contains(null))
            {
                var set = new BuildSet(builds[0]!.Spec.Order, builds.Select(b => b!).ToValueList());
                _rows.AddRange(plan.AsOrder ? set.Builds.Select(b => Row(b, problems)) : []);
                var papers = _papers.Print(set, isBag: specs.Count > 1, problems);
                result = result with { Papers = papers, Entry = papers.Count > 0 && plan.IsNew ? book.Record([set]) : null };
            }
        }

        HasRefusals |= problems.Exists(p => p.Severity == Severity.Refusal);
        return result;
    }

    /// <summary>The order file of all tags; null where none is wanted or something could not be ordered.</summary>
    public byte[]? Orders() => plan.AsOrder && !HasRefusals ? Reorder.File(_rows) : null;

    /// <returns>Null where it is clear which piece a change is for.</returns>
    private static Problem? Misplaced(CellChange change, IReadOnlyList<BuildSpec> specs)
    {
        var pieces = string.Join(", ", specs.Select(s => s.Piece));
        return change.Piece is { } piece
            ? specs.Any(s => s.Piece == piece) ? null : Refused($"there is no piece {piece} to change; there are {pieces}")
            : specs.Count == 1 || SlipColumns.Contains(change.Column) ? null
            : Refused($"has {pieces}: say which of them to change, such as --change \"{specs[0].Piece}/{change.Column}={change.Text}\"");

        Problem Refused(string message) => new(new Place(specs[0].Order), null, message);
    }

    /// <param name="jobs">All that the book has of the order.</param>
    /// <returns>The piece as it is now; null where it cannot be built so.</returns>
    private Build? Changed(BuildSpec spec, IReadOnlyList<PrintedJob> jobs, List<Problem> problems)
    {
        var ofPiece = jobs.Where(j => j.Piece == spec.Piece).ToList();
        var known = ofPiece.LastOrDefault(j => j.Revision == spec.Revision)?.Slip ?? OrderSlip.Blank;
        var newest = ofPiece.LastOrDefault()?.Revision ?? spec.Revision;
        var changes = plan.Changes.Where(c => c.Piece is null || c.Piece == spec.Piece).ToList();
        var cells = Reorder.CellsOf(spec, plan.NewOrder is null ? known : known with { Due = "" });
        cells[OrderColumn.Order] = plan.NewOrder ?? spec.Order;
        cells[OrderColumn.Revision] = plan.NewOrder is null ? $"{Math.Max(newest, spec.Revision) + 1}" : "";
        changes.ForEach(c => cells[c.Column] = Reorder.Changed(cells[c.Column], c.Column, c.Text));

        var read = Read(cells, spec);
        problems.AddRange(read.Problems.Where(p => p.Severity == Severity.Refusal));
        if (read.Lines is not [var line])
        {
            return null;
        }

        if (plan.NewOrder is null && changes.All(c => SlipColumns.Contains(c.Column)))
        {
            return new Build(spec, line.Slip) { SupersededBy = newest > spec.Revision ? newest : null };
        }

        if (Make(cells, spec, plan.Date, problems) is not { } made)
        {
            return null;
        }

        if (plan.NewOrder is null && ofPiece.LastOrDefault() is { } before)
        {
            var changed = Superseded.NewIssue(made.Revision, before, SpecChange.Of(spec, made));
            problems.Add(new Problem(new Place($"{spec.Order}/{spec.Piece}"), null, changed, Severity.Warning));
        }

        return new Build(made, line.Slip);
    }

    private BuildSpec? Make(IReadOnlyDictionary<string, string> cells, BuildSpec spec, DateOnly date, List<Problem> problems)
    {
        var taught = catalog with { Fits = book.Fits(catalog) };
        var report = SetBuilder.Build(Read(cells, spec), new SpecBuilder(taught, spec.Unit, date));
        problems.AddRange(report.Problems.Where(p => p.Severity == Severity.Refusal));
        return report.Pieces is [{ Spec: { } made }] && report.Problems.All(p => p.Severity == Severity.Warning) ? made : null;
    }

    private static OrderFile Read(IReadOnlyDictionary<string, string> cells, BuildSpec spec) =>
        OrderReader.Read($"{spec.Order}/{spec.Piece}", Reorder.File([cells]), spec.Unit, new Dictionary<string, string>());

    private Dictionary<string, string> Row(Build build, List<Problem> problems)
    {
        var cells = Reorder.CellsOf(build.Spec, build.Slip);
        var made = Make(cells, build.Spec, build.Spec.Date, problems);
        if (made is not null && made != build.Spec)
        {
            problems.Add(new Problem(
                new Place($"{build.Spec.Order}/{build.Spec.Piece}"),
                null,
                "templates or job book have changed since, so the order gives a different spec: "
                + $"posts at {Posts(made)}, on the tag {Posts(build.Spec)}",
                Severity.Warning));
        }

        return cells;

        static string Posts(BuildSpec spec) => LengthWriter.Exact(spec.Posts.Outside, spec.Unit);
    }
}
