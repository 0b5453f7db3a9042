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
}
