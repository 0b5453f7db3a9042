using CsCheck;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

/// <summary>A piece times longer at the same turns per inch: what grows with it, and what must not.</summary>
public class ScalingTests
{
    [Fact]
    public void Build_PieceTimesLonger_ScalesWhatShouldScale() => Gen
        .Select(Gen.Int[5, 7], Gen.Int[2, 4], Gen.Int[11, 20])
        .Sample(
            (fourInches, times, pairs) =>
            {
                // A plain piece of 4 in steps: 0.75 turns per inch are whole turns.
                var (one, more) = (Plain(fourInches * 4, pairs * 2), Plain(fourInches * 4 * times, pairs * 2));
                Assert.Equal(one.Twist.Turns * times, more.Twist.Turns);
                AssertTimes(times, one.Twist.TakeUp.Rule, more.Twist.TakeUp.Rule);
                AssertTimes(times, one.Twist.TakeUp.Helix, more.Twist.TakeUp.Helix);
                AssertTimes(times, one.LaidUpLength, more.LaidUpLength);
                AssertTimes(times, one.Stretch.Reading!.Value, more.Stretch.Reading!.Value);
                Assert.Equal(one.Mass!.Value.Grams * times, more.Mass!.Value.Grams, 0.001 * times);

                Assert.Equal(one.Bundle, more.Bundle);
                Assert.Equal(one.TurnSensitivity, more.TurnSensitivity);
                Assert.Equal(one.Strength, more.Strength);
                Assert.Equal(one.StretchShare, more.StretchShare);
                Assert.Equal(one.Layup, more.Layup);
                Assert.Equal(one.Posts.Outside - one.LaidUpLength, more.Posts.Outside - more.LaidUpLength);
            },
            iter: 60,
            threads: 1,
            seed: "0000scaling1");

    private static BuildSpec Plain(int inches, int strands) => SpecFixture.Build(
        ("kind", "plain"), ("finished_length", $"{inches} in"), ("strands", $"{strands}"), ("colors", "black"), ("draw_weight", ""),
        ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", "")).Spec
        ?? throw new InvalidOperationException($"{inches} in of {strands} strands");

    private static void AssertTimes(int times, Length one, Length more) => Assert.Equal((one * times).Inches, more.Inches, 1e-6);
}
