namespace Tagend.Pages.Parts;

/// <summary>Moves labels in a line apart, each as near to its place as the others allow. All in points.</summary>
internal static class LabelSpread
{
    /// <summary>Centers of the labels; null where they do not fit side by side.</summary>
    /// <param name="places">Where the labels would stand, ascending.</param>
    /// <param name="widths">Of the labels, with the gap to the next.</param>
    /// <param name="width">Of the line.</param>
    /// <remarks>Least sum of squared moves: neighbors that would overlap are moved as one (pool adjacent violators).</remarks>
    public static float[]? Spread(IReadOnlyList<float> places, IReadOnlyList<float> widths, float width)
    {
        var total = widths.Sum();
        if (total > width)
        {
            return null;
        }

        var offsets = new float[places.Count];
        for (var i = 1; i < places.Count; i++)
        {
            offsets[i] = offsets[i - 1] + ((widths[i - 1] + widths[i]) / 2);
        }

        var pools = new List<(double Sum, int Count)>();
        for (var i = 0; i < places.Count; i++)
        {
            pools.Add((places[i] - offsets[i], 1));
            while (pools.Count > 1 && Mean(pools[^2]) >= Mean(pools[^1]))
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        var first = places.Count == 0 ? 0 : widths[0] / 2;
        var last = first + width - total;
        var starts = pools.SelectMany(p => Enumerable.Repeat((float)Math.Clamp(Mean(p), first, last), p.Count));
        return [.. starts.Select((start, i) => start + offsets[i])];
    }

    private static double Mean((double Sum, int Count) pool) => pool.Sum / pool.Count;
}
