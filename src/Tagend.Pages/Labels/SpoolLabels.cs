using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Pages.Labels;

/// <summary>The tags of spools on label stock, one a spool.</summary>
public static class SpoolLabels
{
    /// <param name="use">Of the first sheet: it may be part used.</param>
    /// <returns>The pages, or the problems of what does not fit.</returns>
    public static Composed Compose(IEnumerable<ReceivedSpool> spools, ShopCatalog catalog, Fonts fonts, LabelStock stock, SheetUse use)
    {
        if (use.MisfitOn(stock) is { } misfit)
        {
            return new Composed([], [new Problem(new Place("spool tags"), null, misfit)]);
        }

        var problems = new List<Problem>();
        List<TagLabel> labels = [.. spools.Select(s => new TagLabel(stock, Of(s, catalog, fonts, stock, problems)))];
        return problems.Count > 0 ? new Composed([], problems) : new Composed(TagLabels.Pages(labels, use), []);
    }

    private static IReadOnlyList<Ink> Of(ReceivedSpool spool, ShopCatalog catalog, Fonts fonts, LabelStock stock, List<Problem> problems)
    {
        return TagLabels.Lay(
            new Place($"tag of spool {spool.Number}"),
            $"{catalog.Words[PaperWord.SpoolTitle]} {spool.Number}",
            LabelCode.Of(SpoolTag.Write(spool), stock),
            [style => Words(spool, catalog, style, isFull: true), style => Words(spool, catalog, style, isFull: false)],
            fonts,
            stock,
            problems);
    }

    /// <param name="isFull">With the title of its material or thread, which a small label leaves out.</param>
    private static Stack Words(ReceivedSpool spool, ShopCatalog catalog, LabelStyle style, bool isFull)
    {
        var words = catalog.Words;
        var write = new CardWriter(catalog.Shop.Unit, words);
        var title = spool.Kind == StockKind.Strand ? catalog.Materials.GetValueOrDefault(spool.Name)?.Title : catalog.Threads.GetValueOrDefault(spool.Name)?.Title;
        return new Stack(
            [
                new LabelName(words[PaperWord.SpoolTitle], $"{spool.Number}", style.Title, style.IsSmallest),
                new OneLine(new Paragraph([new Span(Held(spool.Name), style.Length)]), style.IsSmallest),
                .. spool.Color.Length == 0 ? (IEnumerable<Block>)[] : [new Paragraph([new Span(write.Color(spool.Color), style.BodyBold)])],
                new Rule(0.8f),
                style.Line(words.Say(PaperWord.SpoolLot, ("lot", Held(spool.Lot)))),
                .. isFull && title is not null ? [style.Line(words.Term(title))] : (IEnumerable<Block>)[],
                new Paragraph($"{Held(write.Spool(spool.Length))}\u00A0· {Held(DateWriter.Iso(spool.Received))}", style.Body),
            ],
            style.Gap);
    }

    private static string Held(string text) => text.Replace(' ', '\u00A0').Replace('-', '\u2011');
}
