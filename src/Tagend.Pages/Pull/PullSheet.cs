using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Pull;

/// <summary>What to take from the shelf for a batch, and in which order to build it.</summary>
public static class PullSheet
{
    /// <summary>Distances from the page's edges, and over the foot, in points.</summary>
    private const float Side = 45;
    private const float Top = 40;
    private const float Bottom = 32;
    private const float FootGap = 8;

    /// <param name="paper">A sheet.</param>
    /// <returns>As many pages as it takes, or the problems of what does not fit.</returns>
    public static Composed Compose(BatchPull pull, ShopCatalog catalog, Paper paper, Fonts fonts)
    {
        var words = catalog.Words;
        var tables = new PullTables(catalog, fonts, pull.Unit);
        IReadOnlyList<string> titles = [words[PaperWord.PullStrand], words[PaperWord.PullThread], words[PaperWord.PullOrder]];
        var room = new Room(
            Points.Of(paper.Width) - (2 * Side),
            Points.Of(paper.Height) - Top - Bottom - FootGap - PullTables.Text.LineHeight);
        var flowed = Flow.Pour(
            [
                new FlowItem(Title(pull, catalog), KeepWithNext: true),
                .. Part(titles[0], tables.Remark, tables.Stock(pull.Stock, StockKind.Strand, room.Width)),
                .. Part(titles[1], "", tables.Stock(pull.Stock, StockKind.Thread, room.Width)),
                .. Part(titles[2], Saving(pull.Order, words), tables.Builds(pull.Order, room.Width)),
            ],
            fonts,
            _ => room);
        if (flowed.Reasons.Count > 0)
        {
            return new Composed([], [.. flowed.Reasons.Select(r => new Problem(new Place("pull sheet"), null, $"{r}; on {paper.Title}"))]);
        }

        return new Composed([.. flowed.Pages.Select((placed, i) => PageOf(placed, titles, Foot(i + 1, flowed.Pages.Count, words, paper, fonts), paper))], []);
    }

    /// <summary>With a bookmark for each part that begins on it.</summary>
    private static Page PageOf(Placed placed, IReadOnlyList<string> titles, IEnumerable<Ink> foot, Paper paper)
    {
        List<Ink> inks = [.. placed.InksAt(Side, Top)];
        return new Page(Points.Of(paper.Width), Points.Of(paper.Height), [.. inks, .. foot])
        {
            Bookmarks = [.. inks.OfType<TextInk>().Select(t => t.Text).Intersect(titles)],
        };
    }

    private static Row Title(BatchPull pull, ShopCatalog catalog)
    {
        var words = catalog.Words;
        var batch = $"{Counted(pull.Sets, PaperWord.PullSetOne, PaperWord.PullSetMany, words)}, "
            + Counted(pull.Pieces, PaperWord.PullPieceOne, PaperWord.PullPieceMany, words);
        return new Row(
            [
                new Column(new Paragraph(words[PaperWord.PullTitle], TypeScale.SheetTitle), ColumnWidth.Natural),
                new Column(
                    new Paragraph($"{catalog.Shop.Name}\n{batch}, {DateWriter.Iso(pull.Date)}", PullTables.Text, Align.Right),
                    ColumnWidth.Shared()),
            ],
            Gap: 12,
            Level: Level.Bottom);
    }

    private static string Saving(PullOrder order, PaperLanguage words)
    {
        var changes = ("changes", Counted(order.Changes, PaperWord.PullChangeOne, PaperWord.PullChangeMany, words));
        return order.Changes < order.ChangesAsOrdered
            ? words.Say(PaperWord.PullSaving, changes, ("ordered", $"{order.ChangesAsOrdered}"))
            : words.Say(PaperWord.PullNoSaving, changes);
    }

    private static IEnumerable<FlowItem> Part(string title, string remark, Table table)
    {
        if (table.Rows.Count == 0)
        {
            yield break;
        }

        yield return new FlowItem(CardStyle.Part(title, remark), Before: 16, KeepWithNext: true);
        yield return new FlowItem(table, Before: 3);
    }

    private static IEnumerable<Ink> Foot(int page, int pages, PaperLanguage words, Paper paper, Fonts fonts)
    {
        var baseline = Points.Of(paper.Height) - Bottom;
        var number = words.Say(PaperWord.PullPage, ("page", $"{page}"), ("pages", $"{pages}"));
        var right = Points.Of(paper.Width) - Side;
        yield return new PartStart(PartKind.Artifact);
        yield return new TextInk(right - fonts.WidthOf(number, PullTables.Text), baseline, number, PullTables.Text);
        yield return PartEnd.Ink;
    }

    private static string Counted(int count, PaperWord one, PaperWord many, PaperLanguage words) =>
        count == 1 ? words[one] : words.Say(many, ("count", $"{count}"));
}
