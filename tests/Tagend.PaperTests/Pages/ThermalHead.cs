using SkiaSharp;

namespace Tagend.PaperTests.Pages;

/// <summary>What becomes of a label's dots on a head that is not at its best.</summary>
/// <param name="Gained">Share of the light dots beside a dark one that turn dark: a head too hot.</param>
/// <param name="Lost">Share of the dark dots beside a light one that stay light: too cold, or poor stock.</param>
/// <param name="Dead">Share of the head's dots that never heat: each is a light line along the feed.</param>
public sealed record ThermalHead(string Name, double Gained, double Lost, double Dead)
{
    /// <summary>Of the reader's picture.</summary>
    private const int PixelsPerInch = 400;

    /// <summary>Standard deviation of the reader's blur: 1/16 mm.</summary>
    private const float BlurPixels = 1;

    /// <summary>The label as a reader held askew sees it.</summary>
    /// <param name="label">A picture of its dots.</param>
    /// <param name="seed">Of the dots that fail.</param>
    public void Print(string label, int dotsPerInch, string seen, float degrees, int seed)
    {
        using var dots = SKBitmap.Decode(label);
        using var print = new SKBitmap(new SKImageInfo(dots.Width, dots.Height, SKColorType.Gray8, SKAlphaType.Opaque));
        var fails = new Random(seed);
        var dead = Enumerable.Range(0, dots.Width).Select(_ => fails.NextDouble() < Dead).ToArray();
        var dark = dots.Pixels.Select(p => p.Red < 128).ToArray();
        var shades = print.GetPixelSpan();
        for (var y = 0; y < dots.Height; y++)
        {
            for (var x = 0; x < dots.Width; x++)
            {
                var isDark = IsDark(x, y);
                var onEdge = IsDark(x - 1, y) != isDark || IsDark(x + 1, y) != isDark || IsDark(x, y - 1) != isDark || IsDark(x, y + 1) != isDark;
                var flips = onEdge && fails.NextDouble() < (isDark ? Lost : Gained);
                shades[(y * print.RowBytes) + x] = (byte)(isDark != flips && !dead[x] ? 0 : 255);
            }
        }

        See(print, dotsPerInch, seen, degrees);

        bool IsDark(int x, int y) => x >= 0 && y >= 0 && x < dots.Width && y < dots.Height && dark[(y * dots.Width) + x];
    }

    private static void See(SKBitmap print, int dotsPerInch, string path, float degrees)
    {
        var (width, height) = ((float)print.Width * PixelsPerInch / dotsPerInch, (float)print.Height * PixelsPerInch / dotsPerInch);
        var margin = (int)(width * Math.Sin(Math.Abs(degrees) * Math.PI / 180)) + 8;
        using var seen = new SKBitmap(new SKImageInfo(
            (int)width + (2 * margin), (int)height + (2 * margin), SKColorType.Gray8, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(seen);
        using var image = SKImage.FromBitmap(print);
        using var blur = SKImageFilter.CreateBlur(BlurPixels, BlurPixels);
        using var paint = new SKPaint { ImageFilter = blur };
        canvas.Clear(SKColors.White);
        canvas.RotateDegrees(degrees, seen.Width / 2f, seen.Height / 2f);
        canvas.DrawImage(
            image, SKRect.Create(margin, margin, width, height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear), paint);
        canvas.Flush();
        using var file = File.Create(path);
        seen.Encode(file, SKEncodedImageFormat.Png, 100);
    }
}
