using SkiaSharp;

namespace Tagend.Output;

/// <summary>The typefaces a document is drawn with.</summary>
internal sealed class Typefaces : IDisposable
{
    private readonly Dictionary<Weight, SKTypeface> _cut = [];
    private readonly Fonts _fonts;

    private Typefaces(Fonts fonts) => _fonts = fonts;

    public SKTypeface this[Weight weight] => _cut.GetValueOrDefault(weight, _fonts[weight].Typeface);

    public Fonts Fonts => _fonts;

    /// <summary>Whole faces, for pictures.</summary>
    public static Typefaces Whole(Fonts fonts) => new(fonts);

    /// <summary>Faces with the characters of some pages only, for documents.</summary>
    /// <exception cref="InvalidOperationException">A character has no picture: layout should have said so.</exception>
    public static Typefaces CutFor(Fonts fonts, IEnumerable<Page> pages)
    {
        var faces = new Typefaces(fonts);
        var texts = pages.SelectMany(p => p.Inks).OfType<TextInk>().GroupBy(t => t.Style.Weight);
        foreach (var ofWeight in texts.OrderBy(g => g.Key))
        {
            var characters = new SortedSet<int>();
            foreach (var text in ofWeight.Select(t => t.Text))
            {
                if (fonts.FirstMissing(text, ofWeight.Key) is { } missing)
                {
                    throw new InvalidOperationException($"no picture of U+{missing.Value:X4} in \"{text}\"");
                }

                characters.UnionWith(text.EnumerateRunes().Select(r => r.Value));
            }

            faces._cut.Add(ofWeight.Key, FontSubset.Cut(fonts[ofWeight.Key].File, characters));
        }

        return faces;
    }

    public void Dispose()
    {
        foreach (var typeface in _cut.Values)
        {
            typeface.Dispose();
        }
    }
}
