using SkiaSharp;
using Tagend.Catalog;
using Tagend.Qr.Encode;

namespace Tagend.Output;

/// <summary>Draws inks on a Skia canvas, for pictures.</summary>
/// <remarks>In whole steps (<see cref="Points.Step"/>), lines and boxes in quarters of them, as <see cref="PdfPen"/> does.</remarks>
internal sealed class Pen : IDisposable
{
    /// <summary>So that all places of bars are whole numbers too.</summary>
    internal const int PartsOfSquare = 50;

    /// <summary>How far bars stay clear of light: a fiftieth of a square, more than a rounding, less than can be seen.</summary>
    private const int Trace = 1;

    private readonly SKCanvas _canvas;
    private readonly Typefaces _typefaces;
    private readonly SKPaint _paint;

    /// <param name="canvas">Measured in points; in steps from now on.</param>
    /// <param name="smooth">Edges in shades of gray; false for printers that only know black.</param>
    public Pen(SKCanvas canvas, Typefaces typefaces, bool smooth)
    {
        (_canvas, _typefaces) = (canvas, typefaces);
        _paint = new SKPaint { IsAntialias = smooth };
        canvas.Scale(Points.Step);
    }

    public void Draw(IEnumerable<Ink> inks)
    {
        foreach (var ink in inks)
        {
            Draw(ink);
        }
    }

    public void Dispose() => _paint.Dispose();

    /// <summary>In parts of a square.</summary>
    internal static SKRect PlaceOf(Bar bar)
    {
        var place = SKRect.Create(bar.X * PartsOfSquare, bar.Y * PartsOfSquare, bar.Width * PartsOfSquare, bar.Height * PartsOfSquare);
        place.Inflate(-Trace, -Trace);
        return place;
    }

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
                    FillAndStroke(path, shape.Fill, shape.Stroke);
                }

                break;
            case OvalInk oval:
                using (var path = PathOf(oval))
                {
                    FillAndStroke(path, oval.Fill, oval.Stroke);
                }

                break;
            case BarsInk bars:
                Draw(bars);
                break;
            case PictureInk picture:
                picture.Picture.Draw(_canvas, Steps(picture.X, picture.Y, picture.Width, picture.Height));
                break;
            case PartStart or PartEnd:
                break;
            default:
                throw new InvalidOperationException($"no way to draw {ink.GetType().Name}");
        }
    }

    private void Draw(TextInk ink)
    {
        var text = _typefaces.Fonts[ink.Style.Weight].Shape(ink.Text);
        if (text.Glyphs.Length == 0)
        {
            return;
        }

        Use(SKPaintStyle.Fill, ink.Style.Gray, ink.Style.Color);
        var font = _typefaces.FontOf(ink.Style.Weight, ink.Style.Size / Points.Step);
        using var builder = new SKTextBlobBuilder();
        builder.AddHorizontalRun(text.Glyphs, font, GlyphPlaces(text, ink.Style), 0);
        using var blob = builder.Build();
        _canvas.DrawText(blob, Points.InSteps(ink.X), Points.InSteps(ink.Baseline), _paint);
    }

    /// <summary>Where glyphs are drawn, in steps from the text's start.</summary>
    private float[] GlyphPlaces(ShapedText text, TextStyle style)
    {
        var unit = style.Size / Points.Step / _typefaces.Fonts[style.Weight].UnitsPerEm;
        return [.. text.Places.Select((place, i) => (place * unit) + (i * style.Tracking / Points.Step))];
    }

    private void Draw(LineInk line)
    {
        UseStroke(line.Width, line.Gray, line.Color);
        var gap = Points.InSteps(line.Dash);
        using var dash = gap > 0 ? SKPathEffect.CreateDash([gap, gap], 0) : null;
        _paint.PathEffect = dash;
        _canvas.DrawLine(
            Points.InFineSteps(line.X1), Points.InFineSteps(line.Y1), Points.InFineSteps(line.X2), Points.InFineSteps(line.Y2), _paint);
        _paint.PathEffect = null;
    }

    /// <remarks>Filled to the middle of its line: the same numbers twice take little room in a file.</remarks>
    private void Draw(BoxInk box)
    {
        var inset = box.Stroke / 2;
        var edge = new SKRect(
            Points.InFineSteps(box.X + inset),
            Points.InFineSteps(box.Y + inset),
            Points.InFineSteps(box.X + box.Width - inset),
            Points.InFineSteps(box.Y + box.Height - inset));
        var radius = MathF.Max(0, box.Radius - inset);
        if (box.Fill is { } fill)
        {
            Use(SKPaintStyle.Fill, fill);
            Draw(edge, radius);
        }

        if (box.Stroke > 0)
        {
            UseStroke(box.Stroke, box.Gray);
            Draw(edge, radius);
        }
    }

    private void Draw(SKRect edge, float radius)
    {
        if (radius == 0)
        {
            _canvas.DrawRect(edge, _paint);
            return;
        }

        using var path = RoundPath.Of(edge, radius / Points.Step, radius / Points.Step, isWhole: true);
        _canvas.DrawPath(path, _paint);
    }

    /// <remarks>
    /// Bars stay clear of light: printers paint every dot that a shape touches (ISO 32000-1, 10.6.5), and would add a row of
    /// dots to squares whose edges lie on dots but for a rounding.
    /// </remarks>
    private void Draw(BarsInk ink)
    {
        Use(SKPaintStyle.Fill, 0);
        _canvas.Save();
        _canvas.Translate(ink.X / Points.Step, ink.Y / Points.Step);
        _canvas.Scale(ink.Unit / Points.Step / PartsOfSquare);
        foreach (var bar in ink.Bars)
        {
            _canvas.DrawRect(PlaceOf(bar), _paint);
        }

        _canvas.Restore();
    }

    private void FillAndStroke(SKPath path, byte? fill, float stroke)
    {
        if (fill is { } gray)
        {
            Use(SKPaintStyle.Fill, gray);
            _canvas.DrawPath(path, _paint);
        }

        if (stroke > 0)
        {
            UseStroke(stroke, 0);
            _canvas.DrawPath(path, _paint);
        }
    }

    private void UseStroke(float width, byte gray, InkColor? color = null)
    {
        Use(SKPaintStyle.Stroke, gray, color);
        _paint.StrokeWidth = width / Points.Step;
    }

    private void Use(SKPaintStyle style, byte gray, InkColor? color = null)
    {
        var (red, green, blue) = color ?? new InkColor(gray, gray, gray);
        _paint.Style = style;
        _paint.Color = new SKColor(red, green, blue);
    }

    /// <summary>The steps nearest to a rectangle's edges.</summary>
    private static SKRect Steps(float x, float y, float width, float height) =>
        new(Points.InSteps(x), Points.InSteps(y), Points.InSteps(x + width), Points.InSteps(y + height));

    private static SKPath PathOf(OvalInk oval)
    {
        var edge = Steps(oval.CenterX - oval.RadiusX, oval.CenterY - oval.RadiusY, 2 * oval.RadiusX, 2 * oval.RadiusY);
        return RoundPath.Of(edge, edge.Width / 2, edge.Height / 2, isWhole: true);
    }

    private static SKPath PathOf(ShapeInk shape)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. shape.Corners.Select(c => new SKPoint(Points.InSteps(c.X), Points.InSteps(c.Y)))], close: true);
        return builder.Detach();
    }
}
