namespace Tagend.Qr.Read;

/// <summary>A code's text and where it stands in the picture, in pixels of the upright picture.</summary>
internal sealed record FoundCode(string Text, float Left, float Top, float Bottom)
{
    private float Middle => (Top + Bottom) / 2;

    public static FoundCode Of(string text, FinderTriple triple)
    {
        Finder[] finders = [triple.Corner, triple.Right, triple.Below];
        return new FoundCode(text, finders.Min(f => f.X), finders.Min(f => f.Y), finders.Max(f => f.Y));
    }

    /// <summary>As people read: rows from the top, each from the left.</summary>
    /// <remarks>A code belongs to a row if its middle is above the bottom of the row's highest code.</remarks>
    public static IReadOnlyList<FoundCode> InReadingOrder(IEnumerable<FoundCode> codes)
    {
        var waiting = codes.OrderBy(c => c.Middle).ToList();
        var ordered = new List<FoundCode>();
        while (waiting.Count > 0)
        {
            var bottom = waiting[0].Bottom;
            var row = waiting.TakeWhile(c => c.Middle <= bottom).ToList();
            ordered.AddRange(row.OrderBy(c => c.Left));
            waiting.RemoveRange(0, row.Count);
        }

        return ordered;
    }
}
