using MathNet.Numerics.Integration;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class SpecBuilderTests
{
    [Fact]
    public void Build_FullString_HasEveryPlaceFromEndA()
    {
        var spec = SpecFixture.Good();
        Assert.Equal(
            [
                Serving(ServingRole.EndA, 0, 8, "t021", 0.021, "black"),
                Serving(ServingRole.Center, 26.25, 31, "t019", 0.019, "red"),
                Serving(ServingRole.EndB, 51.75, 60.25, "t021", 0.021, "black"),
            ],
            spec.Servings);
        Assert.Equal([new Separator("peep", Length.FromInches(18), 12)], spec.Separators);
        Assert.Equal(
            [
                new Mark(MarkKind.SpeedNock, Length.FromInches(9)),
                new Mark(MarkKind.NockPoint, Length.FromInches(29.5)),
                new Mark(MarkKind.SpeedNock, Length.FromInches(50.75)),
            ],
            spec.Marks);
    }

    [Fact]
    public void FromB_EveryServing_AddsUpToThePiece()
    {
        var spec = SpecFixture.Good();
        Assert.All(spec.Servings, s => Assert.Equal(spec.FinishedLength, s.From + s.Length + spec.FromB(s.To)));
    }

    /// <summary>A straight leg from the crown of a pin, or of a post, to the peep, its way integrated numerically.</summary>
    [Fact]
    public void FromPostA_Peep_IsAsFarAlongTheLegAsOverThePin()
    {
        var spec = SpecFixture.Good();
        var closing = new EndLoop(SpecFixture.Catalog.Plans[spec.Kind].EndLoopA, spec.Posts.PinDiameter, spec.Bundle.Diameter).Closing.Inches;
        var overPin = Way(spec.Posts.PinDiameter.Inches, spec.OnJig(Length.FromInches(18)).Inches) + closing;
        var overPost = Way(spec.Posts.PostDiameter.Inches, spec.FromPostA(Length.FromInches(18)).Inches);
        Assert.Equal(overPin, overPost, 1e-6);

        // A quarter circle, and straight on from beside its middle.
        static double Way(double diameter, double fromOutside) =>
            GaussLegendreRule.Integrate(_ => diameter / 2, 0, Math.PI / 2, 8) + fromOutside - (diameter / 2);
    }

    [Fact]
    public void OnJig_Peep_IsScaledByLaidUpOverFinished()
    {
        var spec = SpecFixture.Good();
        Assert.Equal(18 * 60.79 / 60.25, spec.OnJig(Length.FromInches(18)).Inches, 1e-6);
    }

    [Fact]
    public void Build_ServingsFromB_AreTheMirroredServingsFromA()
    {
        var fromB = SpecFixture.Good(("servings", "A 0 in..8 in t021; B 20 in..22 in t021"));
        var fromA = SpecFixture.Good(("servings", "A 0 in..8 in t021; A 38 1/4 in..40 1/4 in t021"));
        Assert.Equal(fromA.Servings, fromB.Servings);
    }

    [Fact]
    public void Build_BowLength_IsThreeInchesLongerThanTheString()
    {
        // AMO Standards FP-3, 2000: a master string marked 66 measures 63 in.
        var spec = SpecFixture.Good(
            ("kind", "recurve-string"), ("finished_length", ""), ("bow_length", "66 in"), ("material", "polyester-0180"),
            ("strands", "16"), ("colors", "black red"), ("draw_weight", "40 lbf"), ("speed_nocks", ""));
        Assert.Equal(Length.FromInches(63), spec.FinishedLength);
    }

    [Fact]
    public void Build_NothingButNeeded_TakesThePlansDefaults()
    {
        var spec = SpecFixture.Good(
            ("kind", "buss-cable"), ("piece", "buss"), ("finished_length", "38 1/2 in"), ("material", ""), ("strands", ""),
            ("colors", ""), ("draw_weight", ""), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""),
            ("speed_nocks", ""));
        Assert.Equal(24, spec.Bundle.Strands);
        Assert.Equal("hmpe-0145", spec.Bundle.Material);
        Assert.Equal([new ColorShare("any", 24, PieceEnd.A)], spec.Layup.Colors);
        Assert.Equal(2, spec.Servings.Count);
        Assert.Equal(Length.FromInches(1.0 / 16), spec.Tolerance); // AMO Standards FP-3, 2000
    }

    [Theory]
    [InlineData("material", "silk", "there is no such material in the templates; there are hmpe-0145, hmpe-0180, hmpe-lcp-0145, polyester-0180")]
    [InlineData("material", "hmpe-145", "there is no such material in the templates; did you mean hmpe-0145? There are hmpe-0145, hmpe-0180, hmpe-lcp-0145, polyester-0180")]
    [InlineData("language", "xx", "there is no such language in the templates; there are de, en, es, fr")]
    [InlineData("finished_length", "20 in", "20 in is outside the usual lengths of compound-string, 40 in to 75 in: check the order, or the range in the plan")]
    [InlineData("colors", "black:12 red:10", "the colors add up to 22 strands, not 24")]
    [InlineData("colors", "black red green white blue", "24 strands cannot be shared equally among 5 colors: give each its number, such as black:12")]
    [InlineData("servings", "A 0..8; 7..9", "the serving 0 in to 8 in overlaps the serving 7 in to 9 in")]
    [InlineData("servings", "A 0..61", "the serving A 0..61 at 61 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("servings", "A 0..8 t099", "there is no such thread as t099 in the templates; did you mean t019? There are t017, t019, t021, t025, t030")]
    [InlineData("servings", "A 0..8 t012", "there is no such thread as t012 in the templates; there are t017, t019, t021, t025, t030")]
    [InlineData("peep", "28 in", "the peep at 28 in is under the serving 26 1/4 in to 31 in")]
    [InlineData("peep", "70 in", "the peep at 70 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("nock_point", "32 in", "the nock point at 32 in is outside the center serving, 26 1/4 in to 31 in")]
    [InlineData("center_serving", "", "the nock point at 29 1/2 in has no center serving: give one in the column center_serving")]
    [InlineData("speed_nocks", "B 61", "the speed nock at -3/4 in from end A is not on the piece, which ends at 60 1/4 in")]
    [InlineData("draw_weight", "200", "24 strands of hmpe-0145 carry about 697 lbf, below four times the draw weight, 800 lbf: more strands or a stronger material")]
    public void Build_WrongCell_IsRefusedInWords(string column, string text, string message)
    {
        var (spec, problems) = SpecFixture.Build((column, text));
        Assert.Null(spec);
        Assert.Contains(problems, p => p.Message == message && p.Severity == Severity.Refusal);
    }

    [Theory]
    [InlineData("finished_length", "20", "20 in is outside the usual lengths of compound-string, 40 in to 75 in: check the order, or the range in the plan")]
    [InlineData("kind", "boss-cable", "there is no such kind in the templates; did you mean buss-cable? There are buss-cable, compound-string, control-cable, crossbow-cable, crossbow-string, longbow-string, plain, recurve-string, single-cam-string, split-yoke-cable, twin-cam-cable, yoke")]
    public void Build_OneWrongCell_IsTheOnlyProblemAtItsColumn(string column, string text, string message)
    {
        var problem = Assert.Single(SpecFixture.Build((column, text), ("servings", "A 0..8"), ("speed_nocks", "")).Problems, p => p.At.Column == column);
        Assert.Equal((text, message), (problem.Text, problem.Message));
    }

    [Theory]
    [InlineData("40", "; did you mean 40 in?")]
    [InlineData("39.999", "")]
    [InlineData("75", "; did you mean 75 in?")]
    [InlineData("75.001", "")]
    public void Build_BareLengthInTheOtherUnit_IsAskedAfter(string length, string question)
    {
        var (_, problems) = SpecFixture.Build(LengthUnit.Millimeter, ("finished_length", length));
        Assert.EndsWith(
            $" mm is outside the usual lengths of compound-string, 1016.0 mm to 1905.0 mm: check the order, or the range in the plan{question}",
            Assert.Single(problems, p => p.At.Column == "finished_length" && !p.Message.StartsWith("its posts", StringComparison.Ordinal)).Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("47", true)] // a bow of 47 in has a string of 44 in, the shortest of the plan (AMO Standards FP-3, 2000)
    [InlineData("46.999", false)]
    [InlineData("73", true)] // a string of 70 in, the longest
    [InlineData("73.001", false)]
    public void Build_BareBowLengthInTheOtherUnit_IsAskedAfter(string bow, bool isMeant)
    {
        var (_, problems) = SpecFixture.Build(
            LengthUnit.Millimeter,
            ("kind", "recurve-string"), ("finished_length", ""), ("bow_length", bow), ("material", "polyester-0180"), ("strands", "16"), ("colors", "black"));
        Assert.Equal(isMeant, problems.Single(p => p.At.Column == "bow_length" && p.Message.Contains("usual lengths", StringComparison.Ordinal))
            .Message.EndsWith($"; did you mean {bow} in?", StringComparison.Ordinal));
    }

    [Fact]
    public void Build_NoKindAndNoPlanOfThatName_OffersKindsWithAWordOfIt()
    {
        var problem = Assert.Single(SpecFixture.Build(("kind", ""), ("piece", "left cable")).Problems);
        Assert.Equal("kind", problem.At.Column);
        Assert.Equal(
            "the row names no kind, and no plan is called left cable: expected a kind, such as buss-cable, control-cable, crossbow-cable, split-yoke-cable, twin-cam-cable, or the name left cable under also in a plan",
            problem.Message);
    }

    [Theory]
    [InlineData("yoke 1", "yoke")]
    [InlineData("yoke2", "yoke")]
    [InlineData("yoke 2", "control-cable")] // the whole name goes before that without its number
    public void Build_NoKind_TakesThePlanOfThePiecesName(string piece, string kind)
    {
        var line = SpecFixture.Order(
            ("kind", ""), ("piece", piece), ("finished_length", "28 in"), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));
        var catalog = SpecFixture.WithPlan("control-cable", p => p with { Also = ["yoke 2"] });
        catalog = catalog with { Plans = catalog.Plans.ToDictionary(p => p.Key, p => p.Value with { Longest = Length.FromInches(60) }) };
        Assert.Equal(kind, new SpecBuilder(catalog, LengthUnit.Inch, SpecFixture.Date).Build(line, [])!.Kind);
    }

    [Fact]
    public void Build_PlainPieceWithoutMaterialAndStrands_NeedsBoth()
    {
        var (spec, problems) = SpecFixture.Build(("kind", "plain"), ("material", ""), ("strands", ""));
        Assert.Null(spec);
        Assert.Equal(
            [("material", "is needed here: the kind plain has no default material"), ("strands", "is needed here: the kind plain has no default strands")],
            problems.Select(p => (p.At.Column, p.Message)));
    }

    [Theory]
    [InlineData("A 0 in..8 in t021 red; B 0 in..7 in t021 blue", "red")] // of the first end served with the loops' thread
    [InlineData("A 0 in..8 in t019 red; B 0 in..7 in t021 blue", "blue")]
    [InlineData("A 0 in..8 in t019 red; 40 in..42 in t021 blue", "black")] // no end is: the plan's
    public void Build_ServedLoops_HaveTheColorOfTheEndsInTheirThread(string servings, string color) => Assert.Equal(
        color,
        SpecFixture.Build(("kind", "recurve-string"), ("servings", servings), ("draw_weight", "40 lbf"), ("speed_nocks", "")).Spec!.EndLoops!.Serving!.Color);

    [Fact]
    public void Build_NockOfTheServingsOwnThickness_IsNoMisfit()
    {
        var serving = SpecFixture.Good(("nock_groove", "0.1194 in")).NockFit!.Diameter;
        var catalog = SpecFixture.With(s => s with { WantedNockClearance = Length.Zero, GreatestNockMisfit = Length.Zero });
        var groove = ExactNumber.Spelled(serving, LengthUnit.Millimeter);
        Assert.Empty(SpecFixture.Build(catalog, LengthUnit.Inch, ("nock_groove", groove)).Problems);
    }

    [Theory]
    [InlineData("18 in", 7)]
    [InlineData("28 in", null)] // under the center serving
    [InlineData("", 7)] // a warning alone
    public void Build_PieceThatIsRefused_IsNotIssued(string peep, int? revision)
    {
        var issues = new SeventhIssue();
        var spec = new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date, issues).Build(SpecFixture.Order(("peep", peep)), []);
        Assert.Equal((revision, revision is null ? 0 : 1), (spec?.Revision, issues.Asked));
    }

    [Fact]
    public void Build_BeyondTheJig_IsRefusedInWords()
    {
        var (_, problems) = SpecFixture.Build(
            ("kind", "yoke"), ("finished_length", "9 in"), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));
        Assert.Equal(
            "its posts would be set to 8.681 in outside to outside; the jig reaches 14 in to 130 in",
            Assert.Single(problems).Message);
    }

    [Fact]
    public void Build_PeepForgotten_IsWarnedAndBuilt()
    {
        var (spec, problems) = SpecFixture.Build(("peep", ""));
        Assert.NotNull(spec);
        var problem = Assert.Single(problems);
        Assert.Equal(Severity.Warning, problem.Severity);
        Assert.Equal(
            "a compound-string has a peep, but no place for it is given: it cannot be put in once the piece is served",
            problem.Message);
    }

    [Fact]
    public void Build_SeveralWrongCells_ReportsAllAtOnce()
    {
        var (_, problems) = SpecFixture.Build(("colors", "black:12 red:10"), ("peep", "28 in"), ("nock_point", "32 in"), ("draw_weight", "200"));
        Assert.Equal(4, problems.Count);
    }

    private static Serving Serving(ServingRole role, double from, double to, string thread, double diameter, string color) =>
        new(role, Length.FromInches(from), Length.FromInches(to), thread, Length.FromInches(diameter), color);

    private sealed class SeventhIssue : IIssues
    {
        public void CheckOrder(OrderLine line, ICollection<Problem> problems)
        {
        }

        public int Asked { get; private set; }

        public BuildSpec Issue(OrderLine line, BuildSpec spec, ICollection<Problem> problems)
        {
            Asked++;
            return spec with { Revision = 7 };
        }

        public int? SupersededBy(string order, string piece) => null;
    }
}
