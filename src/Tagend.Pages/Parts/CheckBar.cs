using Tagend.Blocks;
using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Pages.Parts;

/// <summary>Two bars from one line, of 4 in and 100 mm at true size, each with its length behind it.</summary>
internal static class CheckBar
{
    public const float Height = 12;

    private const float Thickness = 4;
    private const float Lower = 7;
    private const float Stem = 1;
    private const float Gap = 4;

    public static float Width(Fonts fonts) =>
        Points.Of(Length.FromInches(4)) + Gap + fonts.WidthOf("100 mm", TypeScale.Heading);

    public static Block Block { get; } = new Drawing(Height, (fonts, room) =>
    {
        var width = Width(fonts);
        return room.HoldsWidth(width)
            ? new Placed(width, Height, [.. Inks(0, 0)])
            : new Misfit($"a check bar of {width:0.#} pt has {room.Width:0.#} pt of width");
    });

    /// <param name="x">Of the line both start from.</param>
    /// <param name="top">Of the upper bar.</param>
    public static IEnumerable<Ink> Inks(float x, float top)
    {
        foreach (var (length, name, y) in new[]
            { (Length.FromInches(4), "4 in", top), (Length.FromMillimeters(100), "100 mm", top + Lower) })
        {
            var width = Points.Of(length);
            yield return new BoxInk(x, y, width, Thickness, Fill: 0);
            yield return new TextInk(x + width + Gap, y + Thickness + 0.6f, name, TypeScale.Heading with { Tracking = 0 });
        }

        yield return new BoxInk(x, top, Stem, Lower + Thickness, Fill: 0);
    }
}
