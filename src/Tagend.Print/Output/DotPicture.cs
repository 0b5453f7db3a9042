using SkiaSharp;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A picture of dots. Held as long as the program runs, so that a PDF has it once.</summary>
public sealed class DotPicture : Picture
{
    private readonly SKImage _image;

    private DotPicture(SKImage image) => _image = image;

    public override float Width => _image.Width;

    public override float Height => _image.Height;

    /// <param name="file">What the file holds.</param>
    /// <exception cref="TagendException">It is no picture.</exception>
    public static DotPicture Read(string path, byte[] file)
    {
        using var data = SKData.CreateCopy(file);
        var image = SKImage.FromEncodedData(data)?.ToRasterImage(ensurePixelData: true)
            ?? throw new TagendException($"{path}: the picture is damaged; export it as PNG again");
        return new DotPicture(image);
    }

    internal override void Draw(SKCanvas canvas, SKRect place) =>
        canvas.DrawImage(_image, place, new SKSamplingOptions(SKCubicResampler.Mitchell));
}
