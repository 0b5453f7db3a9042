using SkiaSharp;

namespace Tagend.Floor;

/// <summary>The fonts of the pages, beside their list and cut to their characters; each size made once.</summary>
internal sealed class Faces(string folder) : IDisposable
{
    private readonly Dictionary<string, SKTypeface> _typefaces = [];
    private readonly Dictionary<(string Weight, float Size), SKFont> _fonts = [];

    public SKFont this[string weight, float size]
    {
        get
        {
            if (!_fonts.TryGetValue((weight, size), out var font))
            {
                if (!_typefaces.TryGetValue(weight, out var typeface))
                {
                    typeface = SKTypeface.FromFile(Path.Combine(folder, $"{weight}.ttf"));
                    _typefaces.Add(weight, typeface);
                }

                font = new SKFont(typeface, size) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };
                _fonts.Add((weight, size), font);
            }

            return font;
        }
    }

    public void Dispose()
    {
        foreach (var font in _fonts.Values)
        {
            font.Dispose();
        }

        foreach (var typeface in _typefaces.Values)
        {
            typeface.Dispose();
        }
    }
}
