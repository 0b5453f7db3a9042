using SkiaSharp;

namespace Tagend.Qr.Read;

/// <summary>A decoded picture: in gray, and in single colors for codes whose dark and light differ in nothing but color.</summary>
internal sealed class Photograph(SKBitmap decoded, SKEncodedOrigin origin) : IDisposable
{
    /// <summary>Pixels from one that is asked for its color to the next, each way.</summary>
    private const int Sparse = 5;

    /// <summary>Between two of a pixel's red, green and blue, of 255: less is the tint of a lamp or of paper.</summary>
    private const int LeastTint = 60;

    /// <summary>One in so many pixels that are tinted may be a small code.</summary>
    private const int TintedOneIn = 400;

    /// <summary>As bright as people see it.</summary>
    public GrayPicture Gray { get; } = Upright(decoded, origin, null);

    /// <summary>By red light and by blue light alone; none of a picture without color.</summary>
    /// <remarks>Green is nearly what people see as bright. Two colors that differ in neither of the three are alike.</remarks>
    public IEnumerable<GrayPicture> InSingleColors() => IsTinted() ? ((int[])[0, 2]).Select(color => Upright(decoded, origin, color)) : [];

    public void Dispose() => decoded.Dispose();

    private bool IsTinted()
    {
        var pixels = decoded.GetPixelSpan();
        var (tinted, all) = (0, 0);
        for (var y = 0; y < decoded.Height; y += Sparse)
        {
            for (var x = 0; x < decoded.Width; x += Sparse)
            {
                var pixel = pixels.Slice((y * decoded.RowBytes) + (x * 4), 3);
                var (low, high) = (Math.Min(pixel[0], Math.Min(pixel[1], pixel[2])), Math.Max(pixel[0], Math.Max(pixel[1], pixel[2])));
                tinted += high - low > LeastTint ? 1 : 0;
                all++;
            }
        }

        return tinted * TintedOneIn > all;
    }

    /// <param name="color">0 is red, 1 green, 2 blue; null is all as people see them.</param>
    private static GrayPicture Upright(SKBitmap picture, SKEncodedOrigin origin, int? color)
    {
        var (w, h) = (picture.Width, picture.Height);
        var turned = origin >= SKEncodedOrigin.LeftTop;
        using var upright = new SKBitmap(new SKImageInfo(turned ? h : w, turned ? w : h, SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(upright);
        using var filter = color is { } only ? SKColorFilter.CreateColorMatrix(Only(only)) : null;
        using var paint = new SKPaint { ColorFilter = filter };
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(ToUpright(origin, w, h));
        canvas.DrawBitmap(picture, 0, 0, SKSamplingOptions.Default, paint);
        return GrayPicture.Of(upright);
    }

    /// <summary>Rows of red, green, blue and alpha, each from the four and a constant.</summary>
    private static float[] Only(int color)
    {
        var matrix = new float[20];
        (matrix[color], matrix[5 + color], matrix[10 + color], matrix[18]) = (1, 1, 1, 1);
        return matrix;
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
