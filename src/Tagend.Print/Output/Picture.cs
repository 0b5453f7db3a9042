using SkiaSharp;

namespace Tagend.Output;

/// <summary>A picture to be scaled into a place, such as a shop's logo.</summary>
public abstract class Picture
{
    /// <summary>In the picture's own measure.</summary>
    public abstract float Width { get; }

    /// <summary>In the picture's own measure.</summary>
    public abstract float Height { get; }

    internal abstract void Draw(SKCanvas canvas, SKRect place);
}
