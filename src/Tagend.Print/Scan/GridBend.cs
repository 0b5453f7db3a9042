namespace Tagend.Scan;

/// <summary>Pulls a grid's nodes to where modules are sharpest: for labels that are curved or crumpled.</summary>
/// <remarks>
/// A module seen at its middle is darker or lighter than one seen at its edge, whatever it holds; so the right place of a
/// node is where the modules around it differ most. It goes from the finder patterns outwards, each node starting from
/// where its solved neighbors point.
/// </remarks>
internal sealed class GridBend
{
    /// <summary>Modules around a node that are looked at: up to this far.</summary>
    private const float Reach = 3.6f;

    private readonly GrayPicture _picture;
    private readonly ModuleGrid _grid;
    private readonly SymbolLayout _layout;
    private readonly float[] _pullX;
    private readonly float[] _pullY;
    private readonly bool[] _solved;

    private GridBend(GrayPicture picture, ModuleGrid grid)
    {
        (_picture, _grid, _layout) = (picture, grid, SymbolLayout.Of(grid.Size));
        var nodes = grid.Nodes * grid.Nodes;
        (_pullX, _pullY, _solved) = (new float[nodes], new float[nodes], new bool[nodes]);
    }

    public long Looks { get; private set; }

    /// <param name="picture">In which a module of the grid is about 3 to 6 pixels.</param>
    public static ModuleGrid Fit(GrayPicture picture, ModuleGrid grid, out long looks)
    {
        var bend = new GridBend(picture, grid);
        var order = Enumerable.Range(0, grid.Nodes * grid.Nodes).OrderBy(bend.FromFinders).ToList();
        foreach (var node in order)
        {
            var (x, y) = bend.Expected(node, 2);
            bend.Settle(node, x, y, [0.3f, 0.15f, 0.08f], 2);
        }

        for (var round = 0; round < 2; round++)
        {
            foreach (var node in order)
            {
                var (x, y) = bend.Expected(node, 1);
                bend.Settle(node, x, y, [0.15f, 0.08f], 1);
            }
        }

        looks = bend.Looks;
        return grid.Bent(bend._pullX, bend._pullY);
    }

    private float FromFinders(int node)
    {
        var (u, v) = (node % _grid.Nodes * ModuleGrid.Spacing, node / _grid.Nodes * ModuleGrid.Spacing);
        var far = _grid.Size - ModuleGrid.FinderInset;
        float To(float x, float y) => ((u - x) * (u - x)) + ((v - y) * (v - y));
        return Math.Min(To(ModuleGrid.FinderInset, ModuleGrid.FinderInset), Math.Min(To(far, ModuleGrid.FinderInset), To(ModuleGrid.FinderInset, far)));
    }

    /// <summary>A plane through the pulls of solved nodes nearby, at this node.</summary>
    private (float X, float Y) Expected(int node, int reach)
    {
        var (column, row) = (node % _grid.Nodes, node / _grid.Nodes);
        // Weighted least squares of p = a + b·dx + c·dy; slopes are held back a little, so few neighbors cannot throw it.
        double n = 1e-6, sx = 0, sy = 0, sxx = 0.6, sxy = 0, syy = 0.6, px = 0, py = 0, pxx = 0, pxy = 0, pyx = 0, pyy = 0;
        for (var dy = -reach; dy <= reach; dy++)
        {
            for (var dx = -reach; dx <= reach; dx++)
            {
                var (x, y) = (column + dx, row + dy);
                if (x < 0 || y < 0 || x >= _grid.Nodes || y >= _grid.Nodes || !_solved[(y * _grid.Nodes) + x])
                {
                    continue;
                }

                var i = (y * _grid.Nodes) + x;
                var w = 1.0 / (1 + (dx * dx) + (dy * dy));
                n += w;
                sx += w * dx;
                sy += w * dy;
                sxx += w * dx * dx;
                sxy += w * dx * dy;
                syy += w * dy * dy;
                px += w * _pullX[i];
                py += w * _pullY[i];
                pxx += w * dx * _pullX[i];
                pxy += w * dy * _pullX[i];
                pyx += w * dx * _pullY[i];
                pyy += w * dy * _pullY[i];
            }
        }

        // Cramer's rule for a.
        var minor = (sxx * syy) - (sxy * sxy);
        var det = (n * minor) - (sx * ((sx * syy) - (sxy * sy))) + (sy * ((sx * sxy) - (sxx * sy)));
        double At(double p, double q, double r) =>
            ((p * minor) - (sx * ((q * syy) - (sxy * r))) + (sy * ((q * sxy) - (sxx * r)))) / det;
        return Math.Abs(det) < 1e-9 ? (0, 0) : ((float)At(px, pxx, pxy), (float)At(py, pyx, pyy));
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
                    modules.Add((x + 0.5f, y + 0.5f, inside ? _layout.Known[(y * _grid.Size) + x] : (sbyte)-1));
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
            var (px, py) = _grid.OnPlane(modules[i].U + pullX, modules[i].V + pullY);
            light[i] = _picture.At(px, py);
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
}
