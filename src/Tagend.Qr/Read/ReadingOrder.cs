namespace Tagend.Qr.Read;

/// <summary>Codes as people read a page.</summary>
internal static class ReadingOrder
{
    /// <summary>Rows from the top, each from the left; equal texts together, where the first of them stands.</summary>
    /// <remarks>A code belongs to a row if its middle is above the bottom of the row's highest code.</remarks>
    public static IReadOnlyList<ReadCode> Of(IEnumerable<FoundCode> codes)
    {
        var waiting = codes.OrderBy(Middle).ToList();
        var ordered = new List<FoundCode>();
        while (waiting.Count > 0)
        {
            var bottom = Bottom(waiting[0]);
            var row = waiting.TakeWhile(c => Middle(c) <= bottom).ToList();
            ordered.AddRange(row.OrderBy(c => Corners(c).Min(p => p.X)));
            waiting.RemoveRange(0, row.Count);
        }

        return [.. ordered.GroupBy(c => c.Text).Select(same => new ReadCode(same.Key, [.. same.Select(c => c.Place)]))];
    }

    private static float Middle(FoundCode code) => (Corners(code).Min(p => p.Y) + Bottom(code)) / 2;

    private static float Bottom(FoundCode code) => Corners(code).Max(p => p.Y);

    private static Point[] Corners(FoundCode code) => [code.Place.TopLeft, code.Place.TopRight, code.Place.BottomLeft, code.Place.BottomRight];
}

/// <summary>One code that was read.</summary>
/// <param name="Text">Of the code.</param>
/// <param name="Place">The symbol's corners, in pixels of the whole picture.</param>
internal sealed record FoundCode(string Text, Quadrilateral Place);
