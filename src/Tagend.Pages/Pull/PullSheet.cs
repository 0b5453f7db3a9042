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
    private const string Strand = "STRAND MATERIAL TO PULL";
    private const string Thread = "SERVING THREAD TO PULL";
    private const string InOrder = "ORDER OF BUILDS";

    /// <param name="sets">One or more, all in one unit.</param>
    /// <param name="paper">Letter or A4.</param>
    /// <returns>As many pages as it takes, or the problems of what does not fit.</returns>
    public static Composed Compose(IReadOnlyList<BuildSet> sets, ShopCatalog catalog, Paper paper, Fonts fonts)
    {
        var tables = new PullTables(catalog, fonts, sets[0].Builds[0].Spec.Unit);
        IReadOnlyList<Build> builds = [.. sets.SelectMany(s => s.Builds)];
        var order = BuildOrder.Of(builds);
        var stock = Stock.Of(builds.Select(b => b.Spec), catalog.Shop);
        var room = new Room(
            Points.Of(paper.Width) - (2 * Side),
            Points.Of(paper.Height) - Top - Bottom - FootGap - PullTables.Text.LineHeight);
        var flowed = Flow.Pour(
            [
                new FlowItem(Title(sets, builds, catalog.Shop), KeepWithNext: true),
                .. Part(Strand, tables.Remark, tables.Stock(stock, StockKind.Strand, room.Width)),
                .. Part(Thread, "", tables.Stock(stock, StockKind.Thread, room.Width)),
                .. Part(InOrder, Saving(order), tables.Builds(order, room.Width)),
            ],
            fonts,
            _ => room);
        if (flowed.Reasons.Count > 0)
        {
            return new Composed([], [.. flowed.Reasons.Select(r => new Problem(new Place("pull sheet"), null, $"{r}; on {paper.Title}"))]);
        }

        return new Composed([.. flowed.Pages.Select((placed, i) => PageOf(placed, Foot(i + 1, flowed.Pages.Count, paper, fonts), paper))], []);
    }

    /// <summary>With a bookmark for each part that begins on it.</summary>
    private static Page PageOf(Placed placed, IEnumerable<Ink> foot, Paper paper)
    {
        List<Ink> inks = [.. placed.InksAt(Side, Top)];
        return new Page(Points.Of(paper.Width), Points.Of(paper.Height), [.. inks, .. foot])
        {
            Bookmarks = [.. inks.OfType<TextInk>().Select(t => t.Text).Intersect([Strand, Thread, InOrder])],
        };
    }

    private static Row Title(IReadOnlyList<BuildSet> sets, IReadOnlyList<Build> builds, Shop shop)
    {
        var batch = $"{Counted(sets.Count, "set")}, {Counted(builds.Count, "piece")}";
        return new Row(
            [
                new Column(new Paragraph("Pull sheet", TypeScale.SheetTitle), ColumnWidth.Natural),
                new Column(
                    new Paragraph($"{shop.Name}\n{batch}, {DateWriter.Iso(builds[0].Spec.Date)}", PullTables.Text, Align.Right),
                    ColumnWidth.Shared()),
            ],
            Gap: 12,
            Level: Level.Bottom);
    }

    private static string Saving(BuildOrder order) => order.Changes < order.ChangesAsOrdered
        ? $"{Counted(order.Changes, "change")} of spools and posts; {order.ChangesAsOrdered} in the order of the file"
        : $"{Counted(order.Changes, "change")} of spools and posts, as in the order of the file";

    private static IEnumerable<FlowItem> Part(string title, string remark, Table table)
    {
        if (table.Rows.Count == 0)
        {
            yield break;
        }

        yield return new FlowItem(CardStyle.Part(title, remark), Before: 16, KeepWithNext: true);
        yield return new FlowItem(table, Before: 3);
    }

    private static IEnumerable<Ink> Foot(int page, int pages, Paper paper, Fonts fonts)
    {
        var baseline = Points.Of(paper.Height) - Bottom;
        var number = $"Pull sheet, page {page} of {pages}";
        var right = Points.Of(paper.Width) - Side;
        yield return new TextInk(right - fonts.WidthOf(number, PullTables.Text), baseline, number, PullTables.Text);
    }

    private static string Counted(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
