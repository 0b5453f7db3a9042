using Tagend.Measures;
using Tagend.Output;

namespace Tagend.Pages.Strip;

/// <summary>The tape along a strip: distances from end A at true size.</summary>
internal static class StripScale
{
    /// <summary>A number closer to a line than this is left out, in points.</summary>
    private const float Clear = 2.5f;

    /// <param name="lines">Places of lines that cross the numbers, in points from the tile's start.</param>
    public static IEnumerable<Ink> Inks(StripTile tile, LengthUnit unit, IReadOnlyList<float> lines, Fonts fonts)
    {
        var (step, unitSteps, numberedSteps, perNumber) = unit == LengthUnit.Inch
            ? (Length.FromInches(1.0 / 8), 8, 8, 1)
            : (Length.FromMillimeters(5), 2, 10, 50);
        var style = StripStyle.CaptionBold;
        for (var i = (int)Math.Ceiling(tile.From / step); step * i <= tile.To; i++)
        {
            var x = Points.Of((step * i) - tile.From);
            var height = i % numberedSteps == 0 ? 5.5f : i % unitSteps == 0 || (unit == LengthUnit.Inch && i % 4 == 0) ? 4 : 2;
            yield return new LineInk(x, StripStyle.TicksTop, x, StripStyle.TicksTop + height, StripStyle.Hairline);
            var number = $"{i / numberedSteps * perNumber}";
            var width = fonts.WidthOf(number, style);
            var isAtJoint = !tile.IsLast && step * i == tile.To;
            var left = isAtJoint ? x - width - Clear : x - (width / 2);
            if (i % numberedSteps == 0 && x >= width && !lines.Any(l => l > left - Clear && l < left + width + Clear))
            {
                yield return new TextInk(left, StripStyle.NumbersBaseline, number, style);
            }
        }
    }
}
