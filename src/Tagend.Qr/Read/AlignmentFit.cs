using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Bends a grid to the alignment patterns, of which a large symbol has many all over.</summary>
internal static class AlignmentFit
{
    /// <summary>How far from where its neighbors point an alignment pattern is looked for, in modules.</summary>
    private const float Reach = 2.4f;

    private const float Step = 0.3f;

    /// <summary>A correlation below this is something else.</summary>
    private const float LeastCorrelation = 0.55f;

    /// <summary>The modules of a pattern's side.</summary>
    private const int Side = 5;

    /// <param name="picture">That shows the symbol.</param>
    /// <param name="grid">On a plane.</param>
    /// <param name="looks">Pixels looked at.</param>
    public static ModuleGrid Bent(GrayPicture picture, ModuleGrid grid, out long looks)
    {
        looks = 0;
        // The finder patterns are where the plane has them.
        var far = grid.Size - ModuleGrid.FinderInset;
        var known = new List<(Point Place, Point Pull)>
        {
            (new(ModuleGrid.FinderInset, ModuleGrid.FinderInset), default),
            (new(far, ModuleGrid.FinderInset), default),
            (new(ModuleGrid.FinderInset, far), default),
        };
        var waiting = SymbolLayout.Of(grid.Size).AlignmentPatterns.Select(a => new Point(a.X + 0.5f, a.Y + 0.5f)).ToList();
        while (waiting.Count > 0)
        {
            // From what is known outwards.
            var place = waiting.MinBy(w => known.Min(k => (k.Place - w).Length));
            waiting.Remove(place);
            var expected = PullAt(known, place);
            var (pull, correlation) = Best(picture, grid, place, expected, ref looks);
            if (correlation > LeastCorrelation)
            {
                known.Add((place, pull));
            }
        }

        var (x, y) = (new float[grid.Nodes * grid.Nodes], new float[grid.Nodes * grid.Nodes]);
        for (var node = 0; node < x.Length; node++)
        {
            (x[node], y[node]) = PullAt(known, new Point(node % grid.Nodes * ModuleGrid.Spacing, node / grid.Nodes * ModuleGrid.Spacing));
        }

        return grid.Bent(x, y);
    }

    /// <summary>A plane through the pulls nearby, the nearer the weightier.</summary>
    private static Point PullAt(List<(Point Place, Point Pull)> known, Point at)
    {
        double n = 1e-9, sx = 0, sy = 0, sxx = 1e-3, sxy = 0, syy = 1e-3;
        double px = 0, py = 0, pxx = 0, pxy = 0, pyx = 0, pyy = 0;
        foreach (var (place, pull) in known)
        {
            var (dx, dy) = ((place.X - at.X) / 28, (place.Y - at.Y) / 28);
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

    private static (Point Pull, float Correlation) Best(GrayPicture picture, ModuleGrid grid, Point place, Point expected, ref long looks)
    {
        var (best, bestScore, bestCorrelation) = (expected, float.MinValue, 0f);
        var steps = (int)(Reach / Step);
        for (var j = -steps; j <= steps; j++)
        {
            for (var i = -steps; i <= steps; i++)
            {
                var pull = expected + new Point(i * Step, j * Step);
                var correlation = Correlation(picture, grid, place + pull);
                var score = correlation - (0.02f * (pull - expected).Length);
                if (score > bestScore)
                {
                    (best, bestScore, bestCorrelation) = (pull, score, correlation);
                }
            }
        }

        looks += (2 * steps + 1) * (2 * steps + 1) * Side * Side;
        return (best, bestCorrelation);
    }

    private static float Correlation(GrayPicture picture, ModuleGrid grid, Point place)
    {
        float sum = 0, squares = 0, dark = 0;
        for (var y = -Side / 2; y <= Side / 2; y++)
        {
            for (var x = -Side / 2; x <= Side / 2; x++)
            {
                var light = picture.At(grid.OnPlane(place.X + x, place.Y + y));
                sum += light;
                squares += light * light;
                dark += Math.Max(Math.Abs(x), Math.Abs(y)) != 1 ? light : 0;
            }
        }

        const int All = Side * Side;
        const int Dark = 17;
        var variance = squares - (sum * sum / All);
        var difference = ((sum - dark) / (All - Dark)) - (dark / Dark);
        return variance < 1 ? 0 : difference * MathF.Sqrt((float)Dark * (All - Dark) / All / variance);
    }
}
