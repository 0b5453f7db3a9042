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
        // Common practice: 0.75 turns per inch and 0.012 in a turn.
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
    public void ServingHand_OfTheShippedShop_IsTheOtherOne()
    {
        var twist = SpecFixture.Good().Twist;
        Assert.Equal((Hand.S, Hand.Z), (twist.Hand, twist.ServingHand));
        Assert.Equal((TwistDirection.Clockwise, TwistDirection.Counterclockwise), (twist.Direction, twist.ServingDirection));
        Assert.False(twist.TurnsTightenServings);
    }

    /// <summary>ISO 2:1973: a strand of an S twist, held upright, slopes as the middle stroke of the letter: from upper left to lower right.</summary>
    [Theory]
    [InlineData(Hand.S)]
    [InlineData(Hand.Z)]
    public void Direction_OfEitherHook_MakesTheStrandsSlopeAsTheLetterDoes(Hand hand)
    {
        // A strand's points on a bundle of radius 1 along z, its near end at z = 1 turned by a tenth of a turn as its viewer
        // at z > 1 sees it; the far end at z = 0 is held. Seen from the side (from y = 1), z up, x to the left.
        var sign = new Twist(1, hand, hand, new TakeUp(TakeUpModel.Rule, default, default)).Direction == TwistDirection.Clockwise ? -1 : 1;
        double X(double z) => Math.Cos((Math.PI / 2) + (sign * 0.2 * Math.PI * (z - 0.5)));
        var isUpperEndLeft = X(1) > X(0);
        Assert.Equal(hand == Hand.S, isUpperEndLeft);
    }

    /// <summary>A serving's thread of one length around a bundle that gets one turn more: wraps of the same hand become more, so tighter.</summary>
    [Theory]
    [InlineData(Hand.S, Hand.S, true)]
    [InlineData(Hand.S, Hand.Z, false)]
    [InlineData(Hand.Z, Hand.S, false)]
    [InlineData(Hand.Z, Hand.Z, true)]
    public void TurnsTightenServings_WrapsCounted_AreMoreWhereTheHandsAreEqual(Hand hand, Hand servings, bool tighter)
    {
        static int Sign(Hand h) => h == Hand.Z ? 1 : -1;
        var turnedBy = 1.0 * Sign(hand); // what the serving's far end turns against its near end when a turn is added
        var wraps = (100.0 * Sign(servings)) + turnedBy;
        Assert.Equal(tighter, Math.Abs(wraps) > 100);
        Assert.Equal(tighter, new Twist(45, hand, servings, new TakeUp(TakeUpModel.Rule, default, default)).TurnsTightenServings);
    }

    [Theory]
    [InlineData(Hand.Z, TwistDirection.Clockwise)] // as a common screw runs away from one who turns it clockwise
    [InlineData(Hand.S, TwistDirection.Counterclockwise)]
    public void SpoolDirection_OfAHand_RunsAwayFromTheEye(Hand servings, TwistDirection expected) =>
        Assert.Equal(expected, new Twist(45, Hand.S, servings, new TakeUp(TakeUpModel.Rule, default, default)).SpoolDirection);
}
