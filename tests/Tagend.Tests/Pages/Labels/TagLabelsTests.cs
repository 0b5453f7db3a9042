using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Qr.Encode;
using Tagend.Specs;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class TagLabelsTests
{
    private static readonly ShopCatalog Catalog = SheetFixture.Catalog;

    public static TheoryData<string, string> Stocks => new()
    {
        { "roll-4x2", "roll-4x2" },
        { "roll-3x2", "roll-3x1.25" },
        { "roll-100x50mm", "roll-100x50mm" },
        { "letter-2x5", "letter-2x5" },
        { "a4-2x7", "a4-2x7" },
        { "letter-2x5", "roll-3x2" },
    };

    [Theory]
    [MemberData(nameof(Stocks))]
    public void Codes_OnShippedStock_LieOnWholeDotsWithAQuietZone(string bag, string loop)
    {
        foreach (var label in LabelsOf(bag, loop, SheetFixture.Compound(5), SheetFixture.Recurve()))
        {
            var dot = Points.PerInch / (label.Stock.DotsPerInch ?? 300);
            var code = Assert.Single(label.Inks.OfType<BarsInk>());
            var module = code.Unit;
            var dots = module / dot;
            Assert.Equal(MathF.Round(dots), dots, 0.01f);
            Assert.InRange(dots, label.Stock.DotsPerInch is null ? 3.99f : 2.99f, 6.01f);
            Assert.Equal(MathF.Round(code.X / dot), code.X / dot, 0.01f);
            Assert.Equal(MathF.Round(code.Y / dot), code.Y / dot, 0.01f);

            var quiet = QrSymbol.QuietModules * module;
            var side = code.Unit * code.Bars.Max(b => b.X + b.Width);
            var slack = dot / 2; // a sheet's labels are moved to the nearest dot
            Assert.True(code.X - quiet >= label.Left - slack && code.Y - quiet >= label.Top - slack);
            Assert.True(code.Y + side + quiet <= label.Bottom + slack);
            Assert.All(label.Inks.OfType<TextInk>(), t => Assert.True(t.X >= code.X + side + quiet - slack));
        }
    }

    [Theory]
    [MemberData(nameof(Stocks))]
    public void Words_OnShippedStock_AreWithinTheirLabelAndLegible(string bag, string loop)
    {
        foreach (var label in LabelsOf(bag, loop, SheetFixture.Compound(5), SheetFixture.Crossbow()))
        {
            var texts = label.Inks.OfType<TextInk>().ToList();
            Assert.All(texts, t => Assert.True(t.Style.Size >= 7));
            Assert.True(texts.Max(t => t.Style.Size) >= 14);
            Assert.All(texts, t => Assert.True(t.X + SheetFixture.WidthOf(t) <= label.Right));
            Assert.All(texts, t => Assert.True(t.Baseline - t.Style.CapHeight >= label.Top && t.Baseline <= label.Bottom));
        }
    }

    [Fact]
    public void Pages_OnRolls_HaveEachBagWithItsLoops()
    {
        var pages = Compose("roll-4x2", "roll-3x2", 1, SheetFixture.Compound(2), SheetFixture.Recurve()).Pages;
        Assert.Equal([288, 216, 216, 288, 216], pages.Select(p => p.Width));
    }

    [Fact]
    public void Pages_OnTwoStocksOfWhichOneIsASheet_HaveAllBagsFirst()
    {
        var pages = Compose("letter-2x5", "roll-3x2", 1, SheetFixture.Compound(2), SheetFixture.Recurve()).Pages;
        Assert.Equal([612, 216, 216, 216], pages.Select(p => p.Width));
        Assert.Equal(2, pages[0].Inks.OfType<BarsInk>().Count());
    }

    [Theory]
    [InlineData(1, "1 2 3 4")]
    [InlineData(4, "4 5 6 7")]
    [InlineData(9, "9 10 | 1 2")]
    [InlineData(10, "10 | 1 2 3")]
    public void Labels_OfASheet_StartWhereAskedAndFillRowsOverPages(int first, string places)
    {
        var stock = Catalog.Stocks["letter-2x5"];
        var pages = Compose(stock.Name, stock.Name, first, SheetFixture.Compound(3)).Pages;
        Assert.Equal(places, string.Join(" | ", pages.Select(p => string.Join(' ', p.Inks.OfType<BarsInk>().Select(Place)))));

        int Place(BarsInk code) =>
            1 + (int)(code.X / Points.Of(stock.AcrossPitch))
            + (stock.Columns * (int)((code.Y - Points.Of(stock.Top)) / Points.Of(stock.DownPitch)));
    }

    [Fact]
    public void FirstLabel_BeyondTheSheet_IsAProblem()
    {
        var composed = Compose("letter-2x5", "letter-2x5", 11, SheetFixture.Recurve());
        Assert.Empty(composed.Pages);
        Assert.Equal(
            "tags: no label 11: a sheet of letter-2x5 (Letter sheet, 10 labels of 4 × 2 in) has 10",
            Assert.Single(composed.Problems).ToString());
        Assert.Empty(Compose("roll-4x2", "roll-3x2", 11, SheetFixture.Recurve()).Problems);
    }

    [Fact]
    public void Code_ThatCannotBeLargeEnough_IsAProblemAndNoPage()
    {
        var small = Stock.Roll(400, 100, 203);
        var composed = TagLabels.Compose(
            [SheetFixture.Recurve()], Catalog, TestFonts.Shipped, Catalog.Stocks["roll-4x2"], small);
        Assert.Empty(composed.Pages);
        Assert.Equal(
            "loop tag D-101 string: a code that scans does not fit on roll (Test roll): choose a larger label",
            Assert.Single(composed.Problems).ToString());
    }

    [Fact]
    public void Words_ThatDoNotFitAtTheSmallest_AreAProblemAndNoPage()
    {
        var set = SheetFixture.Recurve() with { Order = string.Join('-', Enumerable.Repeat("LONGORDER", 40)) };
        var composed = Compose("roll-4x2", "roll-4x2", 1, set);
        Assert.Empty(composed.Pages);
        Assert.All(composed.Problems, p => Assert.StartsWith("bag tag LONGORDER-", p.ToString(), StringComparison.Ordinal));
        Assert.All(composed.Problems, p => Assert.EndsWith("; on roll-4x2 (Roll, 4 × 2 in)", p.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Customer_WithACharacterTheFontLacks_IsAProblemAndNotLeftOut()
    {
        var set = SheetFixture.Recurve();
        var slip = SheetFixture.Slip with { Customer = "漢" };
        var composed = Compose("roll-4x2", "roll-4x2", 1, set with { Builds = [.. set.Builds.Select(b => b with { Slip = slip })] });
        Assert.Equal(
            "bag tag D-101: \"漢\": the font has no glyph for '漢' (U+6F22); write it another way; on roll-4x2 (Roll, 4 × 2 in)",
            Assert.Single(composed.Problems).ToString());
    }

    private static Composed Compose(string bag, string loop, int firstLabel, params BuildSet[] sets) =>
        TagLabels.Compose(sets, Catalog, TestFonts.Shipped, Catalog.Stocks[bag], Catalog.Stocks[loop], SheetUse.Whole with { FirstLabel = firstLabel });

    /// <summary>Each label with its inks and its place on its page, in points.</summary>
    private static IEnumerable<Label> LabelsOf(string bag, string loop, params BuildSet[] sets)
    {
        var composed = Compose(bag, loop, 1, sets);
        Assert.Empty(composed.Problems);
        foreach (var page in composed.Pages)
        {
            var stock = new[] { bag, loop }.Select(n => Catalog.Stocks[n]).First(
                s => MathF.Abs(Points.Of(s.PageWidth) - page.Width) < 0.2f && MathF.Abs(Points.Of(s.PageHeight) - page.Height) < 0.2f);
            for (var i = 0; i < stock.LabelsPerPage; i++)
            {
                var left = Points.Of(stock.Left + (stock.AcrossPitch * (i % stock.Columns)));
                var top = Points.Of(stock.Top + (stock.DownPitch * (i / stock.Columns)));
                var label = new Label(stock, left, top, []);
                var inks = page.Inks.Where(label.Holds).ToList();
                if (inks.Count > 0)
                {
                    yield return label with { Inks = inks };
                }
            }
        }
    }

    private sealed record Label(LabelStock Stock, float Left, float Top, IReadOnlyList<Ink> Inks)
    {
        public float Right => Left + Points.Of(Stock.LabelWidth);

        public float Bottom => Top + Points.Of(Stock.LabelHeight);

        public bool Holds(Ink ink) => ink switch
        {
            TextInk text => IsWithin(text.X, text.Baseline),
            BarsInk code => IsWithin(code.X, code.Y),
            _ => false,
        };

        private bool IsWithin(float x, float y) => x >= Left && x < Right && y >= Top && y < Bottom;
    }
}
