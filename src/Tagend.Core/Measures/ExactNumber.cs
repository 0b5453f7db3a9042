using System.Globalization;

namespace Tagend.Measures;

/// <summary>
/// The shortest decimal that reads back as exactly the same length or force: in the unit asked for or, where that is shorter
/// by more than what names the unit, in the other one.
/// </summary>
public static class ExactNumber
{
    /// <summary>In inches, millimeters, pounds or newtons: far more than any piece has, and small enough to compute with.</summary>
    private const decimal Most = 100_000;

    /// <summary>Parts of an inch, the finest that a tape has.</summary>
    private const int FractionParts = 64;

    private const decimal NanometersPerInch = 25_400_000m;
    private const decimal NanometersPerMillimeter = 1_000_000m;
    private const decimal MicronewtonsPerPound = 4_448_221.6152605m;
    private const decimal MicronewtonsPerNewton = 1_000_000m;

    /// <summary>A length's number, and the unit it is in.</summary>
    public static (string Number, LengthUnit Unit) Of(Length length, LengthUnit unit) => Shorter(
        unit, Shortest(length.Nanometers, PerUnit(unit)), Shortest(length.Nanometers, PerUnit(Other(unit))));

    /// <summary>A force's number: in pounds-force where the unit is inches, in newtons where it is millimeters.</summary>
    public static (string Number, LengthUnit Unit) Of(Force force, LengthUnit unit) => Shorter(
        unit, Shortest(force.Micronewtons, PerForceUnit(unit)), Shortest(force.Micronewtons, PerForceUnit(Other(unit))));

    /// <summary>As orders have it, with its unit: <c>7 1/2 in</c> where it is whole sixty-fourths, else <c>7.51 in</c>, <c>190.5 mm</c>.</summary>
    public static string Spelled(Length length, LengthUnit unit)
    {
        var (number, its) = Of(length, unit);
        if ((unit == LengthUnit.Inch || its == LengthUnit.Inch) && length.Nanometers * FractionParts % (long)NanometersPerInch == 0)
        {
            return $"{LengthWriter.Fraction(length, FractionParts)} in";
        }

        return $"{number} {LengthWriter.Symbol(its)}";
    }

    /// <summary>As orders have it, with its unit: <c>70 lbf</c>, <c>311 N</c>.</summary>
    public static string Spelled(Force force, LengthUnit unit)
    {
        var (number, its) = Of(force, unit);
        return $"{number} {(its == LengthUnit.Inch ? "lbf" : "N")}";
    }

    /// <summary>The length of a number in a unit, from 0 to 100,000 of it; false where it is none.</summary>
    public static bool TryReadLength(ReadOnlySpan<char> number, LengthUnit unit, out Length length)
    {
        var read = TryRead(number, PerUnit(unit), out var nanometers);
        length = Length.FromNanometers(nanometers);
        return read;
    }

    /// <summary>The force of a number, pounds-force with inches and newtons with millimeters; false where it is none.</summary>
    public static bool TryReadForce(ReadOnlySpan<char> number, LengthUnit unit, out Force force)
    {
        var read = TryRead(number, PerForceUnit(unit), out var micronewtons);
        force = Force.FromMicronewtons(micronewtons);
        return read;
    }

    /// <summary>The unit that is not this one.</summary>
    public static LengthUnit Other(LengthUnit unit) => unit == LengthUnit.Inch ? LengthUnit.Millimeter : LengthUnit.Inch;

    // The other unit's letter counts as a character.
    private static (string Number, LengthUnit Unit) Shorter(LengthUnit unit, string own, string other) =>
        other.Length + 1 < own.Length ? (other, Other(unit)) : (own, unit);

    private static decimal PerUnit(LengthUnit unit) =>
        unit == LengthUnit.Inch ? NanometersPerInch : NanometersPerMillimeter;

    private static decimal PerForceUnit(LengthUnit unit) =>
        unit == LengthUnit.Inch ? MicronewtonsPerPound : MicronewtonsPerNewton;

    private static string Shortest(long exact, decimal perUnit)
    {
        var value = exact / perUnit;
        for (var digits = 0; ; digits++)
        {
            var rounded = Math.Round(value, digits, MidpointRounding.AwayFromZero);
            if (ToExact(rounded, perUnit) == exact)
            {
                return rounded.ToString(digits == 0 ? "0" : "#." + new string('#', digits), CultureInfo.InvariantCulture);
            }
        }
    }

    private static bool TryRead(ReadOnlySpan<char> text, decimal perUnit, out long exact)
    {
        exact = 0;
        if (text.Length is 0 or > 20
            || !decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            || value > Most)
        {
            return false;
        }

        exact = ToExact(value, perUnit);
        return true;
    }

    private static long ToExact(decimal value, decimal perUnit) =>
        (long)Math.Round(value * perUnit, MidpointRounding.AwayFromZero);
}
