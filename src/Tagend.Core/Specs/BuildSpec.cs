using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs;

/// <summary>Everything that is to be built, in numbers: the one source of every page and of the tag.</summary>
/// <remarks>
/// Positions are on the finished piece, measured from end A, over measuring pins, unless their name says otherwise.
/// Nothing here is rounded, and nothing here names a customer.
/// </remarks>
public sealed record BuildSpec
{
    /// <summary>The set's number, in capitals.</summary>
    public required string Order { get; init; }

    /// <summary>The piece's name in its set, in lower case.</summary>
    public required string Piece { get; init; }

    /// <summary>The plan that gave the defaults.</summary>
    public required string Kind { get; init; }

    /// <summary>1 for the first issue of a piece.</summary>
    public required int Revision { get; init; }

    /// <summary>The date of issue.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The unit the pages are printed in.</summary>
    public required LengthUnit Unit { get; init; }

    /// <summary>Over measuring pins, outside to outside.</summary>
    public required Length FinishedLength { get; init; }

    /// <summary>The finished length may be this much longer or shorter.</summary>
    public required Length Tolerance { get; init; }

    /// <summary>The bow's peak draw weight; null where it was not ordered.</summary>
    public required Force? DrawWeight { get; init; }

    /// <summary>Material, strands and thickness.</summary>
    public required Bundle Bundle { get; init; }

    /// <summary>Turns, hands and take-up.</summary>
    public required Twist Twist { get; init; }

    /// <summary>What the piece gains for good on the stretcher; the laid-up length is this much shorter.</summary>
    public required Length Settle { get; init; }

    /// <summary>How far apart the jig's posts are set.</summary>
    public required PostSetting Posts { get; init; }

    /// <summary>The colors in the order they are laid, and the tails.</summary>
    public required Layup Layup { get; init; }

    /// <summary>In order from end A.</summary>
    public required ValueList<Separator> Separators { get; init; }

    /// <summary>In order from end A.</summary>
    public required ValueList<Serving> Servings { get; init; }

    /// <summary>Nock point and speed nocks, in order from end A.</summary>
    public required ValueList<Mark> Marks { get; init; }

    /// <summary>What it should carry, and what it must.</summary>
    public required Strength Strength { get; init; }

    /// <summary>Load and time on the stretcher.</summary>
    public required Stretch Stretch { get; init; }

    /// <summary>Width of the arrow nock's throat, where it was given.</summary>
    public required Length? NockGroove { get; init; }

    /// <summary>Strands and servings; null where the linear density of one of them is not given.</summary>
    public required Mass? Mass { get; init; }

    /// <summary>The end loops; null where the spec comes from a tag of version 1, which does not say.</summary>
    public EndLoops? EndLoops { get; init; }

    /// <summary>The legs of a split yoke at end A; null for a piece without legs.</summary>
    public Yoke? Yoke { get; init; }

    /// <summary>Lot numbers of what it is built of, in capitals, where they are kept.</summary>
    public ValueList<string> Lots { get; init; } = [];

    /// <summary>The loop before twisting, over measuring pins, outside to outside, end loops closed.</summary>
    public Length LaidUpLength => Twist.TakeUp.LaidUp(FinishedLength, Settle);

    /// <summary>How much shorter one more turn makes the piece, at its own twist, by the helix model.</summary>
    public Length TurnSensitivity => Helix.PerTurn(Bundle.Diameter, Twist.Turns, FinishedLength);

    /// <summary>Turns more (or fewer, below zero) that cancel the post setting's residual; zero for a piece without twist.</summary>
    public double ResidualTurns => TurnSensitivity == Length.Zero ? 0 : Posts.Residual / TurnSensitivity;

