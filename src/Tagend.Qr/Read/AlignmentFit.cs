using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Bends a grid to the alignment patterns, of which a large symbol has many all over.</summary>
internal static class AlignmentFit
{
    /// <summary>How far from where its neighbors point an alignment pattern is looked for, in modules.</summary>
    private const float Reach = 2.4f;

    /// <summary>The same of a part of a timing pattern, which looks alike two modules on.</summary>
    private const float ReachOfTiming = 0.9f;

    private const float Step = 0.3f;

    /// <summary>A correlation below this is something else.</summary>
    private const float LeastCorrelation = 0.55f;

    /// <summary>Where the timing patterns are, and the dark module of theirs that is looked for first, in modules.</summary>
    private const float TimingRow = 6.5f;
    private const float FirstOfTiming = 12.5f;

    /// <summary>From one part of a timing pattern that is looked for to the next, in modules.</summary>
    private const int TimingStep = 4;

    private static readonly (int X, int Y, bool IsDark)[] AlignmentPattern =
        [.. from y in Enumerable.Range(-2, 5) from x in Enumerable.Range(-2, 5) select (x, y, Math.Max(Math.Abs(x), Math.Abs(y)) != 1)];

    private static readonly (int X, int Y, bool IsDark)[] TimingAcross = [.. Enumerable.Range(-3, 7).Select(x => (x, 0, x % 2 == 0))];

    private static readonly (int X, int Y, bool IsDark)[] TimingDown = [.. TimingAcross.Select(m => (0, m.X, m.IsDark))];

    /// <summary>What is nearer than this and less decides a pull together, in modules.</summary>
    private const float Near = 8;

    /// <summary>Of the modules of a finder pattern that show which way the label bends there, from its middle.</summary>
    private const float NearFinder = 3;

    /// <param name="picture">That shows the symbol.</param>
    /// <param name="grid">On a plane.</param>
    /// <param name="finders">Fitted to the picture: corner, right, below.</param>
    /// <param name="looks">Pixels looked at.</param>
    public static ModuleGrid Bent(GrayPicture picture, ModuleGrid grid, FinderShape[] finders, out long looks)
    {
        looks = 0;
        var far = grid.Size - ModuleGrid.FinderInset;
        var known = new List<(Point Place, Point Pull)>();
        foreach (var (finder, place) in finders.Zip((Point[])[new(ModuleGrid.FinderInset, ModuleGrid.FinderInset), new(far, ModuleGrid.FinderInset), new(ModuleGrid.FinderInset, far)]))
        {
            foreach (var (across, down) in (ReadOnlySpan<(float, float)>)[(0, 0), (-NearFinder, -NearFinder), (NearFinder, -NearFinder), (-NearFinder, NearFinder), (NearFinder, NearFinder)])
            {
                var at = place + new Point(across, down);
                known.Add((at, grid.FromPlane(finder.At(across, down)) - at));
            }
        }

        var waiting = SymbolLayout.Of(grid.Size).AlignmentPatterns.Select(a => new Landmark(new(a.X + 0.5f, a.Y + 0.5f), AlignmentPattern, Reach)).ToList();
        for (var along = FirstOfTiming; along <= grid.Size - FirstOfTiming; along += TimingStep)
        {
            waiting.Add(new(new(along, TimingRow), TimingAcross, ReachOfTiming));
            waiting.Add(new(new(TimingRow, along), TimingDown, ReachOfTiming));
        }

        while (waiting.Count > 0)
        {
            // From what is known outwards.
            var next = waiting.MinBy(w => known.Min(k => (k.Place - w.Place).Length))!;
            waiting.Remove(next);
            var (pull, correlation) = Best(picture, grid, next, PullAt(known, next.Place), ref looks);
            if (correlation > LeastCorrelation)
            {
                known.Add((next.Place, pull));
            }
        }

        var plate = new ThinPlate(known);
        var (x, y) = (new float[grid.Nodes * grid.Nodes], new float[grid.Nodes * grid.Nodes]);
        for (var node = 0; node < x.Length; node++)
        {
            (x[node], y[node]) = plate.PullAt(new Point(node % grid.Nodes * ModuleGrid.Spacing, node / grid.Nodes * ModuleGrid.Spacing));
        }

        return grid.Bent(x, y);
    }

