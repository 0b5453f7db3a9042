namespace Tagend.Qr.Read;

/// <summary>Looks for finder patterns: dark and light in the ratio 1 : 1 : 3 : 1 : 1, across, down and all around.</summary>
/// <remarks>
/// Ratios are taken between edges of the same direction (dark to light, or light to dark): those keep their distance
/// when a blur or a threshold makes all dark parts thicker or thinner.
/// </remarks>
internal static class FinderScan
{
    /// <summary>Rows after which a pattern cannot be crossed again, in its modules: seven, and as many for a wrong guess of them.</summary>
    private const int Reach = 14;

    /// <summary>The core of larger ones, in pixels, is three modules high: more than one row crosses it, unless it is noise.</summary>
    private const float ModuleOfOneRow = 1.4f;

    /// <summary>Rows between looks at which patterns are out of reach.</summary>
    private const int Sweep = 16;

    /// <summary>Finder patterns as they are found from the top; those that look like texture are left out.</summary>
    /// <param name="picture">In black and white.</param>
    /// <param name="pass">Says how large their modules are, and how clear their rings.</param>
    public static List<FinderPattern> Find(BinaryImage picture, ReadingPass pass)
    {
        var found = new List<FinderPattern>();
        var inReach = new List<int>(); // of found: in noise there are far too many to compare each with all
        var edges = new List<int>();
        for (var y = 0; y < picture.Height; y++)
        {
            if (y % Sweep == 0)
            {
                inReach.RemoveAll(i => y - found[i].Middle.Y > Reach * found[i].Module);
            }

            picture.Edges(y, edges);
            var places = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(edges);
            // Edges alternate: even ones begin dark runs.
            for (var i = 0; i + 5 < places.Length; i += 2)
            {
                if (Ratio(places[i], places[i + 1], places[i + 2], places[i + 3], places[i + 4], places[i + 5]) is { } across
                    && across.Module >= pass.LeastModule && across.Module < pass.LargestModule
                    && Checked(picture, across, y) is { } finder)
                {
                    Add(found, inReach, finder);
                }
            }
        }

        return
        [
            .. found.Where(f => pass.LeastRings == 0 || f.Count > 1 || f.Module < ModuleOfOneRow)
                .Select(f => f with { Rings = FinderRings.Share(picture, f) })
                .Where(f => f.Rings >= pass.LeastRings),
        ];
    }

    /// <returns>Middle and module; null where the edges are no finder pattern's.</returns>
    private static (float Middle, float Module)? Ratio(int e0, int e1, int e2, int e3, int e4, int e5)
    {
        var module = (e4 - e0 + e5 - e1) / 12f;
        var slack = (0.55f * module) + 0.6f;
        return Math.Abs(e2 - e0 - (2 * module)) < slack && Math.Abs(e4 - e2 - (4 * module)) < slack
            && Math.Abs(e3 - e1 - (4 * module)) < slack && Math.Abs(e5 - e3 - (2 * module)) < slack
            && e3 - e2 > 1.4f * module && e3 - e2 < 4.8f * module
            ? ((e0 + e1 + (2 * e2) + (2 * e3) + e4 + e5) / 8f, module)
            : null;
    }

    private static FinderPattern? Checked(BinaryImage picture, (float Middle, float Module) across, int y)
    {
        if (Line(picture, (int)across.Middle, y, 0, 1, across.Module) is not { } down
            || Line(picture, (int)across.Middle, (int)down.Middle, 1, 0, across.Module) is not { } again)
        {
            return null;
        }

        return down.Module < 4 * again.Module && again.Module < 4 * down.Module
            ? new FinderPattern(new(again.Middle, down.Middle), (again.Module + down.Module) / 2, 1)
            : null;
    }

    /// <summary>The ratio along a line through a dark place, in both directions.</summary>
    private static (float Middle, float Module)? Line(BinaryImage picture, int x, int y, int dx, int dy, float module)
    {
        if (!picture.IsDark(x, y))
        {
            return null;
        }

        var longest = (int)(14 * module) + 4;
        Span<int> back = stackalloc int[3];
        Span<int> forth = stackalloc int[3];
        if (!Walk(picture, x, y, -dx, -dy, longest, back) || !Walk(picture, x, y, dx, dy, longest, forth))
        {
            return null;
        }

        var at = dx == 0 ? y : x;
        return Ratio(at - back[2] + 1, at - back[1] + 1, at - back[0] + 1, at + forth[0], at + forth[1], at + forth[2]);
    }

    /// <summary>Steps to the ends of the dark core, the light ring and the dark ring.</summary>
    private static bool Walk(BinaryImage picture, int x, int y, int dx, int dy, int longest, Span<int> ends)
    {
        var (ring, dark) = (0, true);
        for (var step = 1; step < longest; step++)
        {
            var (px, py) = (x + (step * dx), y + (step * dy));
            var holds = picture.Holds(px, py);
            if (!holds || picture.IsDark(px, py) != dark)
            {
                ends[ring++] = step;
                dark = !dark;
                if (ring == 3)
                {
                    return true;
                }

                if (!holds)
                {
                    return false;
                }
            }
        }

        return false;
    }

    private static void Add(List<FinderPattern> found, List<int> inReach, FinderPattern finder)
    {
        for (var i = inReach.Count - 1; i >= 0; i--)
        {
            if (found[inReach[i]].IsAt(finder))
            {
                found[inReach[i]] = found[inReach[i]].With(finder);
                return;
            }
        }

        inReach.Add(found.Count);
        found.Add(finder);
    }
}
