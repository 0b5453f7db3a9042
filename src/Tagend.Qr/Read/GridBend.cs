using Tagend.Qr.Symbol;

namespace Tagend.Qr.Read;

/// <summary>Pulls a grid's nodes to where modules are sharpest: for labels that are curved or crumpled.</summary>
/// <remarks>
/// A module seen at its middle is darker or lighter than one seen at its edge, whatever it holds; so the right place of a
/// node is where the modules around it differ most. It grows from the finder patterns to where it is clearest, each node starting
/// from where its solved neighbors point. Which way they point at a finder pattern, its own shape says.
/// </remarks>
internal sealed class GridBend
{
    /// <summary>Modules around a node that are looked at: up to this far.</summary>
    private const float Reach = 3.6f;

    /// <summary>How much sharper the modules must be on something round than on a plane.</summary>
    private const float CurveGain = 1.02f;

    /// <summary>Nodes as near to a finder pattern's middle are placed by its shape alone.</summary>
    private const float NearFinder = 5.5f;

    /// <summary>Nodes that point to the next one: of a net that grows, and of one that is whole.</summary>
    private const int GrowingReach = 3;

    private const int SettlingReach = 2;

    /// <summary>A curve is looked for at one node in so many each way.</summary>
    private const int CurveNodes = 3;

    private readonly GrayPicture _picture;
    private readonly ModuleGrid _grid;
    private readonly SymbolLayout _layout;
    private readonly float[] _pullX;
    private readonly float[] _pullY;
    private readonly bool[] _solved;
    private readonly float[] _clarity;

    /// <summary>What the bend began with.</summary>
    private ModuleGrid _curved;

    private GridBend(GrayPicture picture, ModuleGrid grid)
    {
        (_picture, _grid, _curved, _layout) = (picture, grid, grid, SymbolLayout.Of(grid.Size));
        var nodes = grid.Nodes * grid.Nodes;
        (_pullX, _pullY, _solved, _clarity) = (new float[nodes], new float[nodes], new bool[nodes], new float[nodes]);
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
        bend._curved = grid;
        return bend.Settled(out looks);
    }

    private ModuleGrid Settled(out long looks)
    {
        var far = _grid.Size - ModuleGrid.FinderInset;
        Anchor(ModuleGrid.FinderInset, ModuleGrid.FinderInset);
        Anchor(far, ModuleGrid.FinderInset);
        Anchor(ModuleGrid.FinderInset, far);
        Grow();
        var order = Enumerable.Range(0, _pullX.Length).OrderByDescending(n => _clarity[n]).ToList();
        for (var round = 0; round < 2; round++)
        {
            foreach (var node in order)
            {
                Solve(node, Settled(node, Expected(node, SettlingReach), [0.15f, 0.08f], 1));
            }
        }

        looks = Looks;
        return _grid.Bent(_pullX, _pullY);
    }

    /// <summary>From solved nodes to those beside them, always to the clearest: what is unclear is reached from all sides.</summary>
    private void Grow()
    {
        var offers = new Dictionary<int, (LocalPull Pull, float Clarity)>();
        foreach (var node in Enumerable.Range(0, _solved.Length).Where(n => _solved[n]).ToList())
        {
            Offer(node);
        }

        while (offers.Count > 0)
        {
            var (node, pull) = offers.MaxBy(o => o.Value.Clarity);
            offers.Remove(node);
            Solve(node, pull);
            Offer(node);
        }

        void Offer(int from)
        {
            var (column, row) = (from % _grid.Nodes, from / _grid.Nodes);
            foreach (var (x, y) in (ReadOnlySpan<(int, int)>)[(column - 1, row), (column + 1, row), (column, row - 1), (column, row + 1)])
            {
                var node = (y * _grid.Nodes) + x;
                if (x >= 0 && y >= 0 && x < _grid.Nodes && y < _grid.Nodes && !_solved[node])
                {
                    offers[node] = Settled(node, Expected(node, GrowingReach), [0.3f, 0.15f, 0.08f], 2);
                }
            }
        }
    }

