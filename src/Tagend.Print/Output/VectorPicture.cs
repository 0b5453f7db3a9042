using SkiaSharp;

namespace Tagend.Output;

/// <summary>A picture of filled and stroked outlines: sharp at every size.</summary>
/// <param name="drawing">What is drawn; never disposed, for pages hold it as long as the program runs.</param>
internal sealed class VectorPicture(SKPicture drawing) : Picture
{
    private readonly SKRect _box = drawing.CullRect;

    public override float Width => _box.Width;

    public override float Height => _box.Height;

    internal override void Draw(SKCanvas canvas, SKRect place)
    {
        canvas.Save();
        canvas.Translate(place.Left, place.Top);
        canvas.Scale(place.Width / _box.Width, place.Height / _box.Height);
        canvas.Translate(-_box.Left, -_box.Top);
        canvas.DrawPicture(drawing);
        canvas.Restore();
    }
}
