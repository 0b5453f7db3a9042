using SkiaSharp;
using Tagend.Catalog;

namespace Tagend.Output;

/// <summary>Draws inks on a Skia canvas, document and picture alike.</summary>
/// <param name="smooth">Edges in shades of gray; false for printers that only know black.</param>
internal sealed class Pen(SKCanvas canvas, Typefaces typefaces, bool smooth) : IDisposable
{
    private readonly SKPaint _paint = new() { IsAntialias = smooth };

    public void Draw(IEnumerable<Ink> inks)
    {
        foreach (var ink in inks)
        {
            Draw(ink);
        }
    }

    public void Dispose() => _paint.Dispose();

    private void Draw(Ink ink)
    {
        switch (ink)
        {
            case TextInk text:
                Draw(text);
                break;
            case LineInk line:
                Draw(line);
                break;
            case BoxInk box:
                Draw(box);
                break;
            case ShapeInk shape:
                using (var path = PathOf(shape))
                {
                    FillAndStroke(shape.Fill, shape.Stroke, paint => canvas.DrawPath(path, paint));
                }

                break;
            case OvalInk oval:
                using (var path = RoundPath(
                    SKRect.Create(oval.CenterX - oval.RadiusX, oval.CenterY - oval.RadiusY, 2 * oval.RadiusX, 2 * oval.RadiusY),
                    oval.RadiusX,
                    oval.RadiusY))
                {
                    FillAndStroke(oval.Fill, oval.Stroke, paint => canvas.DrawPath(path, paint));
                }

                break;
            case OutlineInk outline:
                Draw(outline);
                break;
            case PictureInk picture:
                picture.Picture.Draw(canvas, SKRect.Create(picture.X, picture.Y, picture.Width, picture.Height));
                break;
            default:
                throw new InvalidOperationException($"no way to draw {ink.GetType().Name}");
        }
    }

    private void Draw(TextInk ink)
    {
        using var font = Face.FontOf(typefaces[ink.Style.Weight], ink.Style.Size, smooth);
        Use(SKPaintStyle.Fill, ink.Style.Gray, ink.Style.Color);
        var text = typefaces.Fonts[ink.Style.Weight].Shape(ink.Text);
        if (text.Glyphs.Length == 0)
        {
            return;
        }

        using var builder = new SKTextBlobBuilder();
        builder.AddHorizontalRun(typefaces.NumbersOf(text, ink.Style.Weight), font, GlyphPlaces(text, ink.Style), 0);
        using var blob = builder.Build();
        canvas.DrawText(blob, Points.OnStep(ink.X), Points.OnStep(ink.Baseline), _paint);
    }

    /// <summary>Where glyphs are drawn, in points from the text's start.</summary>
    /// <remarks>
    /// Skia writes each glyph for itself that does not stand exactly where the one before it ends, with all its decimals.
    /// So a kern too small to see goes to the next that is not, and a kerned glyph starts on a short number.
    /// </remarks>
    private float[] GlyphPlaces(ShapedText text, TextStyle style)
    {
        var unit = style.Size / typefaces.Fonts[style.Weight].UnitsPerEm;
        var places = new float[text.Glyphs.Length];
        var (start, along) = (0f, 0f);
        for (var i = 0; i < places.Length; i++)
        {
            var place = (text.Places[i] * unit) + (i * style.Tracking);
            if (MathF.Abs(place - start - along) > Points.Step / 2)
            {
                (start, along) = (Points.OnStep(place), 0);
            }

            places[i] = start + along;
            along += text.Advances[i] * unit;
        }

        return places;
    }

    private void Draw(LineInk line)
    {
        Use(SKPaintStyle.Stroke, line.Gray, line.Color);
        _paint.StrokeWidth = line.Width;
        using var dash = line.Dash > 0 ? SKPathEffect.CreateDash([line.Dash, line.Dash], 0) : null;
        _paint.PathEffect = dash;
        canvas.DrawLine(line.X1, line.Y1, line.X2, line.Y2, _paint);
        _paint.PathEffect = null;
    }

    private void Draw(BoxInk box)
    {
        var edge = SKRect.Create(box.X, box.Y, box.Width, box.Height);
        if (box.Fill is { } fill)
        {
            Use(SKPaintStyle.Fill, fill);
            Draw(edge, box.Radius);
        }

        if (box.Stroke > 0)
        {
            Use(SKPaintStyle.Stroke, box.Gray);
            _paint.StrokeWidth = box.Stroke;
            edge.Inflate(-box.Stroke / 2, -box.Stroke / 2);
            Draw(edge, box.Radius);
        }
    }

    private void Draw(SKRect edge, float radius)
    {
        if (radius == 0)
        {
            canvas.DrawRect(edge, _paint);
            return;
        }

        using var path = RoundPath(edge, radius, radius);
        canvas.DrawPath(path, _paint);
    }

    private void Draw(OutlineInk ink)
    {
        Use(SKPaintStyle.Fill, 0);
        using var builder = new SKPathBuilder();
        foreach (var outline in ink.Outlines)
        {
            builder.AddPoly([.. outline.Select(c => new SKPoint(c.X, c.Y))], close: false); // filling closes it, and a file has no last line back
        }

        using var path = builder.Detach();
        canvas.Save();
        canvas.Translate(ink.X, ink.Y);
        canvas.Scale(ink.Unit);
        canvas.DrawPath(path, _paint);
        canvas.Restore();
    }

    private void FillAndStroke(byte? fill, float stroke, Action<SKPaint> draw)
    {
        if (fill is { } gray)
        {
            Use(SKPaintStyle.Fill, gray);
            draw(_paint);
        }

        if (stroke > 0)
        {
            Use(SKPaintStyle.Stroke, 0);
            _paint.StrokeWidth = stroke;
            draw(_paint);
        }
    }

    private void Use(SKPaintStyle style, byte gray, InkColor? color = null)
    {
        var (red, green, blue) = color ?? new InkColor(gray, gray, gray);
        _paint.Style = style;
        _paint.Color = new SKColor(red, green, blue);
    }

    /// <summary>A rectangle with elliptic corners, each one cubic curve: Skia would cut its own arcs into dozens.</summary>
    internal static SKPath RoundPath(SKRect edge, float radiusX, float radiusY)
    {
        // Of the radius, from a corner's tangent points: a quarter circle to 0.03 %.
        const float Handle = 0.5522848f;
        var (handleX, handleY) = (radiusX * (1 - Handle), radiusY * (1 - Handle));
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

    private static SKPath PathOf(ShapeInk shape)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. shape.Corners.Select(c => new SKPoint(Points.OnStep(c.X), Points.OnStep(c.Y)))], close: true);
        return builder.Detach();
    }
}
