using System.Globalization;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs.Explained;

/// <summary>A spec beside what it was made of, and how its numbers are written where they are worked with.</summary>
/// <remarks>
/// A computed number has more digits than a tape, so that the next step can be followed from it: each method says how many.
/// </remarks>
internal sealed class ExplainedPiece(BuildSpec spec, OrderLine line, ShopCatalog catalog)
{
    public BuildSpec Spec { get; } = spec;

    public OrderLine Line { get; } = line;

    public ShopCatalog Catalog { get; } = catalog;

    public PiecePlan Plan { get; } = catalog.Plans[spec.Kind];

    public StrandMaterial Material { get; } = catalog.Materials[spec.Bundle.Material];

    public Shop Shop => Catalog.Shop;

    /// <summary>Turns an inch where the order names none.</summary>
    public double TurnsPerInch => Catalog.TurnsPerInch(Plan, Material);

    /// <summary>Take-up of one turn by the rule.</summary>
    public Length RulePerTurn => Catalog.RuleTakeUpPerTurn(Plan, Material);

    /// <summary>The fit that was used; null where there was none.</summary>
    public FittedTakeUp? Fit => Catalog.FitOf(Spec.Bundle.Material, Spec.Bundle.Strands, Spec.Twist.Turns, Spec.FinishedLength, Spec.Tolerance);

    /// <summary>As given: six decimals at most, without trailing zeros.</summary>
    public string Given(Length length) => $"{Plain(In(length))} {Symbol}";

    /// <summary>As computed: 0.00001 in or 0.0001 mm.</summary>
    public string Worked(Length length) => Decimals(length, 5);

    /// <summary>Of a bundle or serving: 0.000001 in or 0.00001 mm.</summary>
    public string Thickness(Length length) => Decimals(length, 6);

    /// <summary>Of take-up in one turn, to be multiplied: 0.00000001 in or 0.0000001 mm.</summary>
    public string PerTurn(Length length) => Decimals(length, 8);

    /// <summary>Of thread: 0.001 in or 0.01 mm.</summary>
    public string Thread(Length length) => Decimals(length, 3);

    /// <summary>As on the shop's tape.</summary>
    public string Tape(Length length) => LengthWriter.Setting(length, Spec.Unit);

    /// <summary>As given: six decimals at most, without trailing zeros.</summary>
    public static string Given(Force force) => $"{Plain(force.Pounds)} lbf";

    /// <summary>As given: six decimals at most, without trailing zeros.</summary>
    public static string Plain(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    public static string Fixed(double number, int decimals) =>
        number.ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>0.0001 of a degree.</summary>
    public static string Degrees(double radians) => $"{Fixed(radians * 180 / Math.PI, 4)}°";

    private string Symbol => LengthWriter.Symbol(Spec.Unit);

    private double In(Length length) => Spec.Unit == LengthUnit.Inch ? length.Inches : length.Millimeters;

    private string Decimals(Length length, int ofInches) =>
        $"{Fixed(In(length), Spec.Unit == LengthUnit.Inch ? ofInches : ofInches - 1)} {Symbol}";
}
