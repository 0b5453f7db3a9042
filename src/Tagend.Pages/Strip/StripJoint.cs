using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Strip;

/// <summary>What glues two parts of a strip together in the right place: lap, register marks, and a length across the joint.</summary>
internal static class StripJoint
{
    private const float MarkRadius = 5;
    private const float BarThickness = 3;
    private const float Dash = 2;

    /// <summary>The end of a part that the next one is laid on.</summary>
    /// <param name="joint">From the part's start, in points.</param>
    /// <param name="lap">Paper under the next part, in points.</param>
    /// <param name="across">Of the closing length, on this part.</param>
    public static IEnumerable<Ink> Under(StripTile tile, float joint, float lap, Length across, PaperLanguage words, Fonts fonts)
    {
        yield return new LineInk(joint, -StripStyle.Above, joint, StripStyle.Height, StripStyle.EdgeLine);
        yield return new LineInk(joint, StripStyle.EdgeLine / 2, joint + lap, StripStyle.EdgeLine / 2, StripStyle.EdgeLine);
        yield return new LineInk(joint + lap, 0, joint + lap, StripStyle.Height, StripStyle.Hairline, Dash: Dash);
        yield return new LineInk(joint, StripStyle.Height, joint + lap, StripStyle.Height, StripStyle.Hairline, Dash: Dash);
        yield return new ShapeInk(
            [(joint - MarkRadius, -StripStyle.Above), (joint + MarkRadius, -StripStyle.Above), (joint, -0.5f)], Fill: 0);
        yield return new ShapeInk(
            [(joint - MarkRadius, BarMiddle), (joint, BarMiddle - MarkRadius), (joint + MarkRadius, BarMiddle), (joint, BarMiddle + MarkRadius)],
            Fill: 0);
        yield return new BoxInk(joint - Points.Of(across), BarMiddle - (BarThickness / 2), Points.Of(across), BarThickness, Fill: 0);
        yield return EndOfBar(joint - Points.Of(across));
        foreach (var (index, line) in words.Say(PaperWord.StripGlue, ("part", $"{tile.Number + 1}")).Split('\n').Index())
        {
            var width = fonts.WidthOf(line, StripStyle.Caption);
            yield return new TextInk(joint + ((lap - width) / 2), 46 + (index * StripStyle.Caption.LineHeight), line, StripStyle.Caption);
        }
    }

    /// <summary>The start of a part that is laid on the one before: it is cut at the line.</summary>
    public static IEnumerable<Ink> Over(Length across)
    {
        yield return new LineInk(0, -StripStyle.Above, 0, StripStyle.Height, StripStyle.EdgeLine);
        yield return new ShapeInk([(0, -StripStyle.Above), (MarkRadius, -StripStyle.Above), (0, -0.5f)], Fill: 0);
        yield return new ShapeInk([(0, BarMiddle - MarkRadius), (MarkRadius, BarMiddle), (0, BarMiddle + MarkRadius)], Fill: 0);
        yield return new BoxInk(0, BarMiddle - (BarThickness / 2), Points.Of(across), BarThickness, Fill: 0);
        yield return EndOfBar(Points.Of(across));
    }

    private static float BarMiddle => StripStyle.FootTop + (CheckBar.Height / 2);

    private static LineInk EndOfBar(float x) => new(x, BarMiddle - MarkRadius, x, BarMiddle + MarkRadius, StripStyle.EdgeLine);
}
