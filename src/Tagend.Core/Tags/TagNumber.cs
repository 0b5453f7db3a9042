using System.Globalization;
using Tagend.Measures;

namespace Tagend.Tags;

/// <summary>
/// Numbers of a tag: the shortest decimal that reads back as exactly the same value, in the tag's unit, or in the other one
/// with its letter where that is shorter.
/// </summary>
internal static class TagNumber
{
    /// <summary>In inches, millimeters, pounds or newtons: far more than any piece has, and small enough to compute with.</summary>
    private const decimal Most = 100_000;

    private const decimal NanometersPerInch = 25_400_000m;
    private const decimal NanometersPerMillimeter = 1_000_000m;
    private const decimal MicronewtonsPerPound = 4_448_221.6152605m;
    private const decimal MicronewtonsPerNewton = 1_000_000m;

    public static string Write(Length length, LengthUnit unit) => Shorter(
        Shortest(length.Nanometers, PerUnit(unit)),
        Shortest(length.Nanometers, PerUnit(Other(unit))) + LengthLetter(Other(unit)));

    /// <summary>In lbf where the tag is in inches, else in newtons.</summary>
    public static string Write(Force force, LengthUnit unit) => Shorter(
        Shortest(force.Micronewtons, PerForceUnit(unit)),
        Shortest(force.Micronewtons, PerForceUnit(Other(unit))) + ForceLetter(Other(unit)));

    /// <summary>The same with the unit spelled out, as orders have it: <c>7.5 in</c>, <c>190.5 mm</c>.</summary>
    public static string Spelled(Length length, LengthUnit unit) => Write(length, unit) is var text && char.IsLetter(text[^1])
        ? $"{text[..^1]} {LengthWriter.Symbol(Other(unit))}"
        : $"{text} {LengthWriter.Symbol(unit)}";

    /// <summary>As orders have it: <c>70 lbf</c>, <c>311 N</c>.</summary>
    public static string Spelled(Force force, LengthUnit unit) => Write(force, unit) is var text && char.IsLetter(text[^1])
        ? $"{text[..^1]} {ForceSymbol(Other(unit))}"
        : $"{text} {ForceSymbol(unit)}";

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Length length)
    {
        var isOther = text.EndsWith(LengthLetter(Other(unit)));
        var read = TryRead(isOther ? text[..^1] : text, PerUnit(isOther ? Other(unit) : unit), out var nanometers);
        length = Length.FromNanometers(nanometers);
        return read;
    }

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Force force)
    {
        var isOther = text.EndsWith(ForceLetter(Other(unit)));
        var read = TryRead(isOther ? text[..^1] : text, PerForceUnit(isOther ? Other(unit) : unit), out var micronewtons);
        force = Force.FromMicronewtons(micronewtons);
        return read;
    }

    private static LengthUnit Other(LengthUnit unit) => unit == LengthUnit.Inch ? LengthUnit.Millimeter : LengthUnit.Inch;

    private static string LengthLetter(LengthUnit unit) => unit == LengthUnit.Inch ? "I" : "M";

    /// <summary>Of pounds-force, which go with inches, and of newtons.</summary>
    private static string ForceLetter(LengthUnit unit) => unit == LengthUnit.Inch ? "L" : "N";

    private static string ForceSymbol(LengthUnit unit) => unit == LengthUnit.Inch ? "lbf" : "N";

    private static string Shorter(string own, string other) => other.Length < own.Length ? other : own;

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
