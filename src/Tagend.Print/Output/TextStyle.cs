using Tagend.Catalog;

namespace Tagend.Output;

public enum Weight
{
    Regular,
    SemiBold,
    Bold,
}

/// <summary>How a text looks.</summary>
/// <param name="Size">In points; rounded to 1/8 pt, so that the places of glyphs are exact and a PDF keeps words whole.</param>
/// <param name="Gray">0 is black, 255 is paper.</param>
/// <param name="Tracking">Added after each character, in points.</param>
/// <param name="Leading">Line to line, as a multiple of the size.</param>
/// <param name="Color">In place of the gray.</param>
public readonly record struct TextStyle(
    Weight Weight, float Size, byte Gray = 0, float Tracking = 0, float Leading = 1.25f, InkColor? Color = null)
{
    /// <summary>Ascent and descent of the faces, in ems: Inter's own figures.</summary>
    private const float Ascent = 0.96875f;
    private const float Descent = 0.24121f;

    /// <summary>Height of the faces' capitals and digits, in ems: Inter's own figure.</summary>
    private const float CapHeightInEms = 0.72727f;

    /// <summary>Of the headings that look so: 1 for titles of pages; 0 for all other text.</summary>
    public int HeadingLevel { get; init; }

    public float Size { get; init => field = ToEighths(value); } = ToEighths(Size);

    public float LineHeight => Size * Leading;

    public float CapHeight => Size * CapHeightInEms;

    /// <summary>Baseline of a line whose top is given.</summary>
    public float BaselineFrom(float top) => top + (Size * (((Leading - Ascent - Descent) / 2) + Ascent));

    private static float ToEighths(float size) => MathF.Round(size * 8) / 8;
}
