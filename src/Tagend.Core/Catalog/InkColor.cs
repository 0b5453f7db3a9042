using System.Globalization;

namespace Tagend.Catalog;

/// <summary>A color to print with, sRGB.</summary>
public readonly record struct InkColor(byte Red, byte Green, byte Blue)
{
    /// <summary>Least contrast of running text with the paper: WCAG 2.2, success criterion 1.4.3.</summary>
    public const double LeastContrast = 4.5;

    private const double WhiteLuminance = 1;

    /// <summary>From 1 (white itself) to 21 (black).</summary>
    /// <remarks>(L1 + 0.05) / (L2 + 0.05): WCAG 2.2, contrast ratio.</remarks>
    public double ContrastWithWhite => (WhiteLuminance + 0.05) / (Luminance + 0.05);

    /// <summary>WCAG 2.2, relative luminance.</summary>
    private double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    /// <summary>Reads <c>#1a4f8c</c>.</summary>
    public static bool TryRead(string text, out InkColor color)
    {
        color = default;
        if (text.Length != 7 || text[0] != '#'
            || !int.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var number))
        {
            return false;
        }

        color = new InkColor((byte)(number >> 16), (byte)(number >> 8), (byte)number);
        return true;
    }

    /// <summary>The same hue, as much darker as the least contrast asks.</summary>
    public InkColor Darkened()
    {
        var color = this;
        for (var percent = 99; color.ContrastWithWhite < LeastContrast; percent--)
        {
            color = new InkColor((byte)(Red * percent / 100), (byte)(Green * percent / 100), (byte)(Blue * percent / 100));
        }

        return color;
    }

    /// <summary>As it is read: <c>#1a4f8c</c>.</summary>
    public override string ToString() => $"#{Red:x2}{Green:x2}{Blue:x2}";

    private static double Linear(byte part)
    {
        var share = part / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
