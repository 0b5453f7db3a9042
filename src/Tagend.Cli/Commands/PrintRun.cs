using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Pages.Pull;
using Tagend.Pages.Sheet;
using Tagend.Pages.Strip;
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

/// <summary>One of the parts that a large batch is printed in.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Count">Of all; files are numbered where there are several.</param>
internal sealed record Volume(int Number, int Count)
{
    public string FileOf(string paper) => Count == 1 ? paper : $"{paper}-{Number:000}";
}

/// <summary>Makes the papers of sets; a set that does not fit one of them is on none. May be used by several threads.</summary>
internal sealed class PrintRun(ShopCatalog catalog, PrintPlan plan)
{
    private readonly Fonts _fonts = Fonts.Load(Path.Combine(catalog.Folder, "fonts"));

    private Paper SheetPaper => plan.Paper == PaperSize.Letter ? Paper.Letter : Paper.A4;

    private Paper CardPaper => plan.Paper == PaperSize.Letter ? Paper.HalfLetter : Paper.A5;

    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public PrintedSets Compose(IReadOnlyList<BuildSet> sets, Volume volume, CancellationToken stop)
    {
        var use = volume.Number == 1 ? plan.Use : SheetUse.Whole;
        var sheets = plan.Papers.Contains(PrintOptions.Sheets) ? new CustomerSheet(catalog, _fonts, plan.Language) : null;
        var problems = new List<Problem>();
        var good = new List<BuildSet>();
        var labels = new List<TagLabel>();
        var (cardPages, sheetPages, stripPages) = (new List<Page>(), new List<Page>(), new List<Page>());
        foreach (var set in sets)
        {
            stop.ThrowIfCancellationRequested();
            var laidOut = Task.Run(() => Asked<Composed>(PrintOptions.Sheets, () => [sheets!.Of(set, SheetPaper)]), stop);
            var cards = Asked(PrintOptions.Cards, () => set.Builds.Select(
                b => JigCard.Compose(b, catalog, TagWriter.Write(b.Spec), CardPaper, _fonts)));
            var tags = Asked<SetLabels>(PrintOptions.Tags, () => [TagLabels.Of(set, catalog, _fonts, plan.BagStock, plan.LoopStock, use)]);
            var strips = Asked(PrintOptions.Strips, () => set.Builds.Select(
                b => MarkingStrip.Compose(b, catalog, plan.StripStock, plan.Positions, _fonts)));
            var sheet = laidOut.GetAwaiter().GetResult();
            var found = new[] { cards, sheet, strips }
                .SelectMany(composed => composed.SelectMany(c => c.Problems))
                .Concat(tags.SelectMany(t => t.Problems))
                .ToList();
            problems.AddRange(found.Except(problems));
            if (found.Count == 0)
            {
                good.Add(set);
                labels.AddRange(tags.SelectMany(t => t.Labels).Select((label, i) => i == 0 ? label with { Bookmark = TitleOf(set) } : label));
                cardPages.AddRange(Bookmarked(set, cards));
                sheetPages.AddRange(Bookmarked(set, sheet));
                stripPages.AddRange(strips.SelectMany(c => c.Pages));
            }
        }

        var pulls = Asked<Composed>(PrintOptions.Pulls, () => good.Count == 0 ? [] : [PullSheet.Compose(good, catalog, SheetPaper, _fonts)]);
        problems.AddRange(pulls.SelectMany(c => c.Problems));
        IEnumerable<Document> asked =
        [
            new Document(PrintOptions.Cards, CardPaper, Scaled(cardPages)),
            .. TagDocuments(labels, use),
            new Document(PrintOptions.Sheets, SheetPaper, Scaled(sheetPages)) { Language = sheets?.LanguageTag(good) },
            new Document(PrintOptions.Pulls, SheetPaper, Scaled([.. pulls.SelectMany(c => c.Pages)])),
            .. StripDocuments(Scaled(stripPages)),
        ];
        var documents = asked.Where(d => d.Pages.Count > 0).Select(d => d with { Name = volume.FileOf(d.Name) }).ToList();
        var whose = good.Count == 1 ? good[0].Order : Counted.Of(good.Count, "set");
        return new PrintedSets(
            good,
            [.. sets.Except(good).Select(s => s.Order)],
            problems,
            [.. documents.Select(d => new PrintedPaper(PathOf($"{d.Name}.pdf"), $"Tagend {d.Name}, {whose}", d.Pages.Count, d.Paper))],
            [.. documents.SelectMany(d => Files(d, new PdfNote($"Tagend {d.Name}", good[0].Builds[0].Spec.Date, d.Language ?? catalog.Words.Tag)))]);
    }

    /// <summary>One document, or for a printer, which has one paper a job, one a stock.</summary>
    private IEnumerable<Document> TagDocuments(List<TagLabel> labels, SheetUse use)
    {
        var byStock = labels.GroupBy(l => l.Stock).ToList();
        return plan.Printer is null || byStock.Count == 1
            ? [new Document(PrintOptions.Tags, PaperOf(plan.BagStock), OnDots(TagLabels.Pages(labels, use)))]
            : byStock.Select(g => new Document($"{PrintOptions.Tags}-{g.Key.Name}", PaperOf(g.Key), OnDots(TagLabels.Pages(g, use))));

        // Labels of a printer whose dots are known stay on its dots.
        IReadOnlyList<Page> OnDots(IReadOnlyList<Page> pages) =>
            plan.BagStock.DotsPerInch is null && plan.LoopStock.DotsPerInch is null ? Scaled(pages) : pages;

        static Paper PaperOf(LabelStock stock) => new(stock.Name, stock.PageWidth, stock.PageHeight);
    }

    /// <summary>The pages of a set, with a bookmark on the first.</summary>
    private static IEnumerable<Page> Bookmarked(BuildSet set, IEnumerable<Composed> papers) =>
        papers.SelectMany(p => p.Pages).Select((page, i) => i == 0 ? page with { Bookmarks = [TitleOf(set)] } : page);

    /// <summary>Of the bookmark that leads to a set.</summary>
    private static string TitleOf(BuildSet set) =>
        set.Builds[0].Slip.Customer is { Length: > 0 } customer ? $"{set.Order}, {customer}" : set.Order;

    /// <summary>One document, or for a printer and a roll, whose pages are as long as their pieces, one a page.</summary>
    private IEnumerable<Document> StripDocuments(IReadOnlyList<Page> pages) => plan.Printer is null || !plan.StripStock.IsRoll
        ? [new Document(PrintOptions.Strips, SheetPaper, pages)]
        : pages.Select((page, i) => new Document(
            $"{PrintOptions.Strips}-{i + 1:00}", new Paper("roll", plan.StripStock.Across, Length.FromInches(page.Height / Points.PerInch)), [page]));

    private IReadOnlyList<Page> Scaled(IReadOnlyList<Page> pages) =>
        plan.Scale is { } scale ? [.. pages.Select(p => p.Through(scale))] : pages;

    private List<T> Asked<T>(string paper, Func<IEnumerable<T>> compose) =>
        plan.Papers.Contains(paper) ? [.. compose()] : [];

    private IEnumerable<NewFile> Files(Document document, PdfNote note)
    {
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
        new(PathOf(file), stream => PngFile.Write(page.Readable, _fonts, dotsPerInch, depth, stream));

    private string PathOf(string file) => Path.Combine(plan.Folder, file);

    private sealed record Document(string Name, Paper Paper, IReadOnlyList<Page> Pages)
    {
        /// <summary>Null for the shop's.</summary>
        public string? Language { get; init; }
    }
}