    /// <summary>A plane through the pulls nearby, the nearer the weightier.</summary>
    private static Point PullAt(List<(Point Place, Point Pull)> known, Point at)
    {
        // Far from all of them the few nearest may stand in a line, and say nothing of what is beside it.
        var near = Near + known.Min(k => (k.Place - at).Length);
        double n = 1e-9, sx = 0, sy = 0, sxx = 1e-3, sxy = 0, syy = 1e-3;
        double px = 0, py = 0, pxx = 0, pxy = 0, pyx = 0, pyy = 0;
        foreach (var (place, pull) in known)
        {
            var (dx, dy) = ((place.X - at.X) / near, (place.Y - at.Y) / near);
            var distance = (dx * dx) + (dy * dy);
            var weight = 1 / (0.02 + (distance * distance));
            n += weight;
            sx += weight * dx;
            sy += weight * dy;
            sxx += weight * dx * dx;
            sxy += weight * dx * dy;
            syy += weight * dy * dy;
            px += weight * pull.X;
            py += weight * pull.Y;
            pxx += weight * dx * pull.X;
            pxy += weight * dy * pull.X;
            pyx += weight * dx * pull.Y;
            pyy += weight * dy * pull.Y;
        }

        // Cramer's rule for the value at the place itself.
        var minor = (sxx * syy) - (sxy * sxy);
        var det = (n * minor) - (sx * ((sx * syy) - (sxy * sy))) + (sy * ((sx * sxy) - (sxx * sy)));
        return new Point(At(px, pxx, pxy), At(py, pyx, pyy));

        float At(double p, double q, double r) =>
            (float)(((p * minor) - (sx * ((q * syy) - (sxy * r))) + (sy * ((q * sxy) - (sxx * r)))) / det);
    }

    private static (Point Pull, float Correlation) Best(GrayPicture picture, ModuleGrid grid, Landmark landmark, Point expected, ref long looks)
    {
        var (best, bestScore, bestCorrelation) = (expected, float.MinValue, 0f);
        var steps = (int)(landmark.Reach / Step);
        for (var j = -steps; j <= steps; j++)
        {
            for (var i = -steps; i <= steps; i++)
            {
                var pull = expected + new Point(i * Step, j * Step);
                var correlation = Correlation(picture, grid, landmark.Modules, landmark.Place + pull);
                var score = correlation - (0.02f * (pull - expected).Length);
                if (score > bestScore)
                {
                    (best, bestScore, bestCorrelation) = (pull, score, correlation);
                }
            }
        }

        looks += (2 * steps + 1) * (2 * steps + 1) * landmark.Modules.Length;
        return (best, bestCorrelation);
    }

    private static float Correlation(GrayPicture picture, ModuleGrid grid, (int X, int Y, bool IsDark)[] modules, Point place)
    {
        float sum = 0, squares = 0, dark = 0;
        var darkModules = 0;
        foreach (var (x, y, isDark) in modules)
        {
            var light = picture.At(grid.OnPlane(place.X + x, place.Y + y));
            sum += light;
            squares += light * light;
            dark += isDark ? light : 0;
            darkModules += isDark ? 1 : 0;
        }

        var all = modules.Length;
        var variance = squares - (sum * sum / all);
        var difference = ((sum - dark) / (all - darkModules)) - (dark / darkModules);
        return variance < 1 ? 0 : difference * MathF.Sqrt((float)darkModules * (all - darkModules) / all / variance);
    }

    /// <summary>A place with modules around it that every symbol of a size has.</summary>
    /// <param name="Place">In modules.</param>
    /// <param name="Modules">From there.</param>
    /// <param name="Reach">How far from where its neighbors point it is looked for, in modules.</param>
    private sealed record Landmark(Point Place, (int X, int Y, bool IsDark)[] Modules, float Reach);
}
