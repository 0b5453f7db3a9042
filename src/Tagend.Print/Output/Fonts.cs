using System.Text;
using Tagend.Pdf;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>The type family of all pages, read from a folder.</summary>
public sealed class Fonts
{
    private readonly Face[] _faces;

    private Fonts(Face[] faces) => _faces = faces;

    public Face this[Weight weight] => _faces[(int)weight];

    /// <summary>Reads the fonts of a templates folder.</summary>
    /// <exception cref="TagendException">A file is missing or no font.</exception>
    public static Fonts Of(string templates) => Load(Path.Combine(templates, "fonts"));

    /// <summary>Reads Inter-Regular.ttf, Inter-SemiBold.ttf and Inter-Bold.ttf.</summary>
    /// <exception cref="TagendException">A file is missing or no font.</exception>
    public static Fonts Load(string folder) => new([.. Enum.GetValues<Weight>().Select(w => Load(folder, w))]);

    /// <summary>Width of a text in points.</summary>
    public float WidthOf(string text, TextStyle style) => this[style.Weight].WidthOf(text, style);

    /// <summary>Width in points of a text that can be a line as it is; null for one that a line is made of first, or whose glyphs are missing.</summary>
    internal float? WidthOfWhole(string text, TextStyle style)
    {
        var face = this[style.Weight];
        var measure = face.Measure(text);
        return measure is { IsTidy: true, Missing: null } ? face.WidthOf(measure, style) : null;
    }

    /// <summary>The first character the face has no glyph for; null where all can be drawn.</summary>
    public Rune? FirstMissing(string text, Weight weight) => this[weight].Measure(text).Missing;

    private static Face Load(string folder, Weight weight)
    {
        var path = Path.Combine(folder, $"Inter-{weight}.ttf");
        var file = FontFile.Of(path)
            ?? throw new TagendException($"{path}: the font cannot be read; put back templates/fonts as it was shipped");
        return Face.Of(file)
            ?? throw new TagendException($"{path}: is no font; put back templates/fonts as it was shipped");
    }
}
