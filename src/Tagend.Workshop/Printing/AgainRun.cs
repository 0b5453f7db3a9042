using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Books;

namespace Tagend.Workshop.Printing;

/// <summary>What is made again of each tag.</summary>
public sealed record AgainPlan
{
    /// <summary>The kinds of paper, each one that a tag serves for.</summary>
    public required IReadOnlyList<IPageKind> Kinds { get; init; }

    /// <summary>Whether rows of an order file are gathered.</summary>
    public bool AsOrder { get; init; }

    /// <summary>The new texts of cells of the piece's order, by column; with any, the piece is computed anew.</summary>
    public required IReadOnlyDictionary<string, string> Changes { get; init; }

    /// <summary>The folder for the files; it is made if need be.</summary>
    public required string Folder { get; init; }

    /// <summary>The paper to print on; null for the shop's own.</summary>
    public PaperSet? Paper { get; init; }

    /// <summary>The name of the label stock for all tags; null for the shop's own.</summary>
    public string? Labels { get; init; }

    /// <summary>The date of issue of a new revision.</summary>
    public required DateOnly Date { get; init; }
}

/// <summary>What was made of one tag.</summary>
/// <param name="Problems">With a refusal among them nothing was printed.</param>
/// <param name="Papers">The files that were written.</param>
/// <param name="Entry">What was entered of a new revision in the job book; null where nothing was.</param>
public sealed record AgainResult(IReadOnlyList<Problem> Problems, IReadOnlyList<PrintedPaper> Papers, BookEntry? Entry);

/// <summary>Prints and orders again what tags carry: a page or a row for each tag, as it comes.</summary>
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
        var problems = new List<Problem>();
        var result = new AgainResult(problems, [], null);
        if (plan.Changes.Count > 0 && specs.Count > 1)
        {
            problems.Add(new Problem(new Place(specs[0].Order), null, "a bag has several pieces, and --change is for one: scan its loop tag"));
        }
        else if (specs.Select(spec => Changed(spec, problems)).ToList() is var builds && !builds.Contains(null))
        {
            var set = new BuildSet(specs[0].Order, builds.Select(b => b!).ToValueList());
            _rows.AddRange(plan.AsOrder ? set.Builds.Select(b => Row(b, problems)) : []);
            var papers = _papers.Print(set, isBag: specs.Count > 1, problems);
            result = result with { Papers = papers, Entry = papers.Count > 0 && plan.Changes.Count > 0 ? book.Record([set]) : null };
        }

        HasRefusals |= problems.Exists(p => p.Severity == Severity.Refusal);
        return result;
    }

    /// <summary>The order file of all tags; null where none is wanted or something could not be ordered.</summary>
    public byte[]? Orders() => plan.AsOrder && !HasRefusals ? Reorder.File(_rows) : null;

    /// <returns>The piece as it is now; null where it cannot be built so.</returns>
    private Build? Changed(BuildSpec spec, List<Problem> problems)
    {
        var cells = Reorder.CellsOf(spec, OrderSlip.Blank);
        cells[OrderColumn.Revision] = $"{spec.Revision + 1}";
        foreach (var (column, text) in plan.Changes)
        {
            cells[column] = text;
        }

        var read = Read(cells, spec);
        problems.AddRange(read.Problems.Where(p => p.Severity == Severity.Refusal));
        if (read.Lines is not [var line])
        {
            return null;
        }

        // Texts as they were given: in a file of orders one that could be a formula has an apostrophe before it.
        var slip = line.Slip with
        {
            Customer = cells[OrderColumn.Customer],
            Bow = cells[OrderColumn.Bow],
            Due = cells[OrderColumn.Due],
            Notes = cells[OrderColumn.Notes],
        };
        return plan.Changes.Keys.All(SlipColumns.Contains) ? new Build(spec, slip)
            : Make(cells, spec, plan.Date, problems) is { } made ? new Build(made, slip)
            : null;
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
