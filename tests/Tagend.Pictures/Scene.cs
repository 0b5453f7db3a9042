using System.Runtime.InteropServices;
using SkiaSharp;

namespace Tagend.Pictures;

/// <summary>A picture in the making: light in each pixel, 0 to 255, as a camera would count it before clipping.</summary>
public sealed class Scene
{
    /// <summary>Rays a pixel's side.</summary>
    private const int Rays = 3;

    public Scene(int width, int height, Random random)
    {
        (Width, Height, Random) = (width, height, random);
        Light = new float[width * height];
        Clutter();
    }

    public int Width { get; }

    public int Height { get; }

    public Random Random { get; }

    public float[] Light { get; }

    /// <summary>From -spread to spread.</summary>
    public double Around(double spread) => ((Random.NextDouble() * 2) - 1) * spread;

    public double Between(double low, double high) => low + (Random.NextDouble() * (high - low));

    /// <summary>Puts a label with a symbol into the picture.</summary>
    /// <param name="symbol">With a white margin.</param>
    /// <param name="toSymbol">From pixels to modules, (0, 0) the symbol's top left corner; null where the label is not.</param>
    /// <param name="dark">Light of its dark modules.</param>
    /// <param name="light">Light of the others.</param>
    public void Place(Symbol symbol, Func<double, double, (double X, double Y)?> toSymbol, float dark, float light) =>
        Paint(toSymbol, (x, y) => symbol.LightAt(x, y, dark, light));

