using SkiaSharp;

namespace Tagend.Output;

/// <summary>A picture of filled and stroked outlines: sharp at every size. Held as long as the program runs.</summary>
/// <param name="box">The part of the drawing that is the picture.</param>
internal sealed class VectorPicture(SKRect box, VectorGroup drawing) : Picture
{
    public override float Width => box.Width;

    public override float Height => box.Height;

    public SKRect Box => box;

    public VectorGroup Drawing => drawing;

    internal override void Draw(SKCanvas canvas, SKRect place)
    {
        canvas.Save();
        canvas.Translate(place.Left, place.Top);
        canvas.Scale(place.Width / box.Width, place.Height / box.Height);
        canvas.Translate(-box.Left, -box.Top);
        canvas.ClipRect(box);
        drawing.Draw(canvas);
        canvas.Restore();
    }
}

/// <summary>Something in a drawing.</summary>
internal abstract record VectorPart
{
    public abstract void Draw(SKCanvas canvas);
}

/// <summary>Parts with a transform of their own, painted together.</summary>
/// <param name="Opacity">Of all together: 1 hides what is behind them.</param>
internal sealed record VectorGroup(SKMatrix Transform, float Opacity) : VectorPart
{
    public List<VectorPart> Parts { get; } = [];

    public override void Draw(SKCanvas canvas)
    {
        var saved = canvas.Save();
        canvas.Concat(Transform);
        if (Opacity < 1)
        {
            using var paint = new SKPaint { ColorF = new SKColorF(0, 0, 0, Opacity) };
            canvas.SaveLayer(paint);
        }

        foreach (var part in Parts)
        {
            part.Draw(canvas);
        }

        canvas.RestoreToCount(saved);
    }
}

/// <summary>An outline, filled or stroked.</summary>
internal sealed record VectorShape(SKPath Path, SKPaint Paint) : VectorPart
{
    public override void Draw(SKCanvas canvas) => canvas.DrawPath(Path, Paint);
}
