using SkiaSharp;

namespace Tagend.Output;

/// <summary>Rectangles with round corners, and ellipses.</summary>
internal static class RoundPath
{
    /// <summary>Of the radius, from a corner's tangent points to the handles of its curve: a quarter circle to 0.03 %.</summary>
    public const float Handle = 0.5522848f;

    /// <summary>A rectangle with elliptic corners, each one cubic curve: Skia would cut its own arcs into dozens.</summary>
    /// <param name="isWhole">All of its places are to be whole numbers.</param>
    public static SKPath Of(SKRect edge, float radiusX, float radiusY, bool isWhole = false)
    {
        var (handleX, handleY) = (radiusX * (1 - Handle), radiusY * (1 - Handle));
        if (isWhole)
        {
            (radiusX, radiusY, handleX, handleY) = (MathF.Round(radiusX), MathF.Round(radiusY), MathF.Round(handleX), MathF.Round(handleY));
        }

        var (left, top, right, bottom) = (edge.Left, edge.Top, edge.Right, edge.Bottom);
        using var builder = new SKPathBuilder();
        builder.MoveTo(left + radiusX, top);
        builder.LineTo(right - radiusX, top);
        builder.CubicTo(right - handleX, top, right, top + handleY, right, top + radiusY);
        builder.LineTo(right, bottom - radiusY);
        builder.CubicTo(right, bottom - handleY, right - handleX, bottom, right - radiusX, bottom);
        builder.LineTo(left + radiusX, bottom);
        builder.CubicTo(left + handleX, bottom, left, bottom - handleY, left, bottom - radiusY);
        builder.LineTo(left, top + radiusY);
        builder.CubicTo(left, top + handleY, left + handleX, top, left + radiusX, top);
        builder.Close();
        return builder.Detach();
    }
}
