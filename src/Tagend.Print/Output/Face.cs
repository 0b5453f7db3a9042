using System.Text;
using SkiaSharp;

namespace Tagend.Output;

/// <summary>One weight of the type family: widths of its texts and which characters it has.</summary>
public sealed class Face
{
    private static readonly char[] Spaces = [' ', '\u00A0'];
    private readonly WordShaper _words;

    internal Face(byte[] file, SKTypeface typeface)
    {
        File = file;
        Typeface = typeface;
        _words = new WordShaper(file);
    }

    internal byte[] File { get; }

    internal SKTypeface Typeface { get; }

    internal int UnitsPerEm => _words.UnitsPerEm;

    public bool Has(Rune character) => _words.Has(character.Value);

    /// <summary>Width of a text in points.</summary>
    public float WidthOf(string text, TextStyle style)
    {
        var (units, count) = (0, 0);
        for (var rest = text.AsSpan(); !rest.IsEmpty; rest = rest[FirstWord(rest)..])
        {
            var word = _words.Shape(rest[..FirstWord(rest)]);
            units += word.Width;
            count += word.Glyphs.Length;
        }

        return (units * style.Size / UnitsPerEm) + (count * style.Tracking);
    }

    /// <summary>A text as it is measured and drawn. No pair with a space is kerned, so that words stay what they are anywhere.</summary>
    internal ShapedText Shape(string text)
    {
        var glyphs = new List<ushort>(text.Length);
        var places = new List<int>(text.Length);
        var advances = new List<int>(text.Length);
        var width = 0;
        for (var rest = text.AsSpan(); !rest.IsEmpty; rest = rest[FirstWord(rest)..])
        {
            var word = _words.Shape(rest[..FirstWord(rest)]);
            glyphs.AddRange(word.Glyphs);
            advances.AddRange(word.Advances);
            foreach (var place in word.Places)
            {
                places.Add(width + place);
            }

            width += word.Width;
        }

        return new ShapedText([.. glyphs], [.. places], [.. advances], width);
    }

    /// <summary>A font whose advances are not rounded, or text taken from the PDF has stray spaces.</summary>
    internal static SKFont FontOf(SKTypeface typeface, float size, bool smooth) => new(typeface, size)
    {
        Subpixel = true,
        LinearMetrics = true,
        Hinting = SKFontHinting.None,
        Edging = smooth ? SKFontEdging.Antialias : SKFontEdging.Alias,
    };

    /// <summary>Length of the word a text starts with; a space is a word of its own.</summary>
    private static int FirstWord(ReadOnlySpan<char> text) => text.IndexOfAny(Spaces) switch
    {
        < 0 => text.Length,
        0 => 1,
        var space => space,
    };
}
