using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Commands;

/// <summary>Prints and orders again what tags carry: a page or a row for each tag, as it comes.</summary>
/// <param name="catalog">Null where the templates have mistakes: nothing is made then.</param>
internal sealed class AgainRun(ShopCatalog? catalog, AgainPlan plan, RunBook book)
{
    private static readonly string[] SlipColumns = [OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.Notes];

    private readonly List<IReadOnlyDictionary<string, string>> _rows = [];
    private bool _hasProblems = catalog is null;

    /// <summary>Orders go to standard output, which nothing else may be written to then.</summary>
    public bool OwnsOutput => plan.AsOrder;

    /// <param name="specs">Of one tag: a piece, or the pieces of a bag.</param>
    public void Add(IReadOnlyList<BuildSpec> specs)
    {
        if (catalog is null || specs.Count == 0)
        {
            return;
        }

        if (plan.Changes.Count > 0 && specs.Count > 1)
        {
            Console.Error.WriteLine("tagend: a bag has several pieces, and --change is of one: scan its loop tag");
            _hasProblems = true;
            return;
        }

        var builds = specs.Select(spec => Changed(spec, catalog)).ToList();
        if (builds.Contains(null))
        {
            _hasProblems = true;
            return;
        }

        var set = new BuildSet(specs[0].Order, builds.Select(b => b!).ToValueList());
        _rows.AddRange(plan.AsOrder ? set.Builds.Select(b => Row(b, catalog)) : []);
        Print(set, isBag: specs.Count > 1, catalog);
    }

    /// <summary>Writes the order file of all tags.</summary>
    public int End()
    {
        if (plan.AsOrder && !_hasProblems)
        {
            using var output = Console.OpenStandardOutput();
            output.Write(Reorder.File(_rows));
        }

        return _hasProblems ? ExitCode.Problems : book.HasFailed ? ExitCode.World : ExitCode.Done;
    }

    /// <returns>The piece as it is now; null, with the problems on standard error, where it cannot be built so.</returns>
    private Build? Changed(BuildSpec spec, ShopCatalog catalog)
    {
        var cells = Reorder.CellsOf(spec, OrderSlip.Blank);
        cells[OrderColumn.Revision] = $"{spec.Revision + 1}";
        foreach (var (column, text) in plan.Changes)
        {
            cells[column] = text;
        }

        var slip = new OrderSlip(
            cells[OrderColumn.Customer], cells[OrderColumn.Bow], cells[OrderColumn.Due], cells[OrderColumn.Notes]);
        return plan.Changes.Keys.All(SlipColumns.Contains)
            ? new Build(spec, slip)
            : Make(cells, catalog with { Fits = book.Fits(catalog) }, spec, plan.Date) is { } made ? new Build(made, slip) : null;
    }

    private static BuildSpec? Make(IReadOnlyDictionary<string, string> cells, ShopCatalog catalog, BuildSpec spec, DateOnly date)
    {
        var file = OrderReader.Read($"{spec.Order}/{spec.Piece}", Reorder.File([cells]), spec.Unit, new Dictionary<string, string>());
        var report = SetBuilder.Build(file, new SpecBuilder(catalog, spec.Unit, date));
        ShopOptions.Report(report.Problems.Where(p => p.Severity == Severity.Refusal));
        return report.Pieces is [{ Spec: { } made }] && report.Problems.All(p => p.Severity == Severity.Warning) ? made : null;
    }

    private Dictionary<string, string> Row(Build build, ShopCatalog catalog)
    {
        var cells = Reorder.CellsOf(build.Spec, build.Slip);
        var made = Make(cells, catalog with { Fits = book.Fits(catalog) }, build.Spec, build.Spec.Date);
        _hasProblems |= made is null;
        if (made is not null && made != build.Spec)
        {
            Console.Error.WriteLine(
                $"{build.Spec.Order}/{build.Spec.Piece}: warning: templates or job book have changed since, so the order makes another spec: "
                + $"posts at {Posts(made)}, on the tag {Posts(build.Spec)}");
        }

        return cells;

        static string Posts(BuildSpec spec) => LengthWriter.Exact(spec.Posts.Outside, spec.Unit);
    }

