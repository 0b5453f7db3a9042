using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Which way a hook is turned, as one sees it who faces the hook.</summary>
public enum TwistDirection
{
    /// <summary>As a clock's hands go.</summary>
    Clockwise,

    /// <summary>Against a clock's hands.</summary>
    Counterclockwise,
}

/// <summary>How much shorter twisting makes a piece, by each model, and which one is used.</summary>
/// <param name="Fitted">By the shop's own builds; there where it is used, and only there.</param>
/// <remarks>Which model is nearer on a real string only the shop's own measurements can say.</remarks>
public sealed record TakeUp(TakeUpModel Used, Length Rule, Length Helix, FittedAmount? Fitted = null)
{
    /// <summary>By the model that is used.</summary>
    public Length Amount => Used switch
    {
        TakeUpModel.Rule => Rule,
        TakeUpModel.Helix => Helix,
        TakeUpModel.Fitted => Fitted!.Amount,
        _ => throw new InvalidOperationException($"no take-up for {Used}"),
    };

    /// <summary>The loop before twisting: finished − settle + take-up.</summary>
    /// <param name="settle">What the piece gains for good on the stretcher.</param>
    public Length LaidUp(Length finishedLength, Length settle) => finishedLength - settle + Amount;
}

/// <summary>Whole turns put into the finished piece, and the hands of twist and servings.</summary>
/// <param name="ServingHand">
/// Of the servings' wraps. Wraps of the twist's own hand are drawn tighter by each turn that is added, wraps of the other
/// hand by each that is taken out: the ends of a serving turn with the strands below it (geometry).
/// </param>
public sealed record Twist(int Turns, Hand Hand, Hand ServingHand, TakeUp TakeUp)
{
    /// <summary>Which way either hook turns to put twist in, as one sees it who faces that hook.</summary>
    /// <remarks>
    /// Geometry: the near end turned clockwise leads, so the strands run counterclockwise away from the eye: a left-handed
    /// helix, S. Seen from the other end it is the same helix, so it does not matter which hook is turned.
    /// </remarks>
    public TwistDirection Direction => DirectionOf(Hand);

    /// <summary>The serving's hand in the same words: which way a hook would turn to make a helix of that hand.</summary>
    public TwistDirection ServingDirection => DirectionOf(ServingHand);

    /// <summary>Which way the spool goes around the piece, as one sees it from whom it moves away along the piece.</summary>
    /// <remarks>Geometry: a right-handed helix, Z, runs clockwise away from the eye.</remarks>
    public TwistDirection SpoolDirection =>
        ServingHand == Hand.Z ? TwistDirection.Clockwise : TwistDirection.Counterclockwise;

    /// <summary>Whether each turn that is added draws the servings tighter: they have the twist's own hand.</summary>
    public bool TurnsTightenServings => ServingHand == Hand;

    /// <summary>Rate × finished length, to whole turns; halves away from zero.</summary>
    public static int TurnsFor(double turnsPerInch, Length finishedLength) =>
        (int)Math.Round(turnsPerInch * finishedLength.Inches, MidpointRounding.AwayFromZero);

    private static TwistDirection DirectionOf(Hand hand) =>
        hand == Hand.S ? TwistDirection.Clockwise : TwistDirection.Counterclockwise;
}