    /// <summary>Puts something flat or bent into the picture.</summary>
    /// <param name="toPage">From pixels to places on it; null where it is not.</param>
    /// <param name="lightAt">Its light at a place; null where it is not.</param>
    public void Paint(Func<double, double, (double X, double Y)?> toPage, Func<double, double, double?> lightAt)
    {
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var (sum, hits) = (0f, 0);
                for (var ray = 0; ray < Rays * Rays; ray++)
                {
                    var at = toPage(x + (((ray % Rays) + 0.5) / Rays), y + (((ray / Rays) + 0.5) / Rays));
                    if (at is not { } p || lightAt(p.X, p.Y) is not { } seen)
                    {
                        if (ray == 0)
                        {
                            break;
                        }

                        continue;
                    }

                    hits++;
                    sum += (float)seen;
                }

                if (hits > 0)
                {
                    var i = (y * Width) + x;
                    Light[i] = ((Light[i] * ((Rays * Rays) - hits)) + sum) / (Rays * Rays);
                }
            }
        }
    }

    /// <summary>Puts a ground under everything that comes later.</summary>
    public void Cover(Func<double, double, double> ground) => Each((x, y, _) => Math.Clamp(ground(x, y), 0, 255));

    public void Each(Func<int, int, float, double> change)
    {
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var i = (y * Width) + x;
                Light[i] = (float)change(x, y, Light[i]);
            }
        }
    }

    public void Noise(double sigma) => Each((_, _, v) => v + (sigma * Gaussian()));

    /// <summary>Out of focus.</summary>
    public void Blur(double sigma)
    {
        if (sigma < 0.05)
        {
            return;
        }

        var reach = (int)Math.Ceiling(sigma * 3);
        var kernel = Enumerable.Range(-reach, (2 * reach) + 1).Select(d => Math.Exp(-d * d / (2 * sigma * sigma))).ToArray();
        Smear([.. kernel.Select((w, i) => (i - reach, 0.0, w))]);
        Smear([.. kernel.Select((w, i) => (0.0, (double)(i - reach), w)).Select(t => ((int)t.Item1, t.Item2, t.w))]);
    }

    /// <summary>Out of focus as a lens is: each place becomes a disc.</summary>
    /// <param name="radius">Of the disc, in pixels.</param>
    public void Defocus(double radius)
    {
        var reach = (int)Math.Ceiling(radius);
        Smear([.. from y in Enumerable.Range(-reach, (2 * reach) + 1)
                  from x in Enumerable.Range(-reach, (2 * reach) + 1)
                  let weight = Math.Clamp(radius + 0.5 - Math.Sqrt((x * x) + (y * y)), 0, 1)
                  where weight > 0
                  select ((double)x, (double)y, weight)]);
    }

    /// <summary>Moved while the shutter was open.</summary>
    public void Motion(double length, double angle)
    {
        var steps = Math.Max(2, (int)Math.Ceiling(length * 2));
        Smear([.. Enumerable.Range(0, steps).Select(i => (i / (steps - 1.0)) - 0.5)
            .Select(t => (t * length * Math.Cos(angle), t * length * Math.Sin(angle), 1.0))]);
    }

    /// <summary>Gray, clipped as a camera clips.</summary>
    public byte[] Encode(SKEncodedImageFormat format, int quality)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(Width, Height, SKColorType.Gray8, SKAlphaType.Opaque));
        var row = new byte[Width];
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                row[x] = Byte(Light[(y * Width) + x]);
            }

            Marshal.Copy(row, 0, bitmap.GetAddress(0, y), Width);
        }

        using var data = bitmap.Encode(format, quality);
        return data.ToArray();
    }

    /// <summary>The same of three scenes, for red, green and blue.</summary>
    public static byte[] Encode(Scene red, Scene green, Scene blue, SKEncodedImageFormat format, int quality)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(red.Width, red.Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        bitmap.Pixels = [.. red.Light.Select((light, i) => new SKColor(Byte(light), Byte(green.Light[i]), Byte(blue.Light[i])))];
        using var data = bitmap.Encode(format, quality);
        return data.ToArray();
    }

    private static byte Byte(float light) => (byte)Math.Clamp(light + 0.5f, 0, 255);

    /// <summary>A smooth field, about -1 to 1, that changes over so many pixels.</summary>
    public Func<double, double, double> Waves(double wavelength)
    {
        var waves = Enumerable.Range(0, 6).Select(_ =>
        {
            var (angle, k) = (Between(0, 2 * Math.PI), 2 * Math.PI / (wavelength * Between(0.7, 1.6)));
            return (X: k * Math.Cos(angle), Y: k * Math.Sin(angle), Phase: Between(0, 2 * Math.PI));
        }).ToArray();
        return (x, y) => waves.Sum(w => Math.Sin((w.X * x) + (w.Y * y) + w.Phase)) / 3;
    }

    private double Gaussian() =>
        Math.Sqrt(-2 * Math.Log(1 - Random.NextDouble())) * Math.Cos(2 * Math.PI * Random.NextDouble());

    private void Smear((double X, double Y, double Weight)[] taps)
    {
        var source = (float[])Light.Clone();
        var total = taps.Sum(t => t.Weight);
        Each((x, y, _) =>
        {
            var sum = 0.0;
            foreach (var (dx, dy, weight) in taps)
            {
                sum += weight * At(source, x + dx, y + dy);
            }

            return sum / total;
        });
    }

    private double At(float[] source, double x, double y)
    {
        x = Math.Clamp(x, 0, Width - 1.001);
        y = Math.Clamp(y, 0, Height - 1.001);
        var (left, top) = ((int)x, (int)y);
        var (fx, fy) = (x - left, y - top);
        var i = (top * Width) + left;
        return fx == 0 && fy == 0
            ? source[i]
            : ((((source[i] * (1 - fx)) + (source[i + 1] * fx)) * (1 - fy))
                + (((source[i + Width] * (1 - fx)) + (source[i + Width + 1] * fx)) * fy));
    }

    /// <summary>A bench: soft tones, boxes and lines of something like writing.</summary>
    private void Clutter()
    {
        var tone = Waves(Width / 2.0);
        var ground = Between(90, 190);
        Each((x, y, _) => ground + (25 * tone(x, y)));
        for (var n = 0; n < 30; n++)
        {
            var (left, top) = (Random.Next(Width), Random.Next(Height));
            var (right, bottom) = (left + Random.Next(4, Width / 5), top + Random.Next(3, Height / 8));
            var (shade, stripes) = ((float)Between(20, 240), Random.Next(3) == 0 ? Random.Next(3, 9) : 0);
            for (var y = top; y < Math.Min(bottom, Height); y++)
            {
                for (var x = left; x < Math.Min(right, Width); x++)
                {
                    if (stripes == 0 || (((x / stripes) ^ (y / (stripes + 2))) * 7 % 5) < 2)
                    {
                        Light[(y * Width) + x] = shade;
                    }
                }
            }
        }
    }
}