    private void Solve(int node, (LocalPull Pull, float Clarity) found) =>
        (_pullX[node], _pullY[node], _clarity[node], _solved[node]) = (found.Pull.Middle.X, found.Pull.Middle.Y, found.Clarity, true);

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
                Solve(node, (pull with { Middle = pull.At(du, dv) }, 1));
            }
        }
    }

    private LocalPull CurveAt(float u, float v)
    {
        const float Step = ModuleGrid.Spacing;
        var (at, right, down) = (_curved.PullAt(u, v), _curved.PullAt(u + Step, v), _curved.PullAt(u, v + Step));
        return new LocalPull(at, (right - at) * (1 / Step), (down - at) * (1 / Step));
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

    /// <summary>Begins with the round thing that the label may be on: the one that shows the modules sharpest.</summary>
    /// <returns>How sharp.</returns>
    private float Curve()
    {
        var windows = Enumerable.Range(0, _pullX.Length).Where(n => n % _grid.Nodes % CurveNodes == 0 && n / _grid.Nodes % CurveNodes == 0)
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

        var (pullX, pullY) = best.Pulls(_grid);
        _curved = _grid.Bent(pullX, pullY);
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
            return windows.Sum(w => Contrast(w.Modules, w.Node, LocalPull.Of(x, y, _grid.Nodes, w.Node), out _));
        }
    }

    /// <summary>Where the pulls of solved nodes nearby point.</summary>
    /// <param name="reach">How far they may be, in nodes.</param>
    private LocalPull Expected(int node, int reach)
    {
        var (column, row) = (node % _grid.Nodes, node / _grid.Nodes);
        Span<(Point Place, Point Pull, float Weight)> near = stackalloc (Point, Point, float)[((2 * reach) + 1) * ((2 * reach) + 1)];
        var count = 0;
        for (var y = Math.Max(0, row - reach); y <= Math.Min(_grid.Nodes - 1, row + reach); y++)
        {
            for (var x = Math.Max(0, column - reach); x <= Math.Min(_grid.Nodes - 1, column + reach); x++)
            {
                var i = (y * _grid.Nodes) + x;
                if (_solved[i])
                {
                    var (u, v) = Place(i);
                    var (dx, dy) = (x - column, y - row);
                    var weight = MathF.Pow(_clarity[i], 4) / (1 + (dx * dx) + (dy * dy));
                    near[count++] = (new(dx * ModuleGrid.Spacing, dy * ModuleGrid.Spacing), new Point(_pullX[i], _pullY[i]) - _curved.PullAt(u, v), weight);
                }
            }
        }

        var at = Place(node);
        return CurveAt(at.X, at.Y) + LocalPull.Through(near[..count]);
    }

    private Point Place(int node) => new(node % _grid.Nodes * ModuleGrid.Spacing, node / _grid.Nodes * ModuleGrid.Spacing);

    /// <summary>Where the modules around a node are sharpest, near a place.</summary>
    /// <param name="steps">In modules, each around the best place of the one before.</param>
    /// <param name="reach">Steps tried to each side, of the first.</param>
    private (LocalPull Pull, float Clarity) Settled(int node, LocalPull expected, ReadOnlySpan<float> steps, int reach)
    {
        var modules = Around(node);
        var best = expected;
        var most = Contrast(modules, node, best, out var clarity);
        foreach (var step in steps)
        {
            var from = best.Middle;
            for (var i = 0; i < ((2 * reach) + 1) * ((2 * reach) + 1); i++)
            {
                var tried = expected with { Middle = from + new Point(((i % ((2 * reach) + 1)) - reach) * step, ((i / ((2 * reach) + 1)) - reach) * step) };
                // Going far from where the neighbors point costs something.
                var away = tried.Middle - expected.Middle;
                var contrast = Contrast(modules, node, tried, out var clear) * (1 - (0.12f * away.Dot(away)));
                if (contrast > most)
                {
                    (best, most, clarity) = (tried, contrast, clear);
                }
            }

            reach = 1;
        }

        return (best, clarity);
    }

    private List<(float U, float V, sbyte Known)> Around(int node)
    {
        var (u, v) = Place(node);
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

    /// <param name="clarity">How nearly all modules are as dark or as light as one another: about 1 where they are, less between them.</param>
    private float Contrast(List<(float U, float V, sbyte Known)> modules, int node, LocalPull pull, out float clarity)
    {
        var (u, v) = Place(node);
        // In so small a window a plane in perspective is nearly one without.
        var (middleU, middleV) = (u + pull.Middle.X, v + pull.Middle.Y);
        var at = _grid.OnPlane(middleU, middleV);
        var right = (_grid.OnPlane(middleU + 1, middleV) - _grid.OnPlane(middleU - 1, middleV)) * 0.5f;
        var below = (_grid.OnPlane(middleU, middleV + 1) - _grid.OnPlane(middleU, middleV - 1)) * 0.5f;
        var (across, down) = ((right * (1 + pull.Across.X)) + (below * pull.Across.Y), (right * pull.Down.X) + (below * (1 + pull.Down.Y)));
        Span<float> light = stackalloc float[modules.Count];
        var sum = 0f;
        for (var i = 0; i < light.Length; i++)
        {
            light[i] = _picture.At(at + (across * (modules[i].U - u)) + (down * (modules[i].V - v)));
            sum += light[i];
        }

        Looks += light.Length;
        var (mean, contrast, squares) = (sum / light.Length, 0f, 1f);
        for (var i = 0; i < light.Length; i++)
        {
            var from = light[i] - mean;
            contrast += modules[i].Known == 0 ? Math.Abs(from) : -1.5f * from * modules[i].Known;
            squares += from * from;
        }

        clarity = contrast / MathF.Sqrt(squares * light.Length);
        return contrast;
    }
}
