namespace Tagend.Qr.Read;

/// <summary>The pull at a place of a bent grid, and how it changes around it.</summary>
/// <param name="Middle">In modules.</param>
/// <param name="Across">Its change a module to the right.</param>
/// <param name="Down">Its change a module down.</param>
internal readonly record struct LocalPull(Point Middle, Point Across, Point Down)
{
    public const int Numbers = 6;

    /// <summary>Of slopes against places, in least squares: few neighbors cannot throw them.</summary>
    private const double Hold = 0.1;

    public static LocalPull operator +(LocalPull a, LocalPull b) => new(a.Middle + b.Middle, a.Across + b.Across, a.Down + b.Down);

    /// <summary>The pull so many modules away.</summary>
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

    /// <summary>At the node of a net: by the nodes beside it.</summary>
    /// <param name="pullX">Of each node, in modules.</param>
    /// <param name="pullY">Of each node, in modules.</param>
    /// <param name="nodes">A side.</param>
    public static LocalPull Of(float[] pullX, float[] pullY, int nodes, int node)
    {
        var (column, row) = (node % nodes, node / nodes);
        var (left, right) = (column > 0 ? node - 1 : node, column < nodes - 1 ? node + 1 : node);
        var (up, down) = (row > 0 ? node - nodes : node, row < nodes - 1 ? node + nodes : node);
        return new(At(node), (At(right) - At(left)) * (1f / ((right - left) * ModuleGrid.Spacing)), (At(down) - At(up)) * (1f / ((down - up) / nodes * ModuleGrid.Spacing)));

        Point At(int i) => new(pullX[i], pullY[i]);
    }

    /// <summary>The plane nearest to pulls nearby, by least squares.</summary>
    /// <param name="near">How far away each is, in modules; its pull; and how much it counts.</param>
    public static LocalPull Through(ReadOnlySpan<(Point Place, Point Pull, float Weight)> near)
    {
        double n = 1e-6, sx = 0, sy = 0, sxx = 0, sxy = 0, syy = 0, px = 0, py = 0, pxx = 0, pxy = 0, pyx = 0, pyy = 0;
        foreach (var (place, pull, w) in near)
        {
            n += w;
            sx += w * place.X;
            sy += w * place.Y;
            sxx += w * ((place.X * place.X) + Hold);
            sxy += w * place.X * place.Y;
            syy += w * ((place.Y * place.Y) + Hold);
            px += w * pull.X;
            py += w * pull.Y;
            pxx += w * place.X * pull.X;
            pxy += w * place.Y * pull.X;
            pyx += w * place.X * pull.Y;
            pyy += w * place.Y * pull.Y;
        }

        // Cramer's rule.
        var minor = (sxx * syy) - (sxy * sxy);
        var det = (n * minor) - (sx * ((sx * syy) - (sxy * sy))) + (sy * ((sx * sxy) - (sxx * sy)));
        if (Math.Abs(det) < 1e-9)
        {
            return default;
        }

        return new(new(Value(px, pxx, pxy), Value(py, pyx, pyy)), new(Across(px, pxx, pxy), Across(py, pyx, pyy)), new(Down(px, pxx, pxy), Down(py, pyx, pyy)));

        float Value(double p, double q, double r) => (float)(((p * minor) - (sx * ((q * syy) - (sxy * r))) + (sy * ((q * sxy) - (sxx * r)))) / det);

        float Across(double p, double q, double r) => (float)(((n * ((q * syy) - (sxy * r))) - (p * ((sx * syy) - (sxy * sy))) + (sy * ((sx * r) - (q * sy)))) / det);

        float Down(double p, double q, double r) => (float)(((n * ((sxx * r) - (q * sxy))) - (sx * ((sx * r) - (q * sy))) + (p * ((sx * sxy) - (sxx * sy)))) / det);
    }
}
