using SkiaSharp;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A picture of dots. Held as long as the program runs, so that a PDF has it once.</summary>
public sealed class DotPicture : Picture
{
    private DotPicture(SKImage image) => Image = image;

    public override float Width => Image.Width;

    public override float Height => Image.Height;

    internal SKImage Image { get; }

    /// <param name="file">What the file holds.</param>
    /// <exception cref="TagendException">It is no picture, or only a part of one.</exception>
    public static DotPicture Read(string path, byte[] file)
    {
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec is null)
        {
            throw Damaged();
        }

        using var bitmap = new SKBitmap(codec.Info.WithColorType(SKColorType.Rgba8888).WithAlphaType(SKAlphaType.Unpremul));
        if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) != SKCodecResult.Success)
        {
            throw Damaged();
        }

        bitmap.SetImmutable();
        return new DotPicture(SKImage.FromBitmap(bitmap));

        TagendException Damaged() => new($"{path}: the picture is damaged; export it as PNG again");
    }

    internal override void Draw(SKCanvas canvas, SKRect place) =>
        canvas.DrawImage(Image, place, new SKSamplingOptions(SKCubicResampler.Mitchell));
}
