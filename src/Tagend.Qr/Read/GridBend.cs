using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Pulls a grid's nodes to where modules are sharpest: for labels that are curved or crumpled.</summary>
/// <remarks>
/// A module seen at its middle is darker or lighter than one seen at its edge, whatever it holds; so the right place of a
/// node is where the modules around it differ most. It goes from the finder patterns outwards, each node starting from
/// where its solved neighbors point. Which way they point at a finder pattern, its own shape says.
/// </remarks>
internal sealed class GridBend
{
    /// <summary>Modules around a node that are looked at: up to this far.</summary>
    private const float Reach = 3.6f;

    /// <summary>How much sharper the modules must be on something round than on a plane.</summary>
    private const float CurveGain = 1.02f;

    /// <summary>Nodes as near to a finder pattern's middle are placed by its shape alone.</summary>
    private const float NearFinder = 5.5f;

    private readonly GrayPicture _picture;
    private readonly ModuleGrid _grid;
    private readonly SymbolLayout _layout;
    private readonly float[] _pullX;
    private readonly float[] _pullY;
    private readonly bool[] _solved;
    private float[] _curveX = [];
    private float[] _curveY = [];

    private GridBend(GrayPicture picture, ModuleGrid grid)
    {
        (_picture, _grid, _layout) = (picture, grid, SymbolLayout.Of(grid.Size));
        var nodes = grid.Nodes * grid.Nodes;
        (_pullX, _pullY, _solved) = (new float[nodes], new float[nodes], new bool[nodes]);
    }

    public long Looks { get; private set; }

    /// <summary>Begins with the round thing that the label may be on.</summary>
    /// <param name="picture">In which a module of the grid is about 3 to 6 pixels.</param>
    /// <param name="grid">On a plane.</param>
    /// <param name="straightOn">The finder patterns as they were found, and the fourth corner of a symbol without perspective.</param>
    /// <param name="looks">Pixels looked at.</param>
    public static ModuleGrid Rounded(GrayPicture picture, ModuleGrid grid, in Quadrilateral straightOn, out long looks)
    {
        var bend = new GridBend(picture, grid);
        var score = bend.Curve();
        // A round label misleads the fit of a plane: through the middles of its finder patterns alone it may be sharper.
        var straight = new ModuleGrid(grid.Size, straightOn);
        var other = new GridBend(picture, straight) { Looks = bend.Looks };
        if (other.Curve() > score)
        {
            bend = other;
        }

        return bend.Settled(out looks);
    }

    /// <summary>Begins with a grid that is bent already.</summary>
    /// <param name="picture">In which a module of the grid is about 3 to 6 pixels.</param>
    /// <param name="grid">Nearly where the modules are.</param>
    /// <param name="looks">Pixels looked at.</param>
    public static ModuleGrid Settled(GrayPicture picture, ModuleGrid grid, out long looks)
    {
        var bend = new GridBend(picture, grid);
        (bend._curveX, bend._curveY) = grid.Pulls;
        return bend.Settled(out looks);
    }

    private ModuleGrid Settled(out long looks)
    {
        var order = Enumerable.Range(0, _pullX.Length).OrderBy(FromFinders).ToList();
        var far = _grid.Size - ModuleGrid.FinderInset;
        Anchor(ModuleGrid.FinderInset, ModuleGrid.FinderInset);
        Anchor(far, ModuleGrid.FinderInset);
        Anchor(ModuleGrid.FinderInset, far);
        foreach (var node in order.Where(n => !_solved[n]))
        {
            var (x, y) = Expected(node, 2);
            Settle(node, x, y, [0.3f, 0.15f, 0.08f], 2);
        }

        for (var round = 0; round < 2; round++)
        {
            foreach (var node in order)
            {
                var (x, y) = Expected(node, 1);
                Settle(node, x, y, [0.15f, 0.08f], 1);
            }
        }

        looks = Looks;
        return _grid.Bent(_pullX, _pullY);
    }

    /// <summary>Fits the pull and how it changes around a finder pattern to its shape, and places the nodes there.</summary>
    private void Anchor(float u, float v)
    {
        var modules = new List<(float U, float V, sbyte Known)>();
        for (var dy = -4; dy <= 4; dy++)
        {
            for (var dx = -4; dx <= 4; dx++)
            {
                var ring = Math.Max(Math.Abs(dx), Math.Abs(dy));
                modules.Add((u + dx, v + dy, (sbyte)(ring is 2 or 4 ? -1 : 1)));
            }
        }

        var pull = CurveAt(u, v);
        var best = Fit(modules, u, v, pull);
        for (var step = 0.4f; step > 0.03f; step /= 2)
        {
            for (var i = 0; i < 2 * LocalPull.Numbers; i++)
            {
                var changed = pull.Changed(i / 2, step * (i % 2 == 0 ? 1 : -1));
                var fit = Fit(modules, u, v, changed);
                if (fit > best)
                {
                    (pull, best) = (changed, fit);
                }
            }
        }

        for (var node = 0; node < _solved.Length; node++)
        {
            var (du, dv) = ((node % _grid.Nodes * ModuleGrid.Spacing) - u, (node / _grid.Nodes * ModuleGrid.Spacing) - v);
            if (Math.Max(Math.Abs(du), Math.Abs(dv)) <= NearFinder)
            {
                (_pullX[node], _pullY[node]) = pull.At(du, dv);
                _solved[node] = true;
            }
        }
    }

