using SkiaSharp;
using Tagend.Output;

namespace Tagend.Logos;

/// <summary>Outlines of SVG's shapes: SVG 1.1, 8 and 9.</summary>
internal static class SvgShape
{
    public static IReadOnlySet<string> Names { get; } =
        new HashSet<string> { "path", "rect", "circle", "ellipse", "line", "polyline", "polygon" };

    /// <summary>Null where nothing is to be drawn, and for a wrong one, which is reported.</summary>
    public static SKPath? PathOf(SvgElement element) => element.Name switch
    {
        "path" => FromData(element),
        "rect" => Rectangle(element),
        "circle" when element.Length("r", 0) is var radius => Oval(element, radius, radius),
        "ellipse" => Oval(element, element.Length("rx", 0), element.Length("ry", 0)),
        "line" => Polygon(
            [element.Length("x1", 0), element.Length("y1", 0), element.Length("x2", 0), element.Length("y2", 0)], close: false),
        _ => FromPoints(element, close: element.Name == "polygon"),
    };

    private static SKPath? FromData(SvgElement element)
    {
        var data = element.Attribute("d") ?? "";
        if (data.Length == 0 || data == "none")
        {
            return null;
        }

        var path = SvgPathData.IsWellFormed(data) ? SKPath.ParseSvgPathData(data) : null;
        if (path is null)
        {
            element.Report("d", Start(data), SvgWording.PathData);
        }

        return path;
    }

    private static SKPath? FromPoints(SvgElement element, bool close)
    {
        var text = element.Attribute("points") ?? "";
        if (SvgNumbers.TryReadAll(text, out var points) && points.Length % 2 == 0)
        {
            return points.Length < 4 ? null : Polygon(points, close);
        }

        element.Report("points", Start(text), SvgWording.Points);
        return null;
    }

    private static SKPath Polygon(float[] points, bool close)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. points.Chunk(2).Select(p => new SKPoint(p[0], p[1]))], close);
        return builder.Detach();
    }

    private static SKPath? Oval(SvgElement element, float radiusX, float radiusY)
    {
        var (x, y) = (element.Length("cx", 0), element.Length("cy", 0));
        return radiusX > 0 && radiusY > 0
            ? RoundPath.Of(new SKRect(x - radiusX, y - radiusY, x + radiusX, y + radiusY), radiusX, radiusY)
            : null;
    }

    /// <remarks>A radius that is not given is the other one, and none is more than half of its side: SVG 1.1, 9.2.</remarks>
    private static SKPath? Rectangle(SvgElement element)
    {
        var edge = SKRect.Create(element.Length("x", 0), element.Length("y", 0), element.Length("width", 0), element.Length("height", 0));
        var (radiusX, radiusY) = (element.Length("rx", float.NaN), element.Length("ry", float.NaN));
        radiusX = float.IsNaN(radiusX) ? radiusY : radiusX;
        radiusY = float.IsNaN(radiusY) ? radiusX : radiusY;
        if (edge.Width <= 0 || edge.Height <= 0)
        {
            return null;
        }

        return radiusX > 0 && radiusY > 0
            ? RoundPath.Of(edge, Math.Min(radiusX, edge.Width / 2), Math.Min(radiusY, edge.Height / 2))
            : Polygon([edge.Left, edge.Top, edge.Right, edge.Top, edge.Right, edge.Bottom, edge.Left, edge.Bottom], close: true);
    }

    private static string Start(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
