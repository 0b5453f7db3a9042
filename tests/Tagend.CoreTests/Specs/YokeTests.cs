using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class YokeTests
{
    private static readonly (string, string)[] Split =
    [
        ("kind", "split-yoke-cable"), ("piece", "cable"), ("finished_length", "39 1/4"), ("colors", "black:16 red:8"), ("servings", ""),
        ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""),
    ];

    [Fact]
    public void Legs_OfASplitYoke_AreTheFirstAndTheSecondHalfThatIsLaid()
    {
        var spec = SpecFixture.Good(Split);
        Assert.Equal(["12 black", "4 black, 8 red"], spec.Legs().Select(l => l.Words()));
        Assert.Equal(
            [
                new EndTag(PieceEnd.A, ["black"], 1), // both legs start at their own posts
                new EndTag(PieceEnd.A, ["black"], 2),
                new EndTag(PieceEnd.B, ["red"]),
            ],
            spec.EndTags());
        Assert.Equal(new Yoke(Length.FromInches(10), 7), spec.Yoke); // 29 turns on 39 1/4 in: 7.39 on 10
    }

    [Fact]
    public void EndTags_LegOfTwoColors_TiesOneAtEachEnd() => Assert.Equal(
        ["A1: black", "A2: white", "B: red, green"],
        SpecFixture.Good([.. Split.Where(c => c.Item1 != "colors"), ("colors", "black:6 red:6 white:6 green:6")])
            .EndTags().Select(t => $"{t.Post}{(t.Leg > 0 ? t.Leg : "")}: {string.Join(", ", t.Colors)}"));

    [Fact]
    public void EndTags_OneColor_TiesADummyTagAtB() =>
        Assert.Equal([false, false, true], SpecFixture.Good([.. Split.Where(c => c.Item1 != "colors"), ("colors", "black")]).EndTags().Select(t => t.IsDummy));

    [Fact]
    public void Stock_ServingsOfTheLegs_AreTakenTwiceAndOfHalfTheStrands()
    {
        var spec = SpecFixture.Good(Split);
        var (legs, b) = (spec.Servings[0], spec.Servings[1]);
        Assert.True(spec.IsOnLegs(legs));
        Assert.False(spec.IsOnLegs(b));
        // By hand: wraps of 0.021 in thread on 3 1/2 in, each π × (D / √2 + 0.021) around and 0.021 along; D 0.07942 in.
        var wound = 3.5 / 0.021 * Math.Sqrt(Math.Pow(Math.PI * ((0.0794198 / Math.Sqrt(2)) + 0.021), 2) + (0.021 * 0.021));
        Assert.Equal(wound, spec.WorkOf(legs).Thread.Inches, 1e-4);
        var whole = ServingWork.Of(b, spec.Bundle.Diameter).Thread.Inches;
        var pulled = Stock.Of(spec, SpecFixture.Catalog.Shop).Single(n => n.Kind == StockKind.Thread).Length.Inches;
        Assert.Equal(((2 * wound) + whole + 36) * 1.03, pulled, 1e-3); // three tails of 12 in, 3 % waste
    }

    [Fact]
    public void IsOnLegs_ServingUpToTheSplit_Is()
    {
        var spec = SpecFixture.Good(Split);
        Assert.True(spec.IsOnLegs(spec.Servings[0] with { To = spec.Yoke!.Split }));
        Assert.False(spec.IsOnLegs(spec.Servings[0] with { To = spec.Yoke.Split + Length.FromNanometers(1) }));
    }

    [Fact]
    public void Posts_OfASplitYoke_CloseALoopOfHalfTheStrandsAtA()
    {
        var spec = SpecFixture.Good(Split);
        var (pin, d) = (spec.Posts.PinDiameter, spec.Bundle.Diameter);
        var closing = new EndLoop(Length.FromInches(0.75), pin, d / Math.Sqrt(2)).Closing + new EndLoop(Length.FromInches(0.75), pin, d).Closing;
        Assert.Equal(
            (spec.LaidUpLength + closing).Inches - (0.75 * ((Math.PI / 2) - 1)),
            spec.Posts.Outside.Inches,
            1e-6);
    }
}