    private LocalPull CurveAt(float u, float v)
    {
        var curved = _grid.Bent(_curveX, _curveY);
        var (x, y) = curved.Pull(u, v);
        var (rightX, rightY) = curved.Pull(u + ModuleGrid.Spacing, v);
        var (downX, downY) = curved.Pull(u, v + ModuleGrid.Spacing);
        const float Step = ModuleGrid.Spacing;
        return new LocalPull(new(x, y), new((rightX - x) / Step, (rightY - y) / Step), new((downX - x) / Step, (downY - y) / Step));
    }

    private float Fit(List<(float U, float V, sbyte Known)> modules, float u, float v, LocalPull pull)
    {
        float sum = 0, squares = 0, product = 0, known = 0;
        foreach (var module in modules)
        {
            var (x, y) = pull.At(module.U - u, module.V - v);
            var light = _picture.At(_grid.OnPlane(module.U + x, module.V + y));
            sum += light;
            squares += light * light;
            product -= light * module.Known;
            known -= module.Known;
        }

        Looks += modules.Count;
        var n = modules.Count;
        var variance = squares - (sum * sum / n);
        return variance < 1 ? 0 : (product - (sum * known / n)) / MathF.Sqrt(variance);
    }

    private float FromFinders(int node)
    {
        var (u, v) = (node % _grid.Nodes * ModuleGrid.Spacing, node / _grid.Nodes * ModuleGrid.Spacing);
        var far = _grid.Size - ModuleGrid.FinderInset;
        float To(float x, float y) => ((u - x) * (u - x)) + ((v - y) * (v - y));
        return Math.Min(To(ModuleGrid.FinderInset, ModuleGrid.FinderInset), Math.Min(To(far, ModuleGrid.FinderInset), To(ModuleGrid.FinderInset, far)));
    }

    /// <summary>Begins with the round thing that the label may be on: the one that shows the modules sharpest.</summary>
    /// <returns>How sharp.</returns>
    private float Curve()
    {
        var windows = Enumerable.Range(0, _pullX.Length).Where(n => ((n % _grid.Nodes) + (n / _grid.Nodes)) % 2 == 0)
            .Select(n => (Node: n, Modules: Around(n))).ToList();
        var (best, bestScore) = (LabelCurve.Flat, Score(LabelCurve.Flat) * CurveGain);
        foreach (var curve in LabelCurve.Starts())
        {
            Try(curve);
        }

        for (var step = 1f; best.Angle > 0 && step > 0.1f; step *= 0.7f)
        {
            foreach (var curve in best.Near(step))
            {
                Try(curve);
            }
        }

        (_curveX, _curveY) = best.Pulls(_grid);
        return bestScore;

        void Try(LabelCurve curve)
        {
            var score = Score(curve);
            if (score > bestScore)
            {
                (best, bestScore) = (curve, score);
            }
        }

        float Score(LabelCurve curve)
        {
            var (x, y) = curve.Pulls(_grid);
            return windows.Sum(w => Contrast(w.Modules, x[w.Node], y[w.Node]));
        }
    }

