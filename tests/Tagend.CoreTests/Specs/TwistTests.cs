using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class TwistTests
{
    [Theory]
    [InlineData(0.75, 60.25, 45)] // 45.19
    [InlineData(0.75, 98, 74)] // 73.5, away from zero
    [InlineData(0.5, 36, 18)]
    [InlineData(0, 60, 0)]
    public void TurnsFor_RateAndLength_IsWholeTurns(double rate, double inches, int turns) =>
        Assert.Equal(turns, Twist.TurnsFor(rate, Length.FromInches(inches)));

    [Fact]
    public void TakeUp_RuleOfTheShippedShop_Is12ThousandthsATurn()
    {
        // Common practice: 0.75 turns an inch and 0.012 in a turn.
        var spec = SpecFixture.Good();
        Assert.Equal(TakeUpModel.Rule, spec.Twist.TakeUp.Used);
        Assert.Equal(Length.FromInches(0.012 * 45), spec.Twist.TakeUp.Amount);
        Assert.Equal(Length.FromInches(60.25 + (0.012 * 45)), spec.LaidUpLength);
    }

    [Fact]
    public void TurnSensitivity_AnyTwist_IsTheSlopeOfTheHelix()
    {
        var spec = SpecFixture.Good();
        var slope = (Helix.TakeUp(spec.Bundle.Diameter, 46, spec.FinishedLength) - Helix.TakeUp(spec.Bundle.Diameter, 44, spec.FinishedLength)) / 2;
        Assert.Equal(slope.Inches, spec.TurnSensitivity.Inches, 1e-6);
    }

    [Fact]
    public void ResidualTurns_NoTurns_AreNone() => Assert.Equal(0, SpecFixture.Good(("twists", "0")).ResidualTurns);

    [Fact]
    public void ServingDirection_Always_IsAgainstTheTwist()
    {
        var twist = SpecFixture.Good().Twist;
        Assert.Equal((TwistDirection.Clockwise, TwistDirection.Counterclockwise), (twist.Direction, twist.ServingDirection));
    }
}
