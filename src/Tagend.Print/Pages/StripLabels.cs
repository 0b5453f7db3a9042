using Tagend.Output;

namespace Tagend.Pages;

/// <summary>The words of a place, beside its line. In points.</summary>
/// <param name="X">Of the line.</param>
/// <param name="Left">Of the words.</param>
/// <param name="Lane">From 0, under the scale.</param>
internal sealed record StripLabel(StripPlace Place, float X, float Left, float Width, int Lane);

/// <summary>Finds room for the words of places that are close together.</summary>
/// <remarks>
/// Words stand at the right of their line, those near the right end at the left. Where words would cross another
/// line, they go into a lane below the end of that line.
/// </remarks>
internal static class StripLabels
{
    public const float FromLine = 3;
    private const float Gap = 4;

    /// <param name="places">With the place of each line, in order.</param>
    /// <param name="limit">No words beyond it.</param>
    public static IReadOnlyList<StripLabel> Spread(
        IReadOnlyList<(StripPlace Place, float X)> places, float limit, StripStyle style, Fonts fonts)
    {
        var widths = places.Select(p => FromLine + WidthOf(p.Place, style, fonts) + Gap).ToArray();
        var firstLeft = FirstAtTheLeft(places, widths, limit);
        var labels = new StripLabel[places.Count];
        for (var i = firstLeft - 1; i >= 0; i--)
        {
            var (place, x) = places[i];
            var crossed = labels[(i + 1)..firstLeft].Where(l => l.X < x + widths[i]);
            labels[i] = new StripLabel(place, x, x + FromLine, widths[i], Below(crossed));
        }

        for (var i = firstLeft; i < places.Count; i++)
        {
            var (place, x) = places[i];
            var crossed = labels[..i].Where(l => Math.Max(l.X, l.Left == l.X + FromLine ? l.X + l.Width : l.X) > x - widths[i]);
            labels[i] = new StripLabel(place, x, x - widths[i] + Gap, widths[i], Below(crossed));
        }

        return labels;
    }

    /// <summary>Side of the square around the letter of an end.</summary>
    public static float EndSide(StripStyle style) => style.Figure.CapHeight + 5;

    private static float WidthOf(StripPlace place, StripStyle style, Fonts fonts) => place.Symbol == StripSymbol.End
        ? EndSide(style) + FromLine + fonts.WidthOf(place.Words, style.Words)
        : Math.Max(fonts.WidthOf(place.Figure, style.Figure), fonts.WidthOf(place.Words, style.Words));

    /// <summary>The first place whose words stand at the left, and with it all after it.</summary>
    private static int FirstAtTheLeft(IReadOnlyList<(StripPlace Place, float X)> places, float[] widths, float limit)
    {
        var first = places.Count;
        var bound = limit;
        for (var i = 0; i < first; i++)
        {
            if (places[i].X + widths[i] > bound)
            {
                (first, bound) = (i, places[i].X);
                i = -1;
            }
        }

        return first;
    }

    private static int Below(IEnumerable<StripLabel> crossed) => crossed.Select(l => l.Lane + 1).DefaultIfEmpty(0).Max();
}