    /// <summary>A plane through the pulls of solved nodes nearby, at this node.</summary>
    private (float X, float Y) Expected(int node, int reach)
    {
        var (column, row) = (node % _grid.Nodes, node / _grid.Nodes);
        // Weighted least squares of p = a + b·dx + c·dy; slopes are held back a little, so few neighbors cannot throw it.
        double n = 1e-6, sx = 0, sy = 0, sxx = 0.15, sxy = 0, syy = 0.15, px = 0, py = 0, pxx = 0, pxy = 0, pyx = 0, pyy = 0;
        for (var dy = -reach; dy <= reach; dy++)
        {
            for (var dx = -reach; dx <= reach; dx++)
            {
                var (nx, ny) = (column + dx, row + dy);
                if (nx < 0 || ny < 0 || nx >= _grid.Nodes || ny >= _grid.Nodes || !_solved[(ny * _grid.Nodes) + nx])
                {
                    continue;
                }

                var i = (ny * _grid.Nodes) + nx;
                var (x, y) = (_pullX[i] - _curveX[i], _pullY[i] - _curveY[i]);
                var w = 1.0 / (1 + (dx * dx) + (dy * dy));
                n += w;
                sx += w * dx;
                sy += w * dy;
                sxx += w * dx * dx;
                sxy += w * dx * dy;
                syy += w * dy * dy;
                px += w * x;
                py += w * y;
                pxx += w * dx * x;
                pxy += w * dy * x;
                pyx += w * dx * y;
                pyy += w * dy * y;
            }
        }

        // Cramer's rule for a.
        var minor = (sxx * syy) - (sxy * sxy);
        var det = (n * minor) - (sx * ((sx * syy) - (sxy * sy))) + (sy * ((sx * sxy) - (sxx * sy)));
        double At(double p, double q, double r) =>
            ((p * minor) - (sx * ((q * syy) - (sxy * r))) + (sy * ((q * sxy) - (sxx * r)))) / det;
        return Math.Abs(det) < 1e-9
            ? (_curveX[node], _curveY[node])
            : (_curveX[node] + (float)At(px, pxx, pxy), _curveY[node] + (float)At(py, pyx, pyy));
    }

    /// <param name="steps">In modules, each around the best place of the one before.</param>
    /// <param name="reach">Steps tried to each side, of the first.</param>
    private void Settle(int node, float x, float y, ReadOnlySpan<float> steps, int reach)
    {
        var modules = Around(node);
        var (bestX, bestY, best) = (x, y, Contrast(modules, x, y));
        foreach (var step in steps)
        {
            var (fromX, fromY) = (bestX, bestY);
            for (var dy = -reach; dy <= reach; dy++)
            {
                for (var dx = -reach; dx <= reach; dx++)
                {
                    var (tryX, tryY) = (fromX + (dx * step), fromY + (dy * step));
                    // Going far from where the neighbors point costs something.
                    var away = ((tryX - x) * (tryX - x)) + ((tryY - y) * (tryY - y));
                    var contrast = Contrast(modules, tryX, tryY) * (1 - (0.12f * away));
                    if (contrast > best)
                    {
                        (bestX, bestY, best) = (tryX, tryY, contrast);
                    }
                }
            }

            reach = 1;
        }

        (_pullX[node], _pullY[node], _solved[node]) = (bestX, bestY, true);
    }

    private List<(float U, float V, sbyte Known)> Around(int node)
    {
        var (u, v) = (node % _grid.Nodes * ModuleGrid.Spacing, node / _grid.Nodes * ModuleGrid.Spacing);
        var modules = new List<(float, float, sbyte)>();
        for (var y = (int)Math.Floor(v - Reach); y <= v + Reach; y++)
        {
            for (var x = (int)Math.Floor(u - Reach); x <= u + Reach; x++)
            {
                if (x >= -1 && y >= -1 && x <= _grid.Size && y <= _grid.Size)
                {
                    var inside = x >= 0 && y >= 0 && x < _grid.Size && y < _grid.Size;
                    modules.Add((x + 0.5f, y + 0.5f, inside ? _layout.FunctionPatterns[(y * _grid.Size) + x] : (sbyte)-1));
                }
            }
        }

        return modules;
    }

    private float Contrast(List<(float U, float V, sbyte Known)> modules, float pullX, float pullY)
    {
        Span<float> light = stackalloc float[modules.Count];
        var sum = 0f;
        for (var i = 0; i < light.Length; i++)
        {
            light[i] = _picture.At(_grid.OnPlane(modules[i].U + pullX, modules[i].V + pullY));
            sum += light[i];
        }

        Looks += light.Length;
        var (mean, contrast) = (sum / light.Length, 0f);
        for (var i = 0; i < light.Length; i++)
        {
            var from = light[i] - mean;
            contrast += modules[i].Known == 0 ? Math.Abs(from) : -1.5f * from * modules[i].Known;
        }

        return contrast;
    }

    /// <summary>The pull at a place, and how it changes around it.</summary>
    /// <param name="Middle">In modules.</param>
    /// <param name="Across">Its change a module to the right.</param>
    /// <param name="Down">Its change a module down.</param>
    private readonly record struct LocalPull(Point Middle, Point Across, Point Down)
    {
        public const int Numbers = 6;

        public Point At(float du, float dv) => Middle + (Across * du) + (Down * dv);

        public LocalPull Changed(int number, float by)
        {
            var step = number % 2 == 0 ? new Point(by, 0) : new Point(0, by);
            return (number / 2) switch
            {
                0 => this with { Middle = Middle + step },
                1 => this with { Across = Across + (step * 0.25f) },
                _ => this with { Down = Down + (step * 0.25f) },
            };
        }
    }
}
