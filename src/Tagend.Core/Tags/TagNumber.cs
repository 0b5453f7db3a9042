using System.Globalization;
using Tagend.Measures;

namespace Tagend.Tags;

/// <summary>Numbers of a tag: the shortest decimal in the tag's unit that reads back as exactly the same value.</summary>
internal static class TagNumber
{
    private const decimal NanometersPerInch = 25_400_000m;
    private const decimal NanometersPerMillimeter = 1_000_000m;
    private const decimal MicronewtonsPerPound = 4_448_221.6152605m;
    private const decimal MicronewtonsPerNewton = 1_000_000m;

    public static string Write(Length length, LengthUnit unit) => Shortest(length.Nanometers, PerUnit(unit));

    /// <summary>In lbf where the tag is in inches, else in newtons.</summary>
    public static string Write(Force force, LengthUnit unit) => Shortest(force.Micronewtons, PerForceUnit(unit));

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Length length)
    {
        var read = TryRead(text, PerUnit(unit), out var nanometers);
        length = Length.FromNanometers(nanometers);
        return read;
    }

    public static bool TryRead(ReadOnlySpan<char> text, LengthUnit unit, out Force force)
    {
        var read = TryRead(text, PerForceUnit(unit), out var micronewtons);
        force = Force.FromMicronewtons(micronewtons);
        return read;
    }

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
            || value > 1_000_000)
        {
            return false;
        }

        exact = ToExact(value, perUnit);
        return true;
    }

    private static long ToExact(decimal value, decimal perUnit) =>
        (long)Math.Round(value * perUnit, MidpointRounding.AwayFromZero);
}
