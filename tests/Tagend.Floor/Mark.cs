using SkiaSharp;

namespace Tagend.Floor;

/// <summary>Something on a page.</summary>
internal abstract record Mark
{
    public abstract void Draw(SKCanvas canvas, SKPaint paint, Faces faces);

    protected static void Fill(SKPaint paint, SKColor color)
    {
        paint.Style = SKPaintStyle.Fill;
        paint.Color = color;
    }

    protected static void Stroke(SKPaint paint, SKColor color, float width)
    {
        paint.Style = SKPaintStyle.Stroke;
        paint.Color = color;
        paint.StrokeWidth = width;
    }
}

/// <param name="Places">Of each character from the first; empty where they follow from the font.</param>
internal sealed record Text(float X, float Baseline, string Weight, float Size, SKColor Color, float[] Places, string Characters) : Mark
{
    public override void Draw(SKCanvas canvas, SKPaint paint, Faces faces)
    {
        Fill(paint, Color);
        var font = faces[Weight, Size];
        if (Places.Length == 0)
        {
            canvas.DrawText(Characters, X, Baseline, SKTextAlign.Left, font, paint);
            return;
        }

        using var blob = SKTextBlob.CreateHorizontal(Characters, font, Places, Baseline);
        canvas.DrawText(blob, X, 0, paint);
    }
}

internal sealed record Line(SKPoint From, SKPoint To, float Width, SKColor Color, float Dash) : Mark
{
    public override void Draw(SKCanvas canvas, SKPaint paint, Faces faces)
    {
        Stroke(paint, Color, Width);
        using var dash = Dash > 0 ? SKPathEffect.CreateDash([Dash, Dash], 0) : null;
        paint.PathEffect = dash;
        canvas.DrawLine(From, To, paint);
        paint.PathEffect = null;
    }
}

/// <summary>Filled, stroked along its edge, or both. The path is made for each page anew: no two pages have the same.</summary>
internal sealed record Shape(Func<SKPath> Path, float Width, SKColor Color, SKColor? Inside) : Mark
{
    public override void Draw(SKCanvas canvas, SKPaint paint, Faces faces)
    {
        using var path = Path();
        if (Inside is { } inside)
        {
            Fill(paint, inside);
            canvas.DrawPath(path, paint);
        }

        if (Width > 0)
        {
            Stroke(paint, Color, Width);
            canvas.DrawPath(path, paint);
        }
    }
}

/// <summary>Black rectangles, in units of their own.</summary>
internal sealed record Bars(float X, float Y, float Unit, SKRect[] Rectangles) : Mark
{
    public override void Draw(SKCanvas canvas, SKPaint paint, Faces faces)
    {
        Fill(paint, SKColors.Black);
        canvas.Save();
        canvas.Translate(X, Y);
        canvas.Scale(Unit);
        foreach (var rectangle in Rectangles)
        {
            canvas.DrawRect(rectangle, paint);
        }

        canvas.Restore();
    }
}
