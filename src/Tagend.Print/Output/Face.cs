using System.Text;
using SkiaSharp;

namespace Tagend.Output;

/// <summary>One weight of the type family: widths of its characters and which it has.</summary>
public sealed class Face
{
    private const float UnitSize = 1000;
    private readonly Dictionary<int, float> _advances = [];
    private readonly Dictionary<int, bool> _has = [];
    private readonly SKFont _ruler;
    private readonly Lock _lock = new();

    internal Face(byte[] file, SKTypeface typeface)
    {
        File = file;
        Typeface = typeface;
        _ruler = FontOf(typeface, UnitSize, smooth: true);
    }

    internal byte[] File { get; }

    internal SKTypeface Typeface { get; }

    public bool Has(Rune character)
    {
        lock (_lock)
        {
            if (!_has.TryGetValue(character.Value, out var has))
            {
                has = _ruler.ContainsGlyph(character.Value);
                _has.Add(character.Value, has);
            }

            return has;
        }
    }

    /// <summary>Width of a text in points.</summary>
    public float WidthOf(string text, TextStyle style)
    {
        var ems = 0f;
        var count = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            ems += AdvanceOf(rune);
            count++;
        }

        return (ems * style.Size) + (count * style.Tracking);
    }

    /// <summary>Advance of a character, in ems.</summary>
    internal float AdvanceOf(Rune character)
    {
        lock (_lock)
        {
            if (!_advances.TryGetValue(character.Value, out var advance))
            {
                advance = _ruler.MeasureText(character.ToString()) / UnitSize;
                _advances.Add(character.Value, advance);
            }

            return advance;
        }
    }

    /// <summary>A font whose advances are not rounded, or text taken from the PDF has stray spaces.</summary>
    internal static SKFont FontOf(SKTypeface typeface, float size, bool smooth) => new(typeface, size)
    {
        Subpixel = true,
        LinearMetrics = true,
        Hinting = SKFontHinting.None,
        Edging = smooth ? SKFontEdging.Antialias : SKFontEdging.Alias,
    };
}
