using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>Every limit of a spec, at it and just past it.</summary>
public class LimitTests
{
    private static readonly Length Micrometer = Length.FromMillimeters(0.001);

    [Fact]
    public void StretchLimit_AtTheShareOfTheLoad_IsBuilt()
    {
        // 300 lbf on 24 strands of 44 lbf at 0.66: 0.43044 of what they carry.
        var share = SpecFixture.Good().StretchShare;
        Assert.Empty(WithLimit(share).Problems);
        Assert.Equal(
            "the stretch load of 300 lbf is 43% of what 24 strands of hmpe-0145 carry, over the limit of 43%: more strands, or a lower stretch_load in materials.toml",
            Assert.Single(WithLimit(share - 1e-9).Problems).Message);
        Assert.Null(WithLimit(share - 1e-9).Spec);

        static (BuildSpec? Spec, IReadOnlyList<Problem> Problems) WithLimit(double limit) =>
            SpecFixture.Build(SpecFixture.WithMaterial("hmpe-0145", m => m with { StretchLimit = limit }), LengthUnit.Inch);
    }

    [Theory]
    [InlineData(0, 0, true)]
    [InlineData(1, 0, false)] // the posts stand closer than the least
    [InlineData(0, -1, false)] // and farther than the most
    public void JigsReach_OfTheSettingItself_IsWithin(int shortest, int longest, bool isBuilt)
    {
        var outside = SpecFixture.Good().Posts.Outside;
        var jig = SpecFixture.Catalog.Shop.Jig with
        {
            Shortest = outside + (Micrometer * shortest),
            Longest = outside + (Micrometer * longest),
        };
        var (spec, problems) = SpecFixture.Build(SpecFixture.With(s => s with { Jig = jig }), LengthUnit.Inch);
        Assert.Equal(isBuilt, spec is not null);
        Assert.Equal(isBuilt ? 0 : 1, problems.Count);
        Assert.All(problems, p => Assert.Equal("its posts would be set to 60.387 in outside to outside; the jig reaches 60.387 in to 60.387 in", p.Message));
    }

    [Theory]
    [InlineData("40 in", true)]
    [InlineData("39.9999 in", false)]
    [InlineData("75 in", true)]
    [InlineData("75.0001 in", false)]
    public void UsualLengths_OfAPlan_AreWithin(string length, bool isBuilt)
    {
        var (spec, _) = SpecFixture.Build(("finished_length", length), ("servings", "A 0 in..8 in"), ("speed_nocks", ""));
        Assert.Equal(isBuilt, spec is not null);
    }

