using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Card;
using Tagend.Pages.Parts;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Output;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class JigCardTests
{
    private static readonly OrderSlip Slip = new("Demo customer 12", "compound bow, hybrid cam, 70 lb", "2026-04-02", "");

    private static readonly OrderSlip LongSlip = new(
        "A demo customer with a name of many words that goes over the line",
        "compound bow, single cam, 65 lb, long axle to axle, left hand, second set of the season",
        "2026-04-02",
        "peep a touch higher than last time; a second string as a spare in the same colors, and keep the offcuts");

    /// <summary>With how many pages a card takes on each.</summary>
    private static readonly (Paper Paper, int Sides)[] Papers =
        [(Paper.HalfLetter, 2), (Paper.A5, 2), (Paper.IndexCard, 2), (Paper.Letter, 1), (Paper.A4, 1)];

    /// <summary>Of the post setting: it leans between numerator and denominator.</summary>
    private const string FractionSlash = "/";

    private static readonly (string, string)[] Full =
    [
        ("kind", "single-cam-string"),
        ("finished_length", "109 15/16 in"),
        ("strands", "28"),
        ("colors", "black:8 red:8 flo-green:8 silver:4"),
        ("servings", "A 0 in..9 in; A 14 in..16 in; A 20 1/16 in..24 3/32 in; A 40 1/2 in..44 in; A 60 in..62 in; A 63 in..64 in; A 65 in..66 in; A 67 in..72 in; B 0 in..10 in"),
        ("center_serving", "50 in..55 1/2 in t019 flo-green"),
        ("nock_point", "53 in"),
        ("peep", "44 1/2 in"),
        ("speed_nocks", "10 in; 12 in; B 11 in; B 13 in"),
    ];

    private static readonly (string, string)[] Bare =
    [
        ("kind", "plain"), ("finished_length", "20 in"), ("colors", ""), ("servings", ""), ("center_serving", ""),
        ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", ""),
    ];

    public static TheoryData<string, LengthUnit> Cards => new MatrixTheoryData<string, LengthUnit>(
        ["usual", "full", "bare"], [LengthUnit.Inch, LengthUnit.Millimeter]);

    [Theory]
    [MemberData(nameof(Cards))]
    public void Card_OnAnyPaper_HasLegibleTextsThatDoNotTouch(string name, LengthUnit unit)
    {
        var (spec, _) = SpecFixture.Build(unit, name switch { "full" => Full, "bare" => Bare, _ => [] });
        foreach (var (paper, sides) in Papers)
        {
            var composed = Compose(spec!, paper, name == "full" ? LongSlip : Slip);
            Assert.Empty(composed.Problems);
            Assert.Equal(name == "full" ? 2 : sides, composed.Pages.Count);
            foreach (var page in composed.Pages)
            {
                Assert.Equal(Points.Of(paper.Width), page.Width);
                Assert.Equal(Points.Of(paper.Height), page.Height);

                var texts = page.Inks.OfType<TextInk>().Where(t => t.Text != FractionSlash).ToList();
                Assert.All(texts, t => Assert.True(t.Style.Size >= TypeScale.Smallest));
                var areas = texts.Select(AreaOf).ToList();
                Assert.All(areas, a => Assert.True(
                    a.Left >= 18 && a.Right <= page.Width - 17.9f && a.Top >= 18 && a.Bottom <= page.Height - 18));
                for (var i = 0; i < texts.Count; i++)
                {
                    for (var j = 0; j < i; j++)
                    {
                        Assert.False(Touch(areas[i], areas[j]), $"\"{texts[i].Text}\" touches \"{texts[j].Text}\"");
                    }
                }
            }
        }
    }

    [Fact]
    public void Card_OfAString_ShowsWhatTheBenchNeeds()
    {
        var spec = SpecFixture.Good();
        var texts = TextsOf(Compose(spec, Paper.HalfLetter, Slip));
        string[] expected =
        [
            "D-101 string",
            "compound bow, hybrid cam, 70 lb",
            $"{LengthWriter.Setting(spec.Posts.Tape, LengthUnit.Inch)} outside to outside, on the tape",
            LengthWriter.Exact(spec.Posts.Outside, LengthUnit.Inch),
            "60 1/4 in",
            "± 1/16 in",
            "45 S",
            "either hook clockwise as you face it",
            "12 loops",
            "tie the tag ends of black.",
            "tie the tag ends of red.",
            "26 1/4",
            "29 1/4",
            "b peep",
            "c nock point",
            "12 black | 12 red",
            "Hand Z: spool clockwise as it moves away from you.",
            "drawn 1 : 14, ruler in inches from A",
            "top cam",
            "bottom cam",
            "Lot, strand",
            "Initials",
            "Notes",
            "D-101 string, rev 1",
        ];
        Assert.All(expected, e => Assert.Contains(texts, t => t.Contains(e, StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Cards))]
    public void Card_AtArmsLength_HasItsNumbersLarge(string name, LengthUnit unit)
    {
        var (spec, _) = SpecFixture.Build(unit, name switch { "full" => Full, "bare" => Bare, _ => [] });
        var write = new CardWriter(unit, SpecFixture.Catalog.Words);
        foreach (var (paper, _) in Papers)
        {
            var inks = Compose(spec!, paper, Slip).Pages.SelectMany(p => p.Inks).OfType<TextInk>().ToList();
            var large = inks.Where(t => t.Style.Size >= TypeScale.ArmsLength).Select(t => t.Text).ToList();
            string[] numbers =
            [
                .. spec!.Layup.Colors.SelectMany(c => new[] { write.Color(c.Color), c.LoopCount(), $"{c.Post} – {c.EndPost}" }),
                .. spec.Servings.SelectMany(s => new[] { write.Bare(s.From), write.Bare(s.To) }),
                .. spec.Marks.Select(m => write.Bare(m.Position)),
                .. spec.Separators.Select(s => write.BareTape(spec.FromPostA(s.Position))),
                $"{CardWriter.TurnsToPutIn(spec)} {spec.Twist.Hand}",
                write.Mark(spec.FinishedLength),
            ];
            Assert.All(numbers, n => Assert.Contains(n, large));
            Assert.Contains(inks, t => t.Style.Size == TypeScale.Post.Size && write.Setting(spec.Posts.Tape).StartsWith(t.Text, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Head_OfEveryCard_IsAtTheSamePlace()
    {
        var cards = new[] { Full, Bare, [] }
            .SelectMany(cells => new[] { (Cells: cells, Slip), (Cells: [.. cells, ("order", "ORDER-NUMBER-TWENTY-FOUR"), ("piece", "piece of twenty-four ch")], Slip: LongSlip) })
            .Select(c => Compose(SpecFixture.Build(LengthUnit.Inch, c.Cells).Spec!, Paper.HalfLetter, c.Slip))
            .ToList();
        Assert.Single(cards.Select(c => PlaceOf(c, "SET THE POSTS")).Distinct());
        Assert.Single(cards.Select(c => PlaceOf(c, "TURNS")).Distinct());
    }

    [Fact]
    public void Card_TooFullForItsBoxes_HasThemOnItsBack()
    {
        (string, string)[] longest = [("order", "ORDER-NUMBER-TWENTY-FOUR"), ("piece", "piece of twenty-four ch"), ("nock_groove", "0.08 in")];
        var composed = Compose(SpecFixture.Build(LengthUnit.Inch, [.. Full, .. longest]).Spec!, Paper.IndexCard, LongSlip);
        Assert.Equal(2, composed.Pages.Count);
        Assert.Single(composed.Pages, p => p.Inks.OfType<TextInk>().Any(t => t.Text == "Initials"));
    }

    [Fact]
    public void Load_InNewtons_HasNoCommaThatReadsAsADecimal()
    {
        var texts = TextsOf(Compose(SpecFixture.Good() with { Unit = LengthUnit.Millimeter }, Paper.A5, Slip));
        Assert.Contains(texts, t => t.StartsWith("1 334 N, 20 min", StringComparison.Ordinal));
        Assert.DoesNotContain(texts, t => t.Contains("1,334", StringComparison.Ordinal));
    }

    [Fact]
    public void Steps_OfACard_AreInTheOrderOfTheWorkWithABoxEach()
    {
        string[] steps = ["LAY UP", "TIE", "SEPARATORS", "TWIST, BURNISH", "STRETCH", "REST", "SERVE", "STRETCH AGAIN", "MEASURE", "INSPECT"];
        foreach (var (paper, _) in Papers)
        {
            var page = Compose(SpecFixture.Good(), paper, Slip).Pages[0];
            var places = steps.Select(s => page.Inks.OfType<TextInk>().First(t => t.Text == s)).ToList();
            Assert.Equal(places.OrderBy(t => t.Baseline), places);
            Assert.All(places, t => Assert.Contains(
                page.Inks.OfType<BoxInk>(), b => b.Width == b.Height && b.Width >= 9 && b.X < t.X && b.Y < t.Baseline && b.Y + b.Height > t.Baseline - t.Style.CapHeight));
        }
    }

    [Fact]
    public void Steps_OfAShop_AreAsItsTemplateHasThem()
    {
        var catalog = SpecFixture.Catalog with
        {
            CardSteps = [new CardStep(CardStepKind.Measure, "CHECK LENGTH"), new CardStep(CardStepKind.Own, "WAX", "Two coats."), new CardStep(CardStepKind.Inspect, Text: "Look twice.")],
        };
        var texts = TextsOf(JigCard.Compose(new Build(SpecFixture.Good(), Slip), catalog, "TAG", Paper.HalfLetter, TestFonts.Shipped));
        Assert.All(["CHECK LENGTH", "WAX", "Two coats.", "INSPECT", "Look twice."], t => Assert.Contains(t, texts));
        Assert.DoesNotContain("SERVE", texts);
        Assert.DoesNotContain("Strands even, servings tight, separators in place, nothing cut or frayed.", texts);
    }

    [Theory]
    [InlineData(0.031, "45 S")] // half the tolerance of 1/16 in
    [InlineData(-0.031, "45 S")]
    [InlineData(0.032, "46 1/2 S")]
    [InlineData(-0.032, "43 1/2 S")]
    public void Turns_OfACard_AreThoseToPutIn(double pastTheMark, string expected)
    {
        var spec = SpecFixture.Good();
        var posts = spec.Posts with { Outside = Length.FromInches(60.25 - pastTheMark), TapeStep = Length.FromInches(0.25) };
        Assert.Contains(expected, TextsOf(Compose(spec with { Posts = posts }, Paper.HalfLetter, Slip)));
    }

    [Fact]
    public void Setting_WhereTheModelsDisagree_IsNotExactButARangeOfMarks()
    {
        var spec = SpecFixture.Good();
        var apart = spec.Twist.TakeUp with { Rule = Length.FromInches(0.54), Helix = Length.FromInches(0.7) };
        var texts = TextsOf(Compose(spec with { Twist = spec.Twist with { TakeUp = apart } }, Paper.A5, Slip));
        var (least, most) = (spec with { Twist = spec.Twist with { TakeUp = apart } }).SettingRange();
        Assert.Contains("MEASURE THE FIRST ONE EARLY", texts);
        Assert.Contains($"Rule and helix: {LengthWriter.Setting(least, LengthUnit.Inch)} to {LengthWriter.Setting(most, LengthUnit.Inch)}", texts);
        Assert.DoesNotContain(texts, t => t.StartsWith("Exact", StringComparison.Ordinal));
        Assert.DoesNotContain("MEASURE THE FIRST ONE EARLY", TextsOf(Compose(spec, Paper.A5, Slip)));
    }

    [Fact]
    public void Setting_WithoutThePosts_SaysThatItIsThePlainRule()
    {
        var spec = SpecFixture.Good();
        var plain = spec with { Posts = spec.Posts with { PostDiameter = spec.Posts.PinDiameter, IsPostGiven = false } };
        var text = string.Join(' ', TextsOf(Compose(plain, Paper.HalfLetter, Slip)));
        Assert.Contains("Post diameter not given: this setting is for posts as thick as the pins, 1/4 in.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Post diameter", string.Join(' ', TextsOf(Compose(spec, Paper.HalfLetter, Slip))), StringComparison.Ordinal);
    }

    [Fact]
    public void HalfLoops_SayWhereEachColorStartsAndEnds()
    {
        var texts = TextsOf(Compose(SpecFixture.Good(("colors", "black:13 red:11")), Paper.HalfLetter, Slip));
        Assert.All(["6 1/2", "5 1/2", "A – B", "B – A"], t => Assert.Contains(t, texts));
    }

    [Fact]
    public void Yoke_HasTheLoopsTagsAndTurnsOfItsLegs()
    {
        var (spec, _) = SpecFixture.Build(
            LengthUnit.Inch,
            ("kind", "split-yoke-cable"), ("finished_length", "38 in"), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));
        var composed = Compose(spec!, Paper.HalfLetter, Slip);
        var texts = TextsOf(composed);
        Assert.All(["Leg", "Post A1: ", "Post A2: ", "each leg 8 turns"], t => Assert.Contains(t, texts));

        // Two loops at A and one at B.
        Assert.Equal(3, composed.Pages[1].Inks.OfType<OvalInk>().Count(o => o.RadiusX > 4.5f && o.RadiusX < 6));
    }

    [Fact]
    public void EndLoops_ThatAreServed_AreSaidAndDrawnThick()
    {
        var spec = SpecFixture.Good();
        var served = spec with { EndLoops = new EndLoops(Length.FromInches(0.75), Length.FromInches(0.75), new LoopServing("t021", Length.FromInches(0.021), "red")) };
        var composed = Compose(served, Paper.HalfLetter, Slip);
        Assert.Contains("Serve the end loops first, with t021 red.", TextsOf(composed));
        Assert.Equal(2, composed.Pages[1].Inks.OfType<OvalInk>().Count(o => o.Stroke == 2.6f));
        Assert.DoesNotContain(Compose(spec, Paper.HalfLetter, Slip).Pages[1].Inks.OfType<OvalInk>(), o => o.Stroke == 2.6f);
    }

    [Fact]
    public void Lots_ThatTheSpecHas_StandAtTheirBoxes()
    {
        var spec = SpecFixture.Good();
        Assert.Contains("lots L-204, 77B", TextsOf(Compose(spec with { Lots = ["L-204", "77B"] }, Paper.HalfLetter, Slip)));
        Assert.DoesNotContain(TextsOf(Compose(spec, Paper.HalfLetter, Slip)), t => t.StartsWith("lots", StringComparison.Ordinal));
    }

    public static TheoryData<string> Kinds => [.. SpecFixture.Catalog.Plans.Values.Where(p => p.Material is not null).Select(p => p.Name)];

    /// <summary>A row with nothing but what it must have, at every whole inch of its kind's lengths, on either paper.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Card_OfAnyKindWithNothingElseOrdered_Fits(string kind)
    {
        var plan = SpecFixture.Catalog.Plans[kind];
        for (var inches = (int)Math.Ceiling(plan.Shortest.Inches); inches <= plan.Longest.Inches; inches++)
        {
            var csv = $"order,piece,kind,finished_length\n1,x,{kind},{inches} in\n";
            var file = OrderReader.Read("orders.csv", System.Text.Encoding.UTF8.GetBytes(csv), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns);
            if (new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date).Build(file.Lines[0], []) is { } spec)
            {
                Assert.All(Papers, p => Assert.Equal(p.Sides, Compose(spec, p.Paper, OrderSlip.Blank).Pages.Count));
            }
        }
    }

    [Fact]
    public void Tags_OfOneColor_NeedADummyAtB()
    {
        var texts = TextsOf(Compose(SpecFixture.Good(("colors", "black:24")), Paper.HalfLetter, Slip));
        Assert.Contains("tie the tag ends.", texts);
        Assert.Contains("no color ends here, tie in a dummy tag.", texts);
    }

    [Fact]
    public void Ink_OfACard_IsBlackOrPaper()
    {
        List<Ink> inks = [.. Papers.SelectMany(p => Compose(SpecFixture.Good(), p.Paper, Slip).Pages).SelectMany(p => p.Inks)];
        Assert.All(inks.OfType<TextInk>(), t => Assert.True(t.Style.Gray is 0 or 255));
        Assert.All(inks.OfType<BoxInk>(), b => Assert.True(b.Fill is null or 0 or 255));
        Assert.All(inks.OfType<LineInk>(), l => Assert.Equal(0, l.Gray));
    }

    [Fact]
    public void Notes_LongerThanTheCard_AreAProblemAndNoPage()
    {
        var notes = string.Join(' ', Enumerable.Repeat("keep the offcuts of this one", 300));
        var composed = Compose(SpecFixture.Good(), Paper.HalfLetter, Slip with { Notes = notes });
        Assert.Empty(composed.Pages);
        Assert.All(composed.Problems, p => Assert.StartsWith("jig card D-101 string: ", p.ToString(), StringComparison.Ordinal));
        Assert.All(composed.Problems, p => Assert.EndsWith("; on half letter", p.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Customer_WithACharacterTheFontLacks_IsAProblem()
    {
        var problem = Assert.Single(Compose(SpecFixture.Good(), Paper.A5, Slip with { Customer = "漢" }).Problems);
        Assert.Equal(
            "jig card D-101 string: \"漢\": the font has no glyph for '漢' (U+6F22); write it another way; on A5",
            problem.ToString());
    }

    [Fact]
    public void TagText_BeyondAQrCode_IsAProblem()
    {
        var composed = JigCard.Compose(
            new Build(SpecFixture.Good(), Slip), SpecFixture.Catalog, new string('A', 5000), Paper.A5, TestFonts.Shipped);
        Assert.Equal(
            "jig card D-101 string: the tag text of 5000 characters is more than a QR code holds",
            Assert.Single(composed.Problems).ToString());
    }

    private static Composed Compose(BuildSpec spec, Paper paper, OrderSlip slip) =>
        JigCard.Compose(new Build(spec, slip), SpecFixture.Catalog, TagWriter.Write(spec), paper, TestFonts.Shipped);

    private static List<string> TextsOf(Composed composed) =>
        [.. composed.Pages.SelectMany(p => p.Inks).OfType<TextInk>().Select(t => t.Text)];

    private static (float X, float Baseline) PlaceOf(Composed composed, string text)
    {
        var ink = composed.Pages[0].Inks.OfType<TextInk>().First(t => t.Text == text);
        return (ink.X, ink.Baseline);
    }

    /// <summary>From the top of the capitals to the baseline.</summary>
    private static (float Left, float Top, float Right, float Bottom) AreaOf(TextInk text) => (
        text.X,
        text.Baseline - text.Style.CapHeight,
        text.X + TestFonts.Shipped.WidthOf(text.Text.TrimEnd(), text.Style),
        text.Baseline);

    private static bool Touch(
        (float Left, float Top, float Right, float Bottom) a, (float Left, float Top, float Right, float Bottom) b) =>
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > 0.1f
        && Math.Min(a.Bottom, b.Bottom) - Math.Max(a.Top, b.Top) > 0.1f;
}
