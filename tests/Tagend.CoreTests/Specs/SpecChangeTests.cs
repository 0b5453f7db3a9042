using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public sealed class SpecChangeTests
{
    [Theory]
    [InlineData("finished_length", "60 3/8 in", "finished length 60 3/8 in (was 60 1/4 in)", "post setting")]
    [InlineData("colors", "black:14 red:10", "colors black:14 red:10 (was black:12 red:12)", null)]
    [InlineData("peep", "", "peep none (was 18 in)", null)]
    [InlineData("twists", "0.5", "turns 30", "post setting")]
    public void Of_OtherCell_NamesIt(string column, string text, string expected, string? alsoChanged)
    {
        var changes = SpecChange.Of(Spec(), SpecFixture.Build((column, text)).Spec!);
        Assert.Contains(changes, c => c.StartsWith(expected, StringComparison.Ordinal));
        Assert.Equal(alsoChanged is null ? 1 : 2, changes.Count);
        Assert.All(alsoChanged is null ? [] : new[] { alsoChanged }, a => Assert.Contains(changes, c => c.StartsWith(a, StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_AnotherDayRevisionOrUnit_IsNoChange()
    {
        var spec = Spec();
        Assert.Empty(SpecChange.Of(spec, spec with { Date = spec.Date.AddDays(1), Revision = 7 }));
        Assert.Empty(SpecChange.Of(spec, SpecFixture.Build(LengthUnit.Millimeter).Spec!));
    }

    [Fact]
    public void Of_OtherHandsToleranceAndStretch_NamesThem()
    {
        var spec = Spec();
        var changed = spec with
        {
            Tolerance = Length.FromInches(0.125),
            Twist = spec.Twist with { Hand = spec.Twist.ServingHand, ServingHand = spec.Twist.Hand },
            Stretch = spec.Stretch with { Load = Force.FromPounds(250.5), Minutes = 15 },
        };
        Assert.Equal(
            [
                "hand of twist Z (was S)", "hand of servings S (was Z)", "tolerance 0.125 in (was 0.063 in)", "stretch load 250.5 (was 300)",
                "minutes of stretch 15 (was 20)",
            ],
            SpecChange.Of(spec, changed));
    }

    [Fact]
    public void Of_OtherEndLoopsOrLegs_NamesThem()
    {
        var spec = Spec();
        var served = spec with { EndLoops = spec.EndLoops! with { Serving = new LoopServing("t021", Length.FromInches(0.021), "black") } };
        Assert.Equal(["end loops served with t021 black (was bare)"], SpecChange.Of(spec, served));
        var legs = spec with { Yoke = new Yoke(Length.FromInches(10), 7) };
        Assert.Equal(["legs 10 in with 7 turns each (was none)"], SpecChange.Of(spec, legs));
        // What a tag of version 1 does not say is no change.
        Assert.Empty(SpecChange.Of(spec with { EndLoops = null }, served with { Yoke = legs.Yoke }));
    }

    [Theory]
    [InlineData(0.4, false)]
    [InlineData(1.1, true)]
    public void Of_LengthThatLeavesThePostsAtTheirMark_IsNoChange(double marks, bool isChange)
    {
        // From the mark itself: less than half a step stays there, more does not.
        var spec = Spec();
        var at = spec with { Posts = spec.Posts with { Outside = spec.Posts.Tape } };
        var moved = at with { Posts = at.Posts with { Outside = at.Posts.Outside + (at.Posts.TapeStep * marks) } };
        Assert.Equal(isChange, SpecChange.Of(at, moved).Any(c => c.StartsWith("post setting", StringComparison.Ordinal)));
    }

    private static BuildSpec Spec() => SpecFixture.Build().Spec!;
}
