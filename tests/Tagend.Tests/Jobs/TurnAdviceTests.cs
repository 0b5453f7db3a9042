using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

public class TurnAdviceTests
{
    [Theory]
    [InlineData(1_587_500, true)] // 1/16 in: at the tolerance
    [InlineData(1_587_501, false)]
    [InlineData(-1_587_500, true)]
    [InlineData(-1_587_501, false)]
    public void Of_PieceAtItsToleranceOrJustPast_IsAdvisedPastItAlone(long off, bool isWithin) => Assert.Equal(isWithin, Of(off, 45) is null);

    [Fact]
    public void Of_PieceTooLong_TakesTheTurnsThatShortenItByAsMuch()
    {
        var spec = SpecFixture.Good();
        var advice = Of(3_000_000, 45)!;
        Assert.True(advice is { Turns: > 0, IsTwistEnough: true });
        // To half a turn, the length is there.
        Assert.InRange(Math.Abs((spec.TurnSensitivity * advice.Turns).Nanometers - 3_000_000), 0, spec.TurnSensitivity.Nanometers / 4 + 1);
        Assert.Equal(-advice.Turns, Of(-3_000_000, 45)!.Turns);
    }

    [Theory]
    [InlineData(54, true)] // 45 turns and a fifth
    [InlineData(54.5, false)]
    [InlineData(36, true)]
    [InlineData(35.5, false)]
    public void Of_TurnsAFifthOffThePlansOrMore_IsNoMatterOfTwist(double then, bool isEnough)
    {
        var spec = SpecFixture.Good();
        var turns = Of(3_000_000, 45)!.Turns;
        Assert.Equal(45, spec.Twist.Turns);
        Assert.Equal(isEnough, Of(3_000_000, then - turns)!.IsTwistEnough);
    }

    private static TurnAdvice? Of(long off, double turns)
    {
        var spec = SpecFixture.Good();
        return TurnAdvice.Of(spec, BuiltQuestion.CardOf(spec) with { Turns = turns, Measured = spec.FinishedLength + Length.FromNanometers(off) });
    }
}
