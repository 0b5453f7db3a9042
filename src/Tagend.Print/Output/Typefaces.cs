using SkiaSharp;

namespace Tagend.Output;

/// <summary>The fonts that a picture is drawn with, each made once.</summary>
/// <param name="smooth">Edges in shades of gray.</param>
internal sealed class Typefaces(Fonts fonts, bool smooth) : IDisposable
{
    private readonly Dictionary<(Weight Weight, float Size), SKFont> _made = [];

    public Fonts Fonts => fonts;

    /// <summary>A font whose advances are not rounded. It is the typefaces' own.</summary>
    public SKFont FontOf(Weight weight, float size)
    {
        if (!_made.TryGetValue((weight, size), out var font))
        {
            font = new SKFont(fonts[weight].Typeface, size)
            {
                Subpixel = true,
                LinearMetrics = true,
                Hinting = SKFontHinting.None,
                Edging = smooth ? SKFontEdging.Antialias : SKFontEdging.Alias,
            };
            _made.Add((weight, size), font);
        }

        return font;
    }

    public void Dispose()
    {
        foreach (var font in _made.Values)
        {
            font.Dispose();
        }
    }
}
