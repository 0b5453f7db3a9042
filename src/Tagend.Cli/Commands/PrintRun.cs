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
/// <param name="Papers">The PDFs and their page counts.</param>
/// <param name="Files">Ready to be written.</param>
internal sealed record PrintedSets(
    IReadOnlyList<BuildSet> Sets,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problem> Problems,
    IReadOnlyList<(string Path, int Pages)> Papers,
    IReadOnlyList<NewFile> Files);

/// <summary>Makes the papers of sets; a set that does not fit one of them is on none.</summary>
internal sealed class PrintRun(ShopCatalog catalog, PrintPlan plan)
{
    private readonly Fonts _fonts = Fonts.Load(Path.Combine(catalog.Folder, "fonts"));

    private Paper SheetPaper => plan.Paper == PaperSize.Letter ? Paper.Letter : Paper.A4;

    private Paper CardPaper => plan.Paper == PaperSize.Letter ? Paper.HalfLetter : Paper.A5;

    public PrintedSets Compose(IReadOnlyList<BuildSet> sets)
    {
        var sheets = plan.Papers.Contains(PrintOptions.Sheets) ? new CustomerSheet(catalog, _fonts, plan.Language) : null;
        var problems = new List<Problem>();
        var good = new List<BuildSet>();
        var labels = new List<TagLabel>();
        var (cardPages, sheetPages, stripPages) = (new List<Page>(), new List<Page>(), new List<Page>());
        foreach (var set in sets)
        {
            var cards = Asked(PrintOptions.Cards, () => set.Builds.Select(
                b => JigCard.Compose(b, catalog, TagWriter.Write(b.Spec), CardPaper, _fonts)));
            var tags = Asked<SetLabels>(PrintOptions.Tags, () => [Tags(set)]);
            var sheet = Asked<Composed>(PrintOptions.Sheets, () => [sheets!.Of(set, SheetPaper)]);
            var strips = Asked(PrintOptions.Strips, () => set.Builds.Select(
                b => MarkingStrip.Compose(b, catalog, plan.StripStock, plan.Positions, _fonts)));
            var found = new[] { cards, sheet, strips }
                .SelectMany(composed => composed.SelectMany(c => c.Problems))
                .Concat(tags.SelectMany(t => t.Problems))
                .ToList();
            problems.AddRange(found.Except(problems));
            if (found.Count == 0)
            {
                good.Add(set);
                labels.AddRange(tags.SelectMany(t => t.Labels));
                cardPages.AddRange(Bookmarked(set, cards));
                sheetPages.AddRange(Bookmarked(set, sheet));
                stripPages.AddRange(strips.SelectMany(c => c.Pages));
            }
        }

        var pulls = Asked<Composed>(PrintOptions.Pulls, () => good.Count == 0 ? [] : [PullSheet.Compose(good, catalog, SheetPaper, _fonts)]);
        problems.AddRange(pulls.SelectMany(c => c.Problems));
        var tagPages = TagLabels.Pages(labels, plan.FirstLabel);
        var papers = new (string Name, IReadOnlyList<Page> Pages)[]
            {
                (PrintOptions.Cards, Scaled(cardPages)),
                (PrintOptions.Tags, IsOnDots ? tagPages : Scaled(tagPages)),
                (PrintOptions.Sheets, Scaled(sheetPages)),
                (PrintOptions.Pulls, Scaled([.. pulls.SelectMany(c => c.Pages)])),
                (PrintOptions.Strips, Scaled(stripPages)),
            }
            .Where(p => p.Pages.Count > 0)
            .ToList();
        return new PrintedSets(
            good,
            [.. sets.Except(good).Select(s => s.Order)],
            problems,
            [.. papers.Select(p => (PathOf($"{p.Name}.pdf"), p.Pages.Count))],
            [.. papers.SelectMany(p => Files(
                new PdfNote($"Tagend {p.Name}", good[0].Builds[0].Spec.Date, p.Name == PrintOptions.Sheets ? sheets!.LanguageTag : PdfNote.English),
                p.Name,
                p.Pages))]);
    }

    /// <summary>The pages of a set, with a bookmark on the first.</summary>
    private static IEnumerable<Page> Bookmarked(BuildSet set, IEnumerable<Composed> papers)
    {
        var customer = set.Builds[0].Slip.Customer;
        var title = customer.Length > 0 ? $"{set.Order}, {customer}" : set.Order;
        return papers.SelectMany(p => p.Pages).Select((page, i) => i == 0 ? page with { Bookmark = title } : page);
    }

    /// <summary>Labels of a printer whose dots are known are drawn on its dots.</summary>
    private bool IsOnDots => plan.BagStock.DotsPerInch is not null || plan.LoopStock.DotsPerInch is not null;

    private IReadOnlyList<Page> Scaled(IReadOnlyList<Page> pages) =>
        plan.Scale is { } scale ? [.. pages.Select(p => p.Through(scale))] : pages;

    private SetLabels Tags(BuildSet set) =>
        TagLabels.Of(set, catalog, _fonts, plan.BagStock, plan.LoopStock, plan.FirstLabel);

    private List<T> Asked<T>(string paper, Func<IEnumerable<T>> compose) =>
        plan.Papers.Contains(paper) ? [.. compose()] : [];

    private IEnumerable<NewFile> Files(PdfNote note, string name, IReadOnlyList<Page> pages)
    {
        yield return new NewFile(PathOf($"{name}.pdf"), stream => PdfFile.Write(pages, _fonts, note, stream));
        if (plan.PreviewDpi is not { } dpi)
        {
            yield break;
        }

        foreach (var (number, page) in pages.Index())
        {
            yield return new NewFile(
                PathOf($"{name}-{number + 1:00}.png"), stream => PngFile.Write(page, _fonts, dpi, DotDepth.Gray, stream));
        }
    }

    private string PathOf(string file) => Path.Combine(plan.Folder, file);
}
