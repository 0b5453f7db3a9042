using CsCheck;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Pages.Strip;
using Tagend.Specs;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class MarkingStripTests
{
    private static readonly StripStock[] Stocks =
    [
        StripStock.Sheet(Paper.Letter),
        StripStock.Sheet(Paper.A4),
        StripStock.Roll(StripStock.NarrowestRoll),
        StripStock.Roll(Length.FromInches(4)),
    ];

    public static TheoryData<string, LengthUnit, StripPositions> Strips => new MatrixTheoryData<string, LengthUnit, StripPositions>(
        ["usual", "close", "bare"],
        [LengthUnit.Inch, LengthUnit.Millimeter],
        [StripPositions.Finished, StripPositions.OnJig]);

    [Theory]
    [MemberData(nameof(Strips))]
    public void Words_OfAnyStrip_AreLegibleOnThePageAndDoNotTouch(string name, LengthUnit unit, StripPositions positions)
    {
        foreach (var stock in Stocks)
        {
            var composed = Compose(SpecOf(name, unit), stock, positions);
            Assert.Empty(composed.Problems);
            Assert.All(composed.Pages, page => AssertLegible(page, stock));
        }
    }

    [Fact]
    public void Strip_SaysWhatWhereAndFromBothEnds()
    {
        var words = WordsOf(Compose(SpecOf("usual", LengthUnit.Inch), StripStock.Roll(Length.FromInches(2)), StripPositions.Finished));
        string[] expected =
        [
            "8", "end A serving ends, B 52 1/4",
            "18", "peep, B 42 1/4",
            "29 1/2", "nock point, B 30 3/4",
            "26 1/4", "center serving starts, B 34",
            "A", "top cam", "B", "bottom cam, A 60 1/4",
            "SERVE  t019 red",
        ];
        Assert.All(expected, e => Assert.Contains(e, words));
        Assert.Contains(words, w => w.Contains("A to B must measure 60 1/4 in.", StringComparison.Ordinal));
    }

    [Fact]
    public void Part_ToAScreenReader_IsAFigureOfItsPlacesWithoutTheRuler()
    {
        var composed = Compose(SpecOf("usual", LengthUnit.Inch), StripStock.Sheet(Paper.Letter), StripPositions.Finished);
        var figures = composed.Pages.SelectMany(p => p.Inks).OfType<PartStart>().Where(p => p.Kind == PartKind.Figure).Select(p => p.InWords!).ToList();
        var peep = Assert.Single(figures, f => f.Contains("18, peep, B 42 1/4", StringComparison.Ordinal));
        Assert.DoesNotContain(", 17,", peep, StringComparison.Ordinal);
    }

    [Fact]
    public void Strip_OfServedLoopsAndLegs_SaysSo()
    {
        var served = SpecFixture.Good() with { EndLoops = new EndLoops(Length.FromInches(0.75), Length.FromInches(0.75), new LoopServing("t021", Length.FromInches(0.021), "black")) };
        var words = WordsOf(Compose(served, StripStock.Roll(Length.FromInches(2)), StripPositions.Finished));
        Assert.Contains("top cam, loop served with t021 black", words);
        Assert.Contains("bottom cam, A 60 1/4, loop served with t021 black", words);
        var yoke = SpecFixture.Good(
            ("piece", "cable"), ("kind", "split-yoke-cable"), ("finished_length", "39 1/4 in"), ("servings", ""), ("center_serving", ""),
            ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));
        words = WordsOf(Compose(yoke, StripStock.Roll(Length.FromInches(2)), StripPositions.Finished));
        Assert.Contains("SERVE  t021 black, each leg", words);
        Assert.Contains("SERVE  t021 black", words);
        Assert.Contains("axle, both legs", words);
    }

    [Fact]
    public void Jig_MarksThePostsAndTheJigsPlaces()
    {
        var spec = SpecOf("usual", LengthUnit.Inch);
        var words = WordsOf(Compose(spec, StripStock.Roll(Length.FromInches(2)), StripPositions.OnJig));
        Assert.Contains("POST A, outside of the post", words);
        Assert.Contains($"POST B, outside of the post, A {LengthWriter.Fraction(spec.Posts.Outside, 16)}", words);
        Assert.Contains($"A to B must measure {LengthWriter.Fraction(spec.Posts.Outside, 16)} in.", string.Join(' ', words), StringComparison.Ordinal);

        // From the same zero as the card: a tape hooked on the outside of post A.
        Assert.Contains($"{LengthWriter.Fraction(spec.FromPostA(Length.FromInches(18)), 16)}", words);
        Assert.DoesNotContain("SERVE  t019 red", words);
    }

    [Fact]
    public void Parts_OfAStripInMillimeters_NameTheirRangeInMillimetersOnce()
    {
        var words = WordsOf(Compose(SpecOf("usual", LengthUnit.Millimeter), StripStock.Sheet(Paper.A4), StripPositions.Finished));
        Assert.Contains(words, w => w.EndsWith("part 1 of 6: 0 to 270 mm from A", StringComparison.Ordinal));
        Assert.DoesNotContain(words, w => w.Contains("0 mm to", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("٣", "marking strip ٣ string")]
    public void Strip_OfANameTheFontCannotWrite_IsAProblemAndNoPage(string order, string place)
    {
        foreach (var stock in Stocks)
        {
            var composed = Compose(SpecFixture.Good(("order", order)), stock, StripPositions.Finished);
            Assert.Empty(composed.Pages);
            Assert.All(composed.Problems, p => Assert.Equal(place, p.At.File));
            Assert.Contains("the font has no glyph for '٣' (U+0663)", composed.Problems[0].Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Places_TooCloseToBeNamed_AreAProblemAndNoPage()
    {
        var marks = string.Join("; ", Enumerable.Range(0, 12).Select(i => $"{9 + (i / 16.0)} in"));
        var spec = SpecFixture.Build(("speed_nocks", marks)).Spec!;
        var composed = Compose(spec, StripStock.Sheet(Paper.Letter), StripPositions.Finished);
        Assert.Empty(composed.Pages);
        Assert.Matches(
            "^marking strip D-101 string \".*\": too many places near this one \\(speed nock, B .*\\) to write all their distances; leave one out of the order$",
            Assert.Single(composed.Problems).ToString());
    }

    [Fact]
    public void Parts_OfAnyPiece_JoinWithoutGapAndFitTheirRoom() => Gen
        .Select(Gen.Int[1, 400_000], Gen.Int[100_000, 5_000_000], Gen.Bool)
        .Sample(
            (strip, room, isInch) =>
            {
                var (whole, space) = (Length.FromMillimeters(strip / 10.0), Length.FromMillimeters(room / 1000.0));
                var step = isInch ? Length.FromInches(1) : Length.FromMillimeters(10);
                var tiles = StripTile.Cut(whole, space, step);
                Assert.Equal(Length.Zero, tiles[0].From);
                Assert.Equal(whole, tiles[^1].To);
                Assert.All(tiles.Zip(tiles.Skip(1)), t => Assert.Equal(t.First.To, t.Second.From));
                Assert.All(tiles, t => Assert.True(t.To > t.From && t.To - t.From <= space));
                Assert.All(tiles.SkipLast(1), t => Assert.True(t.To / step % 1 == 0 && space - (t.To - t.From) >= Length.FromInches(0.4)));
            },
            iter: 2000,
            threads: 1,
            seed: "0000striptiles");

    [Fact]
    public void Joint_OfAShortLastPart_IsStillClosedByTheWholeLength()
    {
        // 60 11/16 in on letter: the seventh part is 11/16 in.
        var spec = SpecFixture.Good(("finished_length", "60 11/16 in"));
        var composed = Compose(spec, StripStock.Sheet(Paper.Letter), StripPositions.Finished);
        var lengths = composed.Pages.SelectMany(p => p.Inks.OfType<BoxInk>()).Where(b => b.Height == 3).Select(b => b.Width / 72).ToList();
        Assert.Equal(12, lengths.Count);
        Assert.Equal(6 * 4, lengths.Sum(), 1e-3);
        Assert.Contains(lengths, l => Math.Abs(l - 0.6875) < 1e-4);
    }

    [Fact]
    public void Roll_BeyondALongestPage_IsInSections()
    {
        var spec = SpecFixture.Good() with { FinishedLength = Length.FromInches(250), Servings = [], Separators = [], Marks = [] };
        var pages = Compose(spec, StripStock.Roll(Length.FromInches(2)), StripPositions.Finished).Pages;
        Assert.Equal(2, pages.Count);
        Assert.All(pages, p => Assert.InRange(p.Height * 1.03f, 0, 14_400));
    }

    private static void AssertLegible(Page page, StripStock stock)
    {
        Assert.True(page.IsLying);
        Assert.Equal(Points.Of(stock.Across), page.Width);
        var margin = Points.Of(StripStock.Margin) - 0.01f;
        var texts = page.Inks.OfType<TextInk>().ToList();
        Assert.All(texts, t => Assert.True(t.Style.Size >= 7));
        var areas = texts.Select(AreaOf).ToList();
        Assert.All(areas, a => Assert.True(
            a.Left >= margin && a.Right <= page.Height - margin && a.Top >= margin && a.Bottom <= page.Width - margin));
        for (var i = 0; i < areas.Count; i++)
        {
            for (var j = i + 1; j < areas.Count; j++)
            {
                Assert.False(Touch(areas[i], areas[j]), $"\"{texts[i].Text}\" touches \"{texts[j].Text}\"");
            }
        }

        // Lines of places and joints cross no words.
        foreach (var line in page.Inks.OfType<LineInk>().Where(l => l.X1 == l.X2 && l.Width >= 0.8f))
        {
            var area = (line.X1 - (line.Width / 2), Math.Min(line.Y1, line.Y2), line.X1 + (line.Width / 2), Math.Max(line.Y1, line.Y2));
            Assert.All(texts.Zip(areas), t => Assert.False(Touch(area, t.Second), $"a line crosses \"{t.First.Text}\""));
        }
    }

    private static (float Left, float Top, float Right, float Bottom) AreaOf(TextInk text) => (
        text.X,
        text.Baseline - text.Style.CapHeight,
        text.X + TestFonts.Shipped.WidthOf(text.Text.TrimEnd(), text.Style),
        text.Baseline);

    private static bool Touch(
        (float Left, float Top, float Right, float Bottom) a, (float Left, float Top, float Right, float Bottom) b) =>
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > 0.1f
        && Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Top, b.Top) > 0.1f;

    private static BuildSpec SpecOf(string name, LengthUnit unit)
    {
        var (spec, _) = SpecFixture.Build(unit, name switch
        {
            "close" => [("speed_nocks", "9 in; 9 3/8 in; 9 3/4 in; B 9 1/2 in"), ("peep", "22 in"), ("nock_point", "30 1/2 in")],
            "bare" =>
            [
                ("kind", "plain"), ("finished_length", "14 1/2 in"), ("colors", ""), ("servings", ""), ("center_serving", ""),
                ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", ""),
            ],
            _ => [],
        });
        return spec!;
    }

    private static Composed Compose(BuildSpec spec, StripStock stock, StripPositions positions) => MarkingStrip.Compose(
        new Build(spec, new OrderSlip("", "", "", "")), SpecFixture.Catalog, stock, positions, TestFonts.Shipped);

    private static List<string> WordsOf(Composed composed) =>
        [.. composed.Pages.SelectMany(p => p.Inks.OfType<TextInk>()).Select(t => t.Text.Replace('\u00A0', ' '))];
}
