using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>How far apart the jig's posts are set for the layup.</summary>
/// <param name="PostDiameter">Of the jig's posts; that of the pins where the shop has not given it.</param>
/// <param name="PinDiameter">Of the pins the finished piece is measured over.</param>
/// <param name="Outside">Outside to outside of the posts, exact.</param>
/// <param name="TapeStep">The finest mark of the shop's tape.</param>
/// <param name="IsPostGiven">Whether the shop has given its posts; else the setting is that for posts as thick as the pins.</param>
public sealed record PostSetting(Length PostDiameter, Length PinDiameter, Length Outside, Length TapeStep, bool IsPostGiven = true)
{
    /// <summary>Between the posts' axes, exact.</summary>
    public Length Centers => Outside - PostDiameter;

    /// <summary>The mark of the tape nearest to <see cref="Outside"/>.</summary>
    public Length Tape => NearestMark(Outside);

    /// <summary>The mark of the tape nearest to <see cref="Centers"/>.</summary>
    public Length CentersTape => NearestMark(Centers);

    /// <summary>How much longer the loop is laid by setting <see cref="Tape"/> instead of the exact place.</summary>
    public Length Residual => Tape - Outside;

    /// <summary>
    /// The setting at which a loop has a laid-up length once its ends are closed. The same open loop reads (π/2 − 1)(D_post − D_pin) shorter
    /// over the posts than over the pins: half its way around is the distance of the axes and half a circle.
    /// </summary>
    /// <param name="laidUpLength">Over measuring pins, outside to outside, end loops closed.</param>
    /// <param name="postDiameter">Null where the shop has not given it: the rule is plain then, and takes nothing for thick posts.</param>
    /// <param name="closing">What closing both end loops takes of each leg: <see cref="EndLoop"/>.</param>
    public static PostSetting For(
        Length laidUpLength, Length closing, Length? postDiameter, Length pinDiameter, Length tapeStep) =>
        new(
            postDiameter ?? pinDiameter,
            pinDiameter,
            laidUpLength + closing - (((postDiameter ?? pinDiameter) - pinDiameter) * ((Math.PI / 2) - 1)),
            tapeStep,
            postDiameter is not null);

    /// <summary>The mark of the tape nearest to a length; halves away from zero.</summary>
    public Length NearestMark(Length exact) =>
        TapeStep * Math.Round(exact / TapeStep, MidpointRounding.AwayFromZero);
}