    private void Print(BuildSet set, bool isBag, ShopCatalog catalog)
    {
        if (!(plan.Card || plan.Tag || plan.Sheet))
        {
            return;
        }

        if (plan.Sheet && set.Builds.FirstOrDefault(
            b => !catalog.Plans.ContainsKey(b.Spec.Kind) || !catalog.Materials.ContainsKey(b.Spec.Bundle.Material)) is { Spec: var strange })
        {
            Console.Error.WriteLine(
                $"{set.Order}: the templates have no kind {strange.Kind} or no material {strange.Bundle.Material} any more, "
                + "and a customer sheet needs both; card and tag do not");
            _hasProblems = true;
            return;
        }

        var fonts = Fonts.Load(Path.Combine(catalog.Folder, "fonts"));
        var paper = plan.Paper ?? catalog.Shop.Paper;
        var papers = new List<(string Name, Composed Page)>();
        if (plan.Card)
        {
            var cardPaper = paper == PaperSize.Letter ? Paper.HalfLetter : Paper.A5;
            papers.AddRange(set.Builds.Select(b =>
                ($"{set.Order}-{b.Spec.Piece}-card", JigCard.Compose(b, catalog, TagWriter.Write(b.Spec), cardPaper, fonts))));
        }

        if (plan.Tag)
        {
            papers.Add(($"{NameOf(set, isBag)}-tag", Tags(set, isBag, catalog, fonts)));
        }

        if (plan.Sheet)
        {
            var sheetPaper = paper == PaperSize.Letter ? Paper.Letter : Paper.A4;
            papers.Add(($"{NameOf(set, isBag)}-sheet", new CustomerSheet(catalog, fonts).Of(set, sheetPaper)));
        }

        ShopOptions.Report(papers.SelectMany(p => p.Page.Problems));
        if (papers.Exists(p => p.Page.Problems.Count > 0))
        {
            _hasProblems = true;
            return;
        }

        var note = set.Builds[0].Spec.Date;
        var files = papers.Select(p => (Path: Path.Combine(plan.Folder, Safe(p.Name) + ".pdf"), p.Page)).ToList();
        AtomicFiles.Write([.. files.Select(f => new NewFile(
            f.Path, stream => PdfFile.Write(f.Page.Pages, fonts, new PdfNote($"Tagend {Path.GetFileNameWithoutExtension(f.Path)}", note), stream)))]);
        var say = plan.AsOrder ? Console.Error : Console.Out;
        foreach (var file in files)
        {
            say.WriteLine($"{file.Path}: {Counted.Of(file.Page.Pages.Count, "page")}");
        }

        if (plan.Changes.Count > 0 && book.Record([set]) is { } entered)
        {
            say.WriteLine(entered);
        }
    }

    /// <summary>The loop tag of a piece; of a bag its own tag and all loop tags.</summary>
    private Composed Tags(BuildSet set, bool isBag, ShopCatalog catalog, Fonts fonts)
    {
        var (bag, loop) = (PrintOptions.StockOf(plan.Labels ?? catalog.Shop.BagStock, catalog), PrintOptions.StockOf(plan.Labels ?? catalog.Shop.LoopStock, catalog));
        var labels = TagLabels.Of(set, catalog, fonts, bag, loop, SheetUse.Whole);
        return new Composed([.. TagLabels.Pages(labels.Labels.Skip(isBag ? 0 : 1), SheetUse.Whole)], labels.Problems);
    }

    private static string NameOf(BuildSet set, bool isBag) => isBag ? set.Order : $"{set.Order}-{set.Builds[0].Spec.Piece}";

    /// <summary>A file's name: what a tag says must not lead to another folder.</summary>
    private static string Safe(string name) => string.Concat(name.Select(c => char.IsLetterOrDigit(c) || c == '.' ? c : '-'));
}
