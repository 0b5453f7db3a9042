using SkiaSharp;

namespace Tagend.Output;

/// <summary>The typefaces a document is drawn with.</summary>
internal sealed class Typefaces : IDisposable
{
    private readonly Dictionary<Weight, (SKTypeface Typeface, Dictionary<ushort, ushort> Numbers)> _cut = [];
    private readonly Dictionary<(Weight Weight, float Size, bool Smooth), SKFont> _fontsMade = [];
    private readonly Fonts _fonts;

    private Typefaces(Fonts fonts) => _fonts = fonts;

    public SKTypeface this[Weight weight] => _cut.TryGetValue(weight, out var cut) ? cut.Typeface : _fonts[weight].Typeface;

    public Fonts Fonts => _fonts;

    /// <summary>The glyphs of a text by their numbers in the typeface.</summary>
    public ushort[] NumbersOf(ShapedText text, Weight weight) =>
        _cut.TryGetValue(weight, out var cut) ? Array.ConvertAll(text.Glyphs, g => cut.Numbers[g]) : text.Glyphs;

    /// <summary>Whole faces, for pictures.</summary>
    public static Typefaces Whole(Fonts fonts) => new(fonts);

    /// <summary>Faces with the glyphs of some pages only, for documents.</summary>
    /// <exception cref="InvalidOperationException">A character has no picture: layout should have said so.</exception>
    public static Typefaces CutFor(Fonts fonts, IEnumerable<Page> pages)
    {
        var faces = new Typefaces(fonts);
        var texts = pages.SelectMany(p => p.Inks).OfType<TextInk>().Select(t => (t.Style.Weight, t.Text)).ToHashSet();
        foreach (var ofWeight in texts.GroupBy(t => t.Weight, t => t.Text).OrderBy(g => g.Key))
        {
            faces._cut.Add(ofWeight.Key, FontSubset.Cut(fonts[ofWeight.Key].File, GlyphsOf(fonts, ofWeight.Key, ofWeight)));
        }

        return faces;
    }

    /// <summary>A font whose advances are not rounded, or text taken from the PDF has stray spaces. It is the typefaces' own.</summary>
    public SKFont FontOf(Weight weight, float size, bool smooth)
    {
        if (!_fontsMade.TryGetValue((weight, size, smooth), out var font))
        {
            font = new SKFont(this[weight], size)
            {
                Subpixel = true,
                LinearMetrics = true,
                Hinting = SKFontHinting.None,
                Edging = smooth ? SKFontEdging.Antialias : SKFontEdging.Alias,
            };
            _fontsMade.Add((weight, size, smooth), font);
        }

        return font;
    }

    public void Dispose()
    {
        foreach (var font in _fontsMade.Values)
        {
            font.Dispose();
        }

        foreach (var cut in _cut.Values)
        {
            cut.Typeface.Dispose();
        }
    }

    /// <summary>The glyph of each character.</summary>
    private static SortedDictionary<int, ushort> GlyphsOf(Fonts fonts, Weight weight, IEnumerable<string> texts)
    {
        var glyphs = new SortedDictionary<int, ushort>();
        foreach (var text in texts)
        {
            if (fonts.FirstMissing(text, weight) is { } missing)
            {
                throw new InvalidOperationException($"no picture of U+{missing.Value:X4} in \"{text}\"");
            }

            foreach (var (character, glyph) in text.EnumerateRunes().Zip(fonts[weight].Shape(text).Glyphs))
            {
                glyphs[character.Value] = glyph;
            }
        }

        return glyphs;
    }
}
