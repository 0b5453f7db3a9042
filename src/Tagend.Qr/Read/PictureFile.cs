using SkiaSharp;
using Tagend.Problems;

namespace Tagend.Qr.Read;

/// <summary>A picture file, decoded to gray and turned upright.</summary>
internal static class PictureFile
{
    /// <summary>What a header may claim, in pixels; the picture is decoded to 4 bytes each.</summary>
    public const long LargestPixels = 100_000_000;

    /// <summary>Larger pictures are decoded at a fraction of their size where the format can: a code seldom needs more.</summary>
    private const long WorkingPixels = 25_000_000;

    /// <summary>Gray pixels, upright, transparent parts white.</summary>
    /// <exception cref="TagendException">Not a file, not a picture, cut short, or claiming to be too large.</exception>
    public static SKBitmap Load(string path)
    {
        using var stream = Open(path);
        using var codec = SKCodec.Create(stream)
            ?? throw new TagendException($"{path} is not a picture that can be read: give a whole PNG, JPEG or WebP file.");

        var pixels = (long)codec.Info.Width * codec.Info.Height;
        if (pixels > LargestPixels)
        {
            throw new TagendException(
                $"{path} is {codec.Info.Width} × {codec.Info.Height} pixels, more than {LargestPixels / 1_000_000} million: "
                + "crop it to the tag, or save it smaller.");
        }

        using var decoded = Decode(codec, pixels, path);
        return Upright(decoded, codec.EncodedOrigin);
    }

    private static FileStream Open(string path)
    {
        if (Directory.Exists(path))
        {
            throw new TagendException($"{path} is a folder: name a picture in it.");
        }

        try
        {
            return File.OpenRead(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new TagendException($"{path} does not exist: check the name.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path} cannot be opened: check that you may read it.", e);
        }
    }

    private static SKBitmap Decode(SKCodec codec, long pixels, string path)
    {
        var size = pixels > WorkingPixels
            ? codec.GetScaledDimensions((float)Math.Sqrt((double)WorkingPixels / pixels))
            : codec.Info.Size;
        var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        var result = codec.GetPixels(bitmap.Info, bitmap.GetPixels());
        if (result == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        throw new TagendException(result == SKCodecResult.IncompleteInput
            ? $"{path} is cut short: copy the whole file again."
            : $"{path} is damaged: take or copy the picture again.");
    }

    private static SKBitmap Upright(SKBitmap picture, SKEncodedOrigin origin)
    {
        var (w, h) = (picture.Width, picture.Height);
        var turned = origin >= SKEncodedOrigin.LeftTop;
        var upright = new SKBitmap(new SKImageInfo(turned ? h : w, turned ? w : h, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(ToUpright(origin, w, h));
        canvas.DrawBitmap(picture, 0, 0, SKSamplingOptions.Default);
        return upright;
    }

    /// <summary>From stored to upright pixels.</summary>
    /// <remarks>The eight values of the Exif tag Orientation, named by where row 0 and column 0 of the file belong: CIPA DC-008.</remarks>
    private static SKMatrix ToUpright(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
