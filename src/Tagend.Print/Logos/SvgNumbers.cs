using System.Globalization;
using System.Text.RegularExpressions;

namespace Tagend.Logos;

/// <summary>Reads numbers as SVG writes them: SVG 1.1, 4.2.</summary>
internal static partial class SvgNumbers
{
    /// <summary>One number; never taken apart for the sake of what follows it.</summary>
    public const string Pattern = @"(?>[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)";

    /// <summary>Beyond this a drawing is a mistake, and single precision has no thousandths left.</summary>
    public const float Greatest = 100_000;

    /// <summary>In pixels of 1/96 in: CSS Values and Units 3, 6.2.</summary>
    private static readonly (string Unit, float Pixels)[] Units =
        [("px", 1), ("pt", 96f / 72), ("pc", 16), ("mm", 96 / 25.4f), ("cm", 96 / 2.54f), ("in", 96), ("", 1)];

    public static bool TryReadLength(string text, out float pixels)
    {
        var (unit, factor) = Units.First(u => text.EndsWith(u.Unit, StringComparison.OrdinalIgnoreCase));
        var isNumber = TryRead(text.AsSpan()[..^unit.Length], out pixels);
        pixels *= factor;
        return isNumber;
    }

    /// <summary>A number, or a percentage as a share of 1.</summary>
    public static bool TryReadShare(string text, out float share)
    {
        var isPercent = text.EndsWith('%');
        var isNumber = TryRead(isPercent ? text.AsSpan()[..^1] : text, out share);
        share = isPercent ? share / 100 : share;
        return isNumber;
    }

    /// <summary>Numbers with commas, blanks or a sign between them, and nothing else.</summary>
    public static bool TryReadAll(string text, out float[] numbers)
    {
        numbers = [];
        if (!NumbersAlone().IsMatch(text))
        {
            return false;
        }

        numbers = [.. ANumber().Matches(text).Select(m => TryRead(m.ValueSpan, out var number) ? number : float.NaN)];
        return !numbers.Any(float.IsNaN);
    }

    private static bool TryRead(ReadOnlySpan<char> text, out float number) =>
        float.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out number)
        && MathF.Abs(number) <= Greatest;

    [GeneratedRegex(Pattern)]
    private static partial Regex ANumber();

    [GeneratedRegex($@"^\s*(?>{Pattern}\s*,?\s*)*$")]
    private static partial Regex NumbersAlone();
}