    /// <summary>
    /// The turns to put in, to halves: the whole turns of the twist, with those that cancel the post setting's residual
    /// where the residual is more than half the tolerance.
    /// </summary>
    public double TurnsToPutIn => IsSettingUncertain || Length.Abs(Posts.Residual) * 2 <= Tolerance
        ? Twist.Turns
        : Math.Round((Twist.Turns + ResidualTurns) * 2, MidpointRounding.AwayFromZero) / 2;

    /// <summary>The rule and the helix model disagree by more than the tolerance.</summary>
    public bool ModelsDisagree => Length.Abs(Twist.TakeUp.Rule - Twist.TakeUp.Helix) > Tolerance;

    /// <summary>
    /// The models disagree and no build of the shop's own decides between them: the first piece is measured early.
    /// </summary>
    public bool IsSettingUncertain => ModelsDisagree && Twist.TakeUp.Used != TakeUpModel.Fitted;

    /// <summary>Share of its breaking force that the piece is stretched with.</summary>
    public double StretchShare => Stretch.Load / Strength.Breaking;

    /// <summary>Null without a groove or a center serving.</summary>
    public NockFit? NockFit => NockGroove is { } groove && Servings.FirstOrDefault(s => s.Role == ServingRole.Center) is { } center
        ? NockFit.Of(groove, center.Thread, center.ThreadDiameter, Bundle.Diameter)
        : null;

    /// <summary>The post settings, on the tape, by the model that takes up less and by the one that takes up more.</summary>
    public (Length Least, Length Most) SettingRange()
    {
        var takeUp = Twist.TakeUp;
        var (byRule, byHelix) = (Posts.Outside + takeUp.Rule - takeUp.Amount, Posts.Outside + takeUp.Helix - takeUp.Amount);
        return (Posts.NearestMark(Length.Min(byRule, byHelix)), Posts.NearestMark(Length.Max(byRule, byHelix)));
    }

    /// <summary>The legs of a yoke, each laid for itself: the first half of the strands and the second. Empty without legs.</summary>
    public ValueList<Layup> Legs() => Yoke is null ? [] : [Layup.Halves().First, Layup.Halves().Second];

    /// <summary>What is tied at each post; at the legs of a yoke, at each of them.</summary>
    public ValueList<EndTag> EndTags() => Legs() is [var one, var two]
        ?
        [
            one.EndTagAt(PieceEnd.A) with { Leg = 1 },
            two.EndTagAt(PieceEnd.A) with { Leg = 2 },
            new EndTag(PieceEnd.B, one.EndTagAt(PieceEnd.B).Colors.Concat(two.EndTagAt(PieceEnd.B).Colors).Distinct().ToValueList()),
        ]
        : Layup.EndTags();

    /// <summary>What winding a serving takes and makes; of one of the two, where it lies on the legs of a yoke.</summary>
    public ServingWork WorkOf(Serving serving) => ServingWork.Of(serving, IsOnLegs(serving) ? Bundle.HalfDiameter : Bundle.Diameter);

    /// <summary>Whether a serving lies on the legs of a yoke, and is wound on each of them.</summary>
    public bool IsOnLegs(Serving serving) => Yoke is { } yoke && serving.To <= yoke.Split;

    /// <summary>A place on the finished piece as a distance from end B.</summary>
    public Length FromB(Length fromA) => FinishedLength - fromA;

    /// <summary>A place on the finished piece as a distance from end A on the untwisted loop, over measuring pins.</summary>
    public Length OnJig(Length fromA) => fromA * (LaidUpLength / FinishedLength);

    /// <summary>
    /// How far either end of the laid-up length, laid in the middle, lies outside a jig post's outer side; below zero: inside.
    /// Thick posts take it from both ends alike; what closing the end loops takes is shared equally.
    /// </summary>
    public Length PastPosts => (LaidUpLength - Posts.Outside) / 2;

    /// <summary>A place on the finished piece as a tape shows it that is hooked on the outside of post A, before twisting.</summary>
    public Length FromPostA(Length fromA) => OnJig(fromA) - PastPosts;
}
