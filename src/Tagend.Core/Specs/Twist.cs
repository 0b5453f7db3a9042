using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>How much shorter twisting makes a piece, by each model, and which one is used.</summary>
/// <param name="Fitted">By the shop's own builds; there where it is used, and only there.</param>
/// <remarks>Which model is nearer on a real string only the shop's own measurements can say.</remarks>
public sealed record TakeUp(TakeUpModel Used, Length Rule, Length Helix, FittedAmount? Fitted = null)
{
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

/// <summary>Whole turns put into the finished piece.</summary>
public sealed record Twist(int Turns, TwistDirection Direction, TakeUp TakeUp)
{
    public TwistDirection ServingDirection =>
        Direction == TwistDirection.Clockwise ? TwistDirection.Counterclockwise : TwistDirection.Clockwise;

    /// <summary>Rate × finished length, to whole turns.</summary>
    public static int TurnsFor(double turnsPerInch, Length finishedLength) =>
        (int)Math.Round(turnsPerInch * finishedLength.Inches, MidpointRounding.AwayFromZero);
}
