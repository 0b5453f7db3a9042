using SkiaSharp;

namespace Tagend.Qr.Read;

/// <summary>Gray pixels. A place is in pixels from the top left corner, so pixel (0, 0) has its middle at (0.5, 0.5).</summary>
internal sealed class GrayPicture(byte[] pixels, int width, int height)
{
    public byte[] Pixels { get; } = pixels;

    public int Width { get; } = width;

    public int Height { get; } = height;

    public long Area => (long)Width * Height;

    public static GrayPicture Of(SKBitmap gray)
    {
        var pixels = new byte[gray.Width * gray.Height];
        for (var y = 0; y < gray.Height; y++)
        {
            gray.GetPixelSpan().Slice(y * gray.RowBytes, gray.Width).CopyTo(pixels.AsSpan(y * gray.Width));
        }

        return new GrayPicture(pixels, gray.Width, gray.Height);
    }

    /// <summary>Between the four nearest pixels; the edge goes on beyond the picture.</summary>
    public float At(float x, float y)
    {
        x = Math.Clamp(x - 0.5f, 0, Width - 1.001f);
        y = Math.Clamp(y - 0.5f, 0, Height - 1.001f);
        var (left, top) = ((int)x, (int)y);
        var (fx, fy) = (x - left, y - top);
        var i = (top * Width) + left;
        var upper = Pixels[i] + ((Pixels[i + 1] - Pixels[i]) * fx);
        i += Width;
        var lower = Pixels[i] + ((Pixels[i + 1] - Pixels[i]) * fx);
        return upper + ((lower - upper) * fy);
    }

    /// <summary>Half the width and height, each pixel the mean of four.</summary>
    public GrayPicture Halved()
    {
        var (w, h) = (Width / 2, Height / 2);
        var half = new byte[w * h];
        for (var y = 0; y < h; y++)
        {
            var upper = Pixels.AsSpan(2 * y * Width, 2 * w);
            var lower = Pixels.AsSpan(((2 * y) + 1) * Width, 2 * w);
            var row = half.AsSpan(y * w, w);
            for (var x = 0; x < row.Length; x++)
            {
                row[x] = (byte)((upper[2 * x] + upper[(2 * x) + 1] + lower[2 * x] + lower[(2 * x) + 1] + 2) >> 2);
            }
        }

        return new GrayPicture(half, w, h);
    }

    public GrayPicture Doubled() => Made(2 * Width, 2 * Height, (x, y) => At((x + 0.5f) / 2, (y + 0.5f) / 2));

    public GrayPicture Inverted() => new([.. Pixels.Select(p => (byte)(255 - p))], Width, Height);

    /// <summary>What differs from its surroundings is made to differ more.</summary>
    /// <param name="radius">Of the surroundings, in pixels.</param>
    public GrayPicture Sharpened(int radius, float amount)
    {
        var sharp = new byte[Pixels.Length];
        BoxMean.Each(this, radius, (y, means) =>
        {
            for (var x = 0; x < Width; x++)
            {
                var p = Pixels[(y * Width) + x];
                sharp[(y * Width) + x] = (byte)Math.Clamp(p + (amount * (p - means[x])), 0, 255);
            }
        });
        return new GrayPicture(sharp, Width, Height);
    }

    public GrayPicture Smoothed(int radius)
    {
        var smooth = new byte[Pixels.Length];
        BoxMean.Each(this, radius, (y, means) =>
        {
            for (var x = 0; x < Width; x++)
            {
                smooth[(y * Width) + x] = (byte)means[x];
            }
        });
        return new GrayPicture(smooth, Width, Height);
    }

    private static GrayPicture Made(int width, int height, Func<int, int, float> pixel)
    {
        var made = new byte[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                made[(y * width) + x] = (byte)(pixel(x, y) + 0.5f);
            }
        }

        return new GrayPicture(made, width, height);
    }
}
