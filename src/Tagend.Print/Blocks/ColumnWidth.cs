namespace Tagend.Blocks;

/// <summary>How wide a column is: so many points, what its content takes, or a share of what the others leave.</summary>
public readonly record struct ColumnWidth
{
    private ColumnWidth(float? points, float share)
    {
        Points = points;
        Share = share;
    }

    /// <summary>Takes what its content takes.</summary>
    public static ColumnWidth Natural => default;

    internal float? Points { get; }

    internal float Share { get; }

    private bool IsNatural => Points is null && Share == 0;

    public static ColumnWidth Of(float points) => new(points, 0);

    public static ColumnWidth Shared(float share = 1) => new(null, share);

    /// <summary>Widths of columns side by side, in points.</summary>
    /// <param name="natural">Width that the content of a column takes.</param>
    /// <param name="width">Of all columns and the gaps between them.</param>
    /// <remarks>Where natural columns take too much, the widest gives way and its text wraps.</remarks>
    internal static float[] Divide(IReadOnlyList<ColumnWidth> columns, Func<int, float> natural, float width, float gap)
    {
        var widths = new float[columns.Count];
        var shares = 0f;
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = columns[i].IsNatural ? natural(i) : columns[i].Points ?? 0;
            shares += columns[i].Share;
        }

        var left = width - (gap * (columns.Count - 1)) - widths.Sum();

        while (left < 0 && columns.Any(c => c.IsNatural))
        {
            var ordered = Enumerable.Range(0, widths.Length)
                .Where(i => columns[i].IsNatural).OrderByDescending(i => widths[i]).ToList();
            var widest = widths[ordered[0]];
            var level = ordered.Where(i => widths[i] > widest - 0.01f).ToList();
            var next = ordered.Count > level.Count ? widths[ordered[level.Count]] : 0;
            var cut = Math.Min(-left / level.Count, widest - next);
            level.ForEach(i => widths[i] -= cut);
            left += cut * level.Count;
            if (cut <= 0.001f)
            {
                break;
            }
        }

        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = columns[i].Share > 0 ? Math.Max(0, left) * columns[i].Share / shares : widths[i];
        }

        return widths;
    }
}
