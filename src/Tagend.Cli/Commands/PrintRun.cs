using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Commands;

/// <summary>What a run of the printer made.</summary>
/// <param name="Sets">Printed whole: on every paper asked for.</param>
/// <param name="Withheld">Orders with something that did not fit its paper.</param>
/// <param name="Papers">The PDFs.</param>
/// <param name="Files">Ready to be written.</param>
internal sealed record PrintedSets(
    IReadOnlyList<BuildSet> Sets,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problem> Problems,
    IReadOnlyList<PrintedPaper> Papers,
    IReadOnlyList<NewFile> Files);

/// <summary>A PDF that a run made.</summary>
/// <param name="Title">Also the job's name at a printer.</param>
/// <param name="Paper">Of its first page; where it goes to a printer, of all.</param>
internal sealed record PrintedPaper(string Path, string Title, int Pages, Paper Paper);

/// <summary>Makes the papers of sets; a set that does not fit one of them is on none.</summary>
internal sealed class PrintRun(ShopCatalog catalog, PrintPlan plan)
{
    private readonly Fonts _fonts = Fonts.Load(Path.Combine(catalog.Folder, "fonts"));

    private Paper SheetPaper => plan.Paper == PaperSize.Letter ? Paper.Letter : Paper.A4;

    private Paper CardPaper => plan.Paper == PaperSize.Letter ? Paper.HalfLetter : Paper.A5;

    public PrintedSets Compose(IReadOnlyList<BuildSet> sets)
    {
        var sheets = new CustomerSheet(catalog, _fonts);
        var problems = new List<Problem>();
        var good = new List<BuildSet>();
        var labels = new List<TagLabel>();
        var (cardPages, sheetPages) = (new List<Page>(), new List<Page>());
        foreach (var set in sets)
        {
            var cards = Asked(PrintOptions.Cards, () => set.Builds.Select(
                b => JigCard.Compose(b, catalog, TagWriter.Write(b.Spec), CardPaper, _fonts)));
            var tags = Asked<SetLabels>(PrintOptions.Tags, () => [Tags(set)]);
            var sheet = Asked<Composed>(PrintOptions.Sheets, () => [sheets.Of(set, SheetPaper)]);
            var found = new[] { cards.SelectMany(c => c.Problems), tags.SelectMany(t => t.Problems), sheet.SelectMany(c => c.Problems) }
                .SelectMany(p => p)
                .ToList();
            problems.AddRange(found.Except(problems));
            if (found.Count == 0)
            {
                good.Add(set);
                labels.AddRange(tags.SelectMany(t => t.Labels));
                cardPages.AddRange(cards.SelectMany(c => c.Pages));
                sheetPages.AddRange(sheet.SelectMany(c => c.Pages));
            }
        }

        var pulls = Asked<Composed>(PrintOptions.Pulls, () => good.Count == 0 ? [] : [PullSheet.Compose(good, catalog, SheetPaper, _fonts)]);
        problems.AddRange(pulls.SelectMany(c => c.Problems));
        IEnumerable<Document> asked =
        [
            new Document(PrintOptions.Cards, CardPaper, cardPages),
            .. TagDocuments(labels),
            new Document(PrintOptions.Sheets, SheetPaper, sheetPages),
            new Document(PrintOptions.Pulls, SheetPaper, [.. pulls.SelectMany(c => c.Pages)]),
        ];
        var documents = asked.Where(d => d.Pages.Count > 0).ToList();
        var whose = good.Count == 1 ? good[0].Order : Counted.Of(good.Count, "set");
        return new PrintedSets(
            good,
            [.. sets.Except(good).Select(s => s.Order)],
            problems,
            [.. documents.Select(d => new PrintedPaper(PathOf($"{d.Name}.pdf"), $"Tagend {d.Name}, {whose}", d.Pages.Count, d.Paper))],
            [.. documents.SelectMany(d => Files(d, good[0].Builds[0].Spec.Date))]);
    }

    /// <summary>One document, or for a printer, which has one paper a job, one a stock.</summary>
    private IEnumerable<Document> TagDocuments(List<TagLabel> labels)
    {
        var byStock = labels.GroupBy(l => l.Stock).ToList();
        return plan.Printer is null || byStock.Count == 1
            ? [new Document(PrintOptions.Tags, PaperOf(plan.BagStock), TagLabels.Pages(labels, plan.Use))]
            : byStock.Select(g => new Document($"{PrintOptions.Tags}-{g.Key.Name}", PaperOf(g.Key), TagLabels.Pages(g, plan.Use)));

        static Paper PaperOf(LabelStock stock) => new(stock.Name, stock.PageWidth, stock.PageHeight);
    }

    private SetLabels Tags(BuildSet set) =>
        TagLabels.Of(set, catalog, _fonts, plan.BagStock, plan.LoopStock, plan.Use);

    private List<T> Asked<T>(string paper, Func<IEnumerable<T>> compose) =>
        plan.Papers.Contains(paper) ? [.. compose()] : [];

    private IEnumerable<NewFile> Files(Document document, DateOnly date)
    {
        var note = new PdfNote($"Tagend {document.Name}", date);
        yield return new NewFile(PathOf($"{document.Name}.pdf"), stream => PdfFile.Write(document.Pages, _fonts, note, stream));
        foreach (var (number, page) in document.Pages.Index())
        {
            if (plan.PreviewDpi is { } preview)
            {
                yield return Picture($"{document.Name}-{number + 1:00}.png", page, preview, DotDepth.Gray);
            }

            if (plan.LabelDpi is { } dpi && document.Name.StartsWith(PrintOptions.Tags, StringComparison.Ordinal))
            {
                yield return Picture($"{document.Name}-{dpi}dpi-{number + 1:00}.png", page, dpi, DotDepth.BlackOrWhite);
            }
        }
    }

    private NewFile Picture(string file, Page page, int dotsPerInch, DotDepth depth) =>
        new(PathOf(file), stream => PngFile.Write(page, _fonts, dotsPerInch, depth, stream));

    private string PathOf(string file) => Path.Combine(plan.Folder, file);

    private sealed record Document(string Name, Paper Paper, IReadOnlyList<Page> Pages);
}
