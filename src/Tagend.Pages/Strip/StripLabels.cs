using Tagend.Output;

namespace Tagend.Pages.Strip;

/// <summary>The words of a place, beside its line. In points.</summary>
/// <param name="X">Of the line.</param>
/// <param name="Left">Of the words.</param>
/// <param name="Lane">From 0, under the scale.</param>
internal sealed record StripLabel(StripPlace Place, float X, float Left, float Width, int Lane)
{
    public float Right => Left + Width;

    public bool Allows(StripLabel other) =>
        !(other.Lane == Lane && other.Left < Right && Left < other.Right)
        && !IsCrossedBy(other)
        && !other.IsCrossedBy(this);

    /// <summary>A line runs down through all lanes to its own.</summary>
    private bool IsCrossedBy(StripLabel other) => other.Lane >= Lane && other.X > Left - 1 && other.X < Right + 1;
}

/// <summary>Finds room for the words of places that are close together: at either side of their line, in one of some lanes.</summary>
/// <param name="least">No words before it, in points.</param>
/// <param name="most">No words beyond it, in points.</param>
internal sealed class StripLabels(float least, float most, StripStyle style, Fonts fonts)
{
    public const float FromLine = 3;

    private const float Gap = 4;

    /// <summary>Tries after which places are said to be too close: they are many more than any strip needs.</summary>
    private const int MostTries = 20_000;

    private int _tries;

    /// <summary>The first of all places whose words have found no room; null where all have.</summary>
    public StripPlace? Crowded { get; private set; }

    /// <summary>The words of all places.</summary>
    /// <param name="places">With the place of each line, in order.</param>
    /// <returns>Empty where some find no room: <see cref="Crowded"/>.</returns>
    public IReadOnlyList<StripLabel> Spread(IReadOnlyList<(StripPlace Place, float X)> places)
    {
        var labels = new List<StripLabel>();
        var reach = 0;
        while (labels.Count < places.Count)
        {
            // What lies apart from what comes after it is settled by itself.
            var start = labels.Count;
            var end = start + 1;
            while (end < places.Count && places.Take(end).Max(p => p.X + WidthOf(p.Place)) > places[end].X - WidthOf(places[end].Place))
            {
                end++;
            }

            _tries = 0;
            if (!Settle(places, labels, end, ref reach))
            {
                Crowded = places[reach].Place;
                return [];
            }
        }

        return labels;
    }

    /// <summary>Side of the square around the letter of an end.</summary>
    public static float EndSide(StripStyle style) => style.Figure.CapHeight + 5;

    private bool Settle(IReadOnlyList<(StripPlace Place, float X)> places, List<StripLabel> labels, int end, ref int reach)
    {
        if (labels.Count == end)
        {
            return true;
        }

        reach = Math.Max(reach, labels.Count);
        var (place, x) = places[labels.Count];
        foreach (var label in Choices(place, x))
        {
            if (++_tries > MostTries)
            {
                return false;
            }

            if (labels.TrueForAll(l => l.Allows(label)))
            {
                labels.Add(label);
                if (Settle(places, labels, end, ref reach))
                {
                    return true;
                }

                labels.RemoveAt(labels.Count - 1);
            }
        }

        return false;
    }

    private IEnumerable<StripLabel> Choices(StripPlace place, float x)
    {
        var width = WidthOf(place);
        return
            from lane in Enumerable.Range(0, style.Lanes)
            from left in new[] { x + FromLine, x - FromLine - width }
            where left >= least && left + width <= most
            select new StripLabel(place, x, left, width, lane);
    }

    private float WidthOf(StripPlace place) => Gap + (place.Symbol == StripSymbol.End
        ? EndSide(style) + FromLine + fonts.WidthOf(place.Words, style.Words)
        : Math.Max(fonts.WidthOf(place.Figure, style.Figure), fonts.WidthOf(place.Words, style.Words)));
}
