using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
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

    /// <summary>Of a page: with less on it, the last one is no page of its own.</summary>
    private const float LeastOfLast = 0.25f;

    /// <summary>So much of a page is left empty at a time until its last one has enough.</summary>
    private const float Step = 0.04f;

    private const float LeastOfPage = 0.6f;

    private static TextStyle Text => PullStyle.FromRoomyToTight[0].Text;

    /// <param name="slips">By order: whose it is and when it is due; an order that is not there has none.</param>
    /// <param name="paper">A sheet.</param>
    /// <returns>As many pages as it takes, or the problems of what does not fit.</returns>
    public static Composed Compose(
        BatchPull pull, IReadOnlyDictionary<string, OrderSlip> slips, ShopCatalog catalog, Paper paper, Fonts fonts)
    {
        var words = catalog.Words;
        IReadOnlyList<string> titles = [words[PaperWord.PullStrand], words[PaperWord.PullThread], words[PaperWord.PullOrder]];
        var room = new Room(
            Points.Of(paper.Width) - (2 * Side),
            Points.Of(paper.Height) - Top - Bottom - FootGap - Text.LineHeight);
        var poured = PullStyle.FromRoomyToTight
            .Select(style => Pour(Items(pull, slips, catalog, style, titles, room.Width, fonts), room, 1, fonts))
            .Concat(LessAndLess().Select(share => Pour(Items(pull, slips, catalog, PullStyle.FromRoomyToTight[0], titles, room.Width, fonts), room, share, fonts)));
        Flowed? first = null;
        var flowed = poured.FirstOrDefault(f => (first ??= f).Reasons.Count > 0 || IsWellFilled(f, room)) ?? first!;
        if (flowed.Reasons.Count > 0)
        {
            return new Composed([], [.. flowed.Reasons.Select(r => new Problem(new Place("pull sheet"), null, $"{r}; on {paper.Title}"))]);
        }

        return new Composed([.. flowed.Pages.Select((placed, i) => PageOf(placed, titles, Foot(i + 1, flowed.Pages.Count, words, paper, fonts), paper))], []);
    }

    private static bool IsWellFilled(Flowed flowed, Room room) =>
        flowed.Pages.Count == 1 || flowed.Pages[^1].Height >= room.Height * LeastOfLast;

    private static IEnumerable<float> LessAndLess()
    {
        for (var share = 1 - Step; share >= LeastOfPage; share -= Step)
        {
            yield return share;
        }
    }

    private static Flowed Pour(IReadOnlyList<FlowItem> items, Room room, float share, Fonts fonts) =>
        Flow.Pour(items, fonts, _ => room with { Height = room.Height * share });

    private static IReadOnlyList<FlowItem> Items(
        BatchPull pull, IReadOnlyDictionary<string, OrderSlip> slips, ShopCatalog catalog, PullStyle style, IReadOnlyList<string> titles, float width, Fonts fonts)
    {
        var tables = new PullTables(catalog, fonts, pull.Unit, slips, style);
        return
        [
            new FlowItem(Title(pull, catalog), KeepWithNext: true),
            .. Part(titles[0], tables.Remark, tables.Stock(pull.Stock, StockKind.Strand, width, pull.Spools)),
            .. Part(titles[1], "", tables.Stock(pull.Stock, StockKind.Thread, width, pull.Spools)),
            .. Part(titles[2], Saving(pull.Order, catalog.Words), tables.Builds(pull.Order, width)),
        ];
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
                    new Paragraph($"{catalog.Shop.Name}\n{batch}, {DateWriter.Iso(pull.Date)}", Text, Align.Right),
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

        yield return new FlowItem(CardStyle.Section(title, remark), Before: 16, KeepWithNext: true);
        yield return new FlowItem(table, Before: 3);
    }

    private static IEnumerable<Ink> Foot(int page, int pages, PaperLanguage words, Paper paper, Fonts fonts)
    {
        var baseline = Points.Of(paper.Height) - Bottom;
        var number = words.Say(PaperWord.PullPage, ("page", $"{page}"), ("pages", $"{pages}"));
        var right = Points.Of(paper.Width) - Side;
        yield return new PartStart(PartKind.Artifact);
        yield return new TextInk(right - fonts.WidthOf(number, Text), baseline, number, Text);
        yield return PartEnd.Ink;
    }

    private static string Counted(int count, PaperWord one, PaperWord many, PaperLanguage words) =>
        count == 1 ? words[one] : words.Say(many, ("count", $"{count}"));
}
