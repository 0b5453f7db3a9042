using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Specs;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public class SpoolLabelsTests
{
    private static readonly ReceivedSpool Spool =
        new(1234, StockKind.Strand, "hmpe-lcp-0145", "flo-green", "LOT-2026-0001/7", Length.FromMillimeters(1_568_000), new DateOnly(2026, 3, 14));

    public static TheoryData<string> Stocks => [.. SheetFixture.Catalog.Stocks.Keys];

    [Theory]
    [MemberData(nameof(Stocks))]
    public void Label_OnAnyShippedStock_SaysWhatTheSpoolIs(string stock)
    {
        var composed = Compose(stock, [Spool]);
        Assert.Empty(composed.Problems);
        var text = SheetFixture.TextOf(composed.Pages).Replace('\u00A0', ' ').Replace('\u2011', '-');
        Assert.All(["SPOOL", "1234", "hmpe-lcp-0145", "flo-green", "Lot LOT-2026-0001/7", "2026-03-14"], word => Assert.Contains(word, text, StringComparison.Ordinal));
        Assert.All(composed.Pages[0].Inks.OfType<TextInk>(), t => Assert.True(t.Style.Size >= 7));
    }

    [Fact]
    public void Labels_OnASheet_BeginAtTheFirstThatIsLeft()
    {
        var all = Enumerable.Range(1, 4).Select(i => Spool with { Number = i });
        Assert.Equal(2, Compose("letter-2x5", all, 9).Pages.Count);
        Assert.NotEmpty(Compose("letter-2x5", all, 11).Problems);
    }

    private static Composed Compose(string stock, IEnumerable<ReceivedSpool> spools, int first = 1) => SpoolLabels.Compose(
        spools, SheetFixture.Catalog, TestFonts.Shipped, SheetFixture.Catalog.Stocks[stock], new SheetUse(first, new HashSet<int>()));
}
