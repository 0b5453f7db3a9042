using SkiaSharp;

namespace Tagend.Logos;

/// <summary>How shapes are painted; an element has what it does not say itself from the one around it: SVG 1.1, 11.</summary>
internal sealed record SvgStyle
{
    public static SvgStyle Initial { get; } = new();

    public SKPathFillType FillRule { get; private init; } = SKPathFillType.Winding;

    private SKColor? Fill { get; init; } = SKColors.Black;

    private float FillOpacity { get; init; } = 1;

    private SKColor? Stroke { get; init; }

    private float StrokeOpacity { get; init; } = 1;

    private float StrokeWidth { get; init; } = 1;

    private SKStrokeCap Cap { get; init; } = SKStrokeCap.Butt;

    private SKStrokeJoin Join { get; init; } = SKStrokeJoin.Miter;

    private float Miter { get; init; } = 4;

    public SvgStyle Of(SvgElement element) => this with
    {
        FillRule = element.Choice("fill-rule", FillRule, ("nonzero", SKPathFillType.Winding), ("evenodd", SKPathFillType.EvenOdd)),
        Fill = SvgColor.Of(element, "fill", Fill),
        FillOpacity = element.Share("fill-opacity", FillOpacity),
        Stroke = SvgColor.Of(element, "stroke", Stroke),
        StrokeOpacity = element.Share("stroke-opacity", StrokeOpacity),
        StrokeWidth = element.LengthProperty("stroke-width", StrokeWidth),
        Cap = element.Choice("stroke-linecap", Cap, ("butt", SKStrokeCap.Butt), ("round", SKStrokeCap.Round), ("square", SKStrokeCap.Square)),
        Join = element.Choice("stroke-linejoin", Join, ("miter", SKStrokeJoin.Miter), ("round", SKStrokeJoin.Round), ("bevel", SKStrokeJoin.Bevel)),
        Miter = element.LengthProperty("stroke-miterlimit", Miter),
    };

    /// <summary>In the order they are drawn: fill, then stroke.</summary>
    public IEnumerable<SKPaint> Paints()
    {
        if (Fill is { } fill)
        {
            yield return new SKPaint { IsAntialias = true, Color = Faded(fill, FillOpacity) };
        }

        if (Stroke is { } stroke && StrokeWidth > 0)
        {
            yield return new SKPaint
            {
                IsAntialias = true,
                Style = SKPaintStyle.Stroke,
                Color = Faded(stroke, StrokeOpacity),
                StrokeWidth = StrokeWidth,
                StrokeCap = Cap,
                StrokeJoin = Join,
                StrokeMiter = Miter,
            };
        }
    }

    private static SKColor Faded(SKColor color, float opacity) => color.WithAlpha((byte)MathF.Round(color.Alpha * opacity));
}
