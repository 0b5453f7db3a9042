using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Jobs;

/// <summary>What brings a piece that was measured out of tolerance to its length.</summary>
/// <remarks>
/// A turn more makes a piece shorter by the turn sensitivity of its spec, at its own twist. That is linear, so it holds for a
/// few turns; a piece whose turns would leave those of its plan by more than a fifth is not made right by twisting.
/// </remarks>
/// <param name="Off">The measured length less the ordered one.</param>
/// <param name="Turns">The turns to put in, in halves; below zero to take out.</param>
/// <param name="IsTwistEnough">Whether the turns it then has are within a fifth of its plan's.</param>
public sealed record TurnAdvice(Length Off, double Turns, bool IsTwistEnough)
{
    /// <summary>Common practice: a string twisted more or less than about a fifth off its plan is another string.</summary>
    private const double MostOff = 0.2;

    /// <summary>What to do with a piece that was built by this spec.</summary>
    /// <returns>Null where the piece is within its tolerance.</returns>
    public static TurnAdvice? Of(BuildSpec spec, AsBuilt built)
    {
        var off = built.Measured - spec.FinishedLength;
        if (Length.Abs(off) <= spec.Tolerance)
        {
            return null;
        }

        if (spec.TurnSensitivity <= Length.Zero)
        {
            return new TurnAdvice(off, 0, IsTwistEnough: false);
        }

        var turns = Math.Round(off / spec.TurnSensitivity * 2, MidpointRounding.AwayFromZero) / 2;
        var then = built.Turns + turns;
        return new TurnAdvice(off, turns, then >= 0 && Math.Abs(then - spec.Twist.Turns) <= spec.Twist.Turns * MostOff);
    }
}
