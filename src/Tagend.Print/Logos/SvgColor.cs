using System.Drawing;
using SkiaSharp;

namespace Tagend.Logos;

/// <summary>Reads colors: <c>#1a4f8c</c>, <c>#14c</c>, <c>rgb(26, 79, 140)</c> or a name of SVG 1.1, 4.4.</summary>
internal static class SvgColor
{
    private const string Function = "rgb(";

    /// <summary>The color of a property; null for none.</summary>
    public static SKColor? Of(SvgElement element, string property, SKColor? inherited)
    {
        switch (element.Property(property))
        {
            case null or "inherit":
                return inherited;
            case "none" or "transparent":
                return null;
            case var text when TryRead(text, out var color):
                return color;
            case var text:
                element.Report(property, text, SvgWording.AColor);
                return null;
        }
    }

    private static bool TryRead(string text, out SKColor color)
    {
        color = default;
        if (text.StartsWith('#'))
        {
            return text.Length is 4 or 7 && SKColor.TryParse(text, out color);
        }

        return text.StartsWith(Function, StringComparison.OrdinalIgnoreCase) && text.EndsWith(')')
            ? TryReadParts(text[Function.Length..^1], out color)
            : TryReadName(text, out color);
    }

    private static bool TryReadParts(string text, out SKColor color)
    {
        color = default;
        var parts = text.Split(',', StringSplitOptions.TrimEntries);
        var shares = new float[3];
        for (var i = 0; i < shares.Length; i++)
        {
            if (parts.Length != shares.Length || !SvgNumbers.TryReadShare(parts[i], out shares[i]))
            {
                return false;
            }

            shares[i] = Math.Clamp(parts[i].EndsWith('%') ? shares[i] * 255 : shares[i], 0, 255);
        }

        color = new SKColor((byte)MathF.Round(shares[0]), (byte)MathF.Round(shares[1]), (byte)MathF.Round(shares[2]));
        return true;
    }

    /// <summary>.NET has the same names and values, with one spelling of gray and colors of windows beside them.</summary>
    private static bool TryReadName(string text, out SKColor color)
    {
        var known = Color.FromName(text.Replace("grey", "gray", StringComparison.OrdinalIgnoreCase));
        color = new SKColor(known.R, known.G, known.B);
        return known is { IsKnownColor: true, IsSystemColor: false };
    }
}
