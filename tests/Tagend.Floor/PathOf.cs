using SkiaSharp;

namespace Tagend.Floor;

/// <summary>How paths are made when a page is drawn.</summary>
internal static class PathOf
{
    /// <summary>Of a quarter circle as one cubic curve, from the middle of its tangents' meeting, in radii.</summary>
    private const float Handle = 1 - 0.5522848f;

    public static Func<SKPath> Polygons(SKPoint[][] polygons) => () =>
    {
        using var builder = new SKPathBuilder();
        foreach (var polygon in polygons)
        {
            builder.AddPoly(polygon, close: true);
        }

        return builder.Detach();
    };

    public static Func<SKPath> Box(SKRect edge, float radius) => radius > 0 ? Rounded(edge, radius, radius) : () =>
    {
        using var builder = new SKPathBuilder();
        builder.AddRect(edge);
        return builder.Detach();
    };

    public static Func<SKPath> Oval(SKRect edge) => Rounded(edge, edge.Width / 2, edge.Height / 2);

    private static Func<SKPath> Rounded(SKRect edge, float radiusX, float radiusY) => () =>
    {
        var (left, top, right, bottom, x, y) = (edge.Left, edge.Top, edge.Right, edge.Bottom, radiusX * Handle, radiusY * Handle);
        using var builder = new SKPathBuilder();
        builder.MoveTo(left + radiusX, top);
        builder.LineTo(right - radiusX, top);
        builder.CubicTo(right - x, top, right, top + y, right, top + radiusY);
        builder.LineTo(right, bottom - radiusY);
        builder.CubicTo(right, bottom - y, right - x, bottom, right - radiusX, bottom);
        builder.LineTo(left + radiusX, bottom);
        builder.CubicTo(left + x, bottom, left, bottom - y, left, bottom - radiusY);
        builder.LineTo(left, top + radiusY);
        builder.CubicTo(left, top + y, left + x, top, left + radiusX, top);
        builder.Close();
        return builder.Detach();
    };
}