    [Theory]
    [InlineData("A 0..2 1/2; B 0..2.5625", true)] // the tolerance of 1/16 in
    [InlineData("A 0..2 1/2; B 0..2.5626", false)]
    [InlineData("A 0..2.5625; B 0..2 1/2", true)]
    [InlineData("A 0..2.5626; B 0..2 1/2", false)]
    public void YokesEnds_UpToTheTolerance_AreEqual(string servings, bool isEqual)
    {
        var line = SpecFixture.Order(
            ("kind", "yoke"), ("piece", "yoke"), ("finished_length", "16 3/4"), ("servings", servings), ("center_serving", ""),
            ("nock_point", ""), ("peep", ""), ("speed_nocks", ""));
        var spec = new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date).Build(line, [])!;
        Assert.Equal(isEqual ? 0 : 1, SetChecks.Of([new SetPiece(line, spec)], isWhole: true, SpecFixture.Catalog.Plans).Count());
    }

    [Theory]
    [InlineData("26 1/4 in", true)] // at the serving's edge
    [InlineData("26.2501 in", false)]
    [InlineData("31 in", true)]
    [InlineData("30.9999 in", false)]
    public void Separator_AtAServingsEdge_IsNotUnderIt(string peep, bool isFree) =>
        Assert.Equal(isFree, SpecFixture.Build(("peep", peep)).Spec is not null);

    [Theory]
    [InlineData("26 1/4 in", true)]
    [InlineData("26.2499 in", false)]
    [InlineData("31 in", true)]
    [InlineData("31.0001 in", false)]
    public void NockPoint_AtTheCenterServingsEdge_IsOnIt(string nock, bool isOn) =>
        Assert.Equal(isOn, SpecFixture.Build(("nock_point", nock)).Spec is not null);

    [Theory]
    [InlineData("A 0..8; 8..9", true)]
    [InlineData("A 0..8; 7.9999..9", false)]
    [InlineData("A 0..8; B 0..8", true)]
    [InlineData("A 0..8; A 50..60.25", true)]
    [InlineData("A 0..8; A 50..60.2501", false)] // past the end of the piece
    public void Servings_ThatMeet_DoNotOverlap(string servings, bool isBuilt) =>
        Assert.Equal(isBuilt, SpecFixture.Build(("servings", servings)).Spec is not null);

    [Theory]
    [InlineData("5 in", true)]
    [InlineData("4.9999 in", false)]
    public void Tails_AsLongAsTheServing_AreBuried(string serving, bool areBuried)
    {
        var (spec, problems) = SpecFixture.Build(("servings", $"A 0 in..{serving} t021; B 0 in..8 in t021"), ("speed_nocks", ""));
        Assert.NotNull(spec);
        Assert.Equal(areBuried ? 0 : 1, problems.Count);
        Assert.All(problems, p => Assert.Equal(
            (Severity.Warning, "the tails of 5 in are longer than the serving 0 in to 5.000 in that buries them: make the serving longer, or give the plan a shorter tail"),
            (p.Severity, p.Message)));
    }

    [Theory]
    [InlineData(0, 45)] // half the tolerance is left alone
    [InlineData(-1, 47)] // a hundredth of a millimeter less of it is not: 0.03125 in over 0.0229 in a turn is 1 1/2 turns more
    public void TurnsToPutIn_ResidualOfHalfTheTolerance_IsLeftOut(int toleranceLess, double turns)
    {
        var spec = SpecFixture.Good();
        var halfMark = spec.Posts.TapeStep / 2;
        spec = spec with
        {
            Posts = spec.Posts with { Outside = spec.Posts.Tape - halfMark },
            Tolerance = (halfMark * 2) + Length.FromMillimeters(0.01 * toleranceLess),
        };
        Assert.Equal(halfMark, spec.Posts.Residual);
        Assert.Equal(turns, spec.TurnsToPutIn, 0.5);
        Assert.Equal(Math.Round(spec.TurnsToPutIn * 2), spec.TurnsToPutIn * 2);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    public void ModelsDisagree_PastTheTolerance_Only(int nanometersMore, bool disagree)
    {
        var spec = SpecFixture.Good();
        var rule = spec.Twist.TakeUp.Helix + spec.Tolerance + Length.FromNanometers(nanometersMore);
        spec = spec with { Twist = spec.Twist with { TakeUp = spec.Twist.TakeUp with { Rule = rule } } };
        Assert.Equal(disagree, spec.ModelsDisagree);
        Assert.Equal(disagree, spec.IsSettingUncertain);
        var fitted = spec.Twist.TakeUp with { Used = TakeUpModel.Fitted, Fitted = new FittedAmount(rule, Length.Zero, 9) };
        Assert.False((spec with { Twist = spec.Twist with { TakeUp = fitted } }).IsSettingUncertain);
    }

    [Theory]
    [InlineData("0.1194 in", 0.002, 0)] // over t019, 0.11742 in: a misfit of the wanted clearance itself is none
    [InlineData("0.1174 in", 0.002, 1)] // 0.00002 in tighter than the serving
    [InlineData("0.1275 in", 0.0101, 0)]
    [InlineData("0.1275 in", 0.0100, 1)]
    public void NockMisfit_AtItsLimit_IsNotWarnedOf(string groove, double misfitAndClearance, int warnings)
    {
        var catalog = SpecFixture.With(s => s with
        {
            WantedNockClearance = Length.FromInches(0.0001),
            GreatestNockMisfit = Length.FromInches(misfitAndClearance - 0.0001),
        });
        Assert.Equal(warnings, SpecFixture.Build(catalog, LengthUnit.Inch, ("nock_groove", groove)).Problems.Count);
    }

    [Theory]
    [InlineData(0.75, 46, 35)] // 34.5 turns: halves away from zero, not to even
    [InlineData(0.75, 98, 74)] // 73.5
    [InlineData(0.5, 45, 23)] // 22.5
    public void TurnsFor_Halves_GoAwayFromZero(double rate, double inches, int turns) =>
        Assert.Equal(turns, Twist.TurnsFor(rate, Length.FromInches(inches)));

    [Theory]
    [InlineData(60.03125, 60.0625)] // half a sixteenth of an inch
    [InlineData(60.09375, 60.125)]
    [InlineData(60.031249, 60)]
    public void Tape_HalfAMark_GoesAwayFromZero(double outside, double mark) => Assert.Equal(
        Length.FromInches(mark),
        new PostSetting(Length.FromInches(1), Length.FromInches(0.25), Length.FromInches(outside), Length.FromInches(1.0 / 16)).Tape);

    [Theory]
    [InlineData("4 in", "4 in", 4, 4)]
    public void MarkOfAPiece_AtBothEnds_IsOnIt(string from, string to, double a, double b)
    {
        var spec = SpecFixture.Good(("speed_nocks", $"{from}; B {to}"), ("servings", ""), ("kind", "plain"), ("material", "hmpe-0145"));
        Assert.Equal([a, 60.25 - b], spec.Marks.Where(m => m.Kind == MarkKind.SpeedNock).Select(m => m.Position.Inches));
        Assert.NotNull(SpecFixture.Build(("speed_nocks", "B 0 in")).Spec);
        Assert.Null(SpecFixture.Build(("speed_nocks", "60.2501 in")).Spec);
    }

    [Fact]
    public void Strength_AtTheFloor_IsBuilt()
    {
        // 24 strands of 44 lbf at 0.66 carry 696.96 lbf: four times 174.24.
        Assert.NotNull(SpecFixture.Build(("draw_weight", "174.24")).Spec);
        Assert.Null(SpecFixture.Build(("draw_weight", "174.25")).Spec);
    }

    [Fact]
    public void Strength_OfACable_HasNoFloor()
    {
        // Four times the draw weight is a rule for strings of hand bows: The Traditional Bowyer's Bible.
        var spec = SpecFixture.Build(
            ("kind", "buss-cable"), ("finished_length", "38 1/2"), ("draw_weight", "200"), ("servings", ""), ("center_serving", ""),
            ("nock_point", ""), ("peep", ""), ("speed_nocks", "")).Spec!;
        Assert.Null(spec.Strength.Floor);
        Assert.Equal(Force.FromPounds(200), spec.DrawWeight);
    }
}
