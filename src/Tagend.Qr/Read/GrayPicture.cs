using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SkiaSharp;

namespace Tagend.Qr.Read;

/// <summary>A picture in gray.</summary>
public sealed class GrayPicture
{
    /// <summary>A picture of given pixels, which are not copied.</summary>
    /// <param name="pixels">Row by row from the top, each from the left; 0 is black, 255 white.</param>
    /// <param name="width">In pixels, 1 or more.</param>
    /// <param name="height">In pixels, 1 or more.</param>
    /// <exception cref="ArgumentException">There are not as many pixels as width and height say.</exception>
    public GrayPicture(byte[] pixels, int width, int height)
    {
        if (width < 1 || height < 1 || pixels.Length != (long)width * height)
        {
            throw new ArgumentException($"{pixels.Length} pixels are not {width} × {height}", nameof(pixels));
        }

        (Pixels, Width, Height) = (pixels, width, height);
    }

    /// <summary>In pixels.</summary>
    public int Width { get; }

    /// <summary>In pixels.</summary>
    public int Height { get; }

    internal byte[] Pixels { get; }

    internal long Area => (long)Width * Height;

    internal static GrayPicture Of(SKBitmap gray)
    {
        var pixels = new byte[gray.Width * gray.Height];
        for (var y = 0; y < gray.Height; y++)
        {
            gray.GetPixelSpan().Slice(y * gray.RowBytes, gray.Width).CopyTo(pixels.AsSpan(y * gray.Width));
        }

        return new GrayPicture(pixels, gray.Width, gray.Height);
    }

    /// <summary>Between the four nearest pixels; the edge goes on beyond the picture.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal float At(Point place) => At(place.X, place.Y);

    /// <summary>Between the four nearest pixels; the edge goes on beyond the picture, which has two pixels or more each way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal float At(float x, float y)
    {
        // Written so that what is no number is the edge too: no index leaves the pixels.
        x = x > 0.5f ? Math.Min(x - 0.5f, Width - 1) : 0;
        y = y > 0.5f ? Math.Min(y - 0.5f, Height - 1) : 0;
        var (left, top) = (Math.Min((int)x, Width - 2), Math.Min((int)y, Height - 2));
        var (fx, fy) = (x - left, y - top);
        ref var pixel = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Pixels), ((nint)top * Width) + left);
        ref var below = ref Unsafe.Add(ref pixel, Width);
        var upper = pixel + ((Unsafe.Add(ref pixel, 1) - pixel) * fx);
        var lower = below + ((Unsafe.Add(ref below, 1) - below) * fx);
        return upper + ((lower - upper) * fy);
    }

    /// <summary>A copy of a part that lies within.</summary>
    internal GrayPicture Crop(Region region)
    {
        var part = new byte[region.Width * region.Height];
        for (var y = 0; y < region.Height; y++)
        {
            Pixels.AsSpan(((region.Top + y) * Width) + region.Left, region.Width).CopyTo(part.AsSpan(y * region.Width));
        }

        return new GrayPicture(part, region.Width, region.Height);
    }

    /// <summary>Half the width and height, each pixel the mean of four.</summary>
    internal GrayPicture Halved()
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

    internal GrayPicture Doubled() => Made(2 * Width, 2 * Height, (x, y) => At((x + 0.5f) / 2, (y + 0.5f) / 2));

    internal GrayPicture Inverted() => new([.. Pixels.Select(p => (byte)(255 - p))], Width, Height);

    /// <summary>What differs from its surroundings is made to differ more.</summary>
    /// <param name="radius">Of the surroundings, in pixels.</param>
    internal GrayPicture Sharpened(int radius, float amount)
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

    internal GrayPicture Smoothed(int radius)
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
