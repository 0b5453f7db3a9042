using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Which way a piece is twisted, seen from end A; servings are wound the other way.</summary>
public enum TwistDirection
{
    Clockwise,
    Counterclockwise,
}

/// <summary>Where a take-up number comes from.</summary>
public enum TakeUpModel
{
    /// <summary>A length for each turn, whatever the bundle: common practice.</summary>
    Rule,

    /// <summary>An ideal helical yarn: <see cref="Specs.Helix"/>.</summary>
    Helix,

    /// <summary>The shop's own builds: <see cref="FittedTakeUp"/>.</summary>
    Fitted,
}

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
}

/// <summary>Whole turns put into the finished piece.</summary>
public sealed record Twist(int Turns, TwistDirection Direction, TakeUp TakeUp)
{
    /// <summary>Turns per inch where a shop says nothing else: common practice.</summary>
    public const double CommonTurnsPerInch = 0.75;

    /// <summary>Take-up of one turn by the rule model where a shop says nothing else: common practice.</summary>
    public static readonly Length CommonTakeUpPerTurn = Length.FromInches(0.012);

    public TwistDirection ServingDirection =>
        Direction == TwistDirection.Clockwise ? TwistDirection.Counterclockwise : TwistDirection.Clockwise;

    /// <summary>Rate × finished length, to whole turns.</summary>
    public static int TurnsFor(double turnsPerInch, Length finishedLength) =>
        (int)Math.Round(turnsPerInch * finishedLength.Inches, MidpointRounding.AwayFromZero);
}
