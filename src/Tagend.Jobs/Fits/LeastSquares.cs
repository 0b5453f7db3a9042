namespace Tagend.Fits;

/// <summary>What least squares finds for y = a·u + b·v, no constant.</summary>
/// <param name="VarianceA">Of <paramref name="A"/>; so for the others.</param>
/// <param name="Scatter">Standard deviation of one y about the fit.</param>
/// <param name="Leverages">Share of each y that is its own fitted value.</param>
internal sealed record LeastSquaresFit(
    double A, double B, double VarianceA, double Covariance, double VarianceB, double Scatter, IReadOnlyList<double> Leverages);

/// <summary>Ordinary least squares by the normal equations, for one or two unknowns.</summary>
internal static class LeastSquares
{
    /// <summary>y = b·v: the unknown a is held at zero.</summary>
    /// <param name="points">Two at least; their u does not count.</param>
    public static LeastSquaresFit One(IReadOnlyList<(double U, double V, double Y)> points)
    {
        var vv = points.Sum(p => p.V * p.V);
        var b = points.Sum(p => p.V * p.Y) / vv;
        var variance = points.Sum(p => Square(p.Y - (b * p.V))) / (points.Count - 1);
        return new LeastSquaresFit(0, b, 0, 0, variance / vv, Math.Sqrt(variance), [.. points.Select(p => p.V * p.V / vv)]);
    }

    /// <summary>y = a·u + b·v.</summary>
    /// <param name="points">Three at least, whose u and v are not all in one proportion.</param>
    public static LeastSquaresFit Two(IReadOnlyList<(double U, double V, double Y)> points)
    {
        var (uu, uv, vv) = (points.Sum(p => p.U * p.U), points.Sum(p => p.U * p.V), points.Sum(p => p.V * p.V));
        var (uy, vy) = (points.Sum(p => p.U * p.Y), points.Sum(p => p.V * p.Y));
        var determinant = (uu * vv) - (uv * uv);
        var a = ((vv * uy) - (uv * vy)) / determinant;
        var b = ((uu * vy) - (uv * uy)) / determinant;
        var variance = points.Sum(p => Square(p.Y - (a * p.U) - (b * p.V))) / (points.Count - 2);
        return new LeastSquaresFit(
            a,
            b,
            variance * vv / determinant,
            -variance * uv / determinant,
            variance * uu / determinant,
            Math.Sqrt(variance),
            [.. points.Select(p => ((vv * p.U * p.U) - (2 * uv * p.U * p.V) + (uu * p.V * p.V)) / determinant)]);
    }

    private static double Square(double x) => x * x;
}
