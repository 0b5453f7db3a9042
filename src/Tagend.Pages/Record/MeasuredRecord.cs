using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Pages.Record;

/// <summary>What was measured of a set when it was built, for the customer and the shop's files.</summary>
public static class MeasuredRecord
{
    /// <summary>Distances from the page's edges, and over the foot, in points.</summary>
    private const float Side = 50;
    private const float Top = 46;
    private const float Bottom = 36;
    private const float FootGap = 10;

    private static readonly TextStyle Heading = new(Weight.Bold, 10.5f, Leading: 1.25f) { HeadingLevel = 2 };

    /// <param name="set">Builds without a measurement are said to have none.</param>
    /// <param name="words">Of the customer's language.</param>
    /// <param name="unit">Of all lengths and loads.</param>
    /// <param name="paper">A sheet.</param>
    /// <returns>One page, more where a set has very many pieces, or the problems of what does not fit.</returns>
    public static Composed Compose(BuildSet set, ShopCatalog catalog, PaperLanguage words, LengthUnit unit, Paper paper, Fonts fonts)
    {
        var (width, height) = (Points.Of(paper.Width), Points.Of(paper.Height));
        var foot = new Paragraph(words[PaperWord.RecordNoCertificate], RecordTables.Strong);
        var room = new Room(width - (2 * Side), height - Top - Bottom - FootGap);
        if (foot.Place(fonts, room) is not Placed placed)
        {
            return Refused(((Misfit)foot.Place(fonts, room)).Reasons, set, paper);
        }

        var flowed = Flow.Pour(Items(set, catalog, words, unit), fonts, _ => room with { Height = room.Height - placed.Height });
        return flowed.Reasons.Count > 0
            ? Refused(flowed.Reasons, set, paper)
            : new Composed(
                [.. flowed.Pages.Select(page => new Page(width, height, [.. page.InksAt(Side, Top), .. placed.InksAt(Side, height - Bottom - placed.Height)]))], []);
    }

    private static Composed Refused(IEnumerable<string> reasons, BuildSet set, Paper paper) =>
        new([], [.. reasons.Select(r => new Problem(new Place($"record {set.Order}"), null, $"{r}; on {paper.Title}"))]);

    private static IReadOnlyList<FlowItem> Items(BuildSet set, ShopCatalog catalog, PaperLanguage words, LengthUnit unit)
    {
        var write = new CardWriter(unit, words);
        var tables = new RecordTables(catalog, write);
        var pairs = MeasuredPair.Of(set, catalog.Plans).Select(p => tables.Pair(p)).ToList();
        var isAllWell = set.Builds.All(b => b.Measured?.IsWithin(b.Spec) == true);
        var spec = set.Builds[0].Spec;
        return
        [
            new FlowItem(Title(catalog, words)),
            new FlowItem(new Rule(1.2f), Before: 6),
            new FlowItem(Whose(set, words), Before: 6),
            .. Part(words[PaperWord.RecordLengths], tables.Lengths(set)),
            new FlowItem(
                new Paragraph(
                    words.Say(PaperWord.RecordHow, ("pin", write.Setting(spec.Posts.PinDiameter)), ("load", write.Load(Stretch.MeasuringLoad))),
                    RecordTables.Text),
                Before: 6),
            .. isAllWell ? (IEnumerable<FlowItem>)[] : [new FlowItem(new Paragraph($"{words[PaperWord.RecordAskFirst]}", RecordTables.Strong), Before: 6)],
            .. Part(words[PaperWord.RecordBuilds], tables.Builds(set)),
            .. pairs.Count == 0 ? (IEnumerable<FlowItem>)[] : Part(words[PaperWord.RecordPairs], new Stack([.. pairs], 4)),
        ];
    }

    private static IEnumerable<FlowItem> Part(string title, Block block) =>
        [new FlowItem(new Paragraph(title, Heading), Before: 20, KeepWithNext: true), new FlowItem(block, Before: 4)];

    private static Row Title(ShopCatalog catalog, PaperLanguage words)
    {
        var shop = string.Join('\n', new[] { catalog.Shop.Name, catalog.Shop.Phone }.Where(t => t.Length > 0));
        return new Row(
            [
                new Column(new Paragraph(words[PaperWord.RecordTitle], TypeScale.SheetTitle), ColumnWidth.Natural),
                new Column(new Paragraph(shop, RecordTables.Text, Align.Right), ColumnWidth.Shared()),
            ],
            Gap: 12,
            Level: Level.Bottom);
    }

    private static Paragraph Whose(BuildSet set, PaperLanguage words)
    {
        var slip = set.Builds[0].Slip;
        var others = string.Concat(new[] { slip.Customer, slip.Bow }.Where(t => t.Length > 0).Select(t => $"  ·  {t}"));
        return new Paragraph([new Span(words.Say(PaperWord.RecordOrder, ("order", set.Order)), RecordTables.Strong with { Size = 11 }), new Span(others, RecordTables.Text with { Size = 11 })]);
    }
}
