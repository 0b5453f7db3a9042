using SkiaSharp;
using Tagend.Output;

namespace Tagend.PaperTests.Output;

/// <summary>How near a page of a PDF, by a renderer that is not ours, comes to the same page as our picture.</summary>
/// <param name="Mean">Difference of all dots at 100 dpi, of 255 shades.</param>
/// <param name="FarOff">Share of the dots that differ by more than a quarter of all shades.</param>
/// <param name="Where">The one is that differs most, in points.</param>
internal sealed record Likeness(double Mean, double FarOff, (double X, double Y) Where)
{
    /// <summary>What renderers are compared at; four dots by four make one of 100 dpi, so that edges differ by little.</summary>
    public const int DotsPerInch = 400;

    private const int Side = 4;
    private const int Far = 64;

    public static Likeness Of(Page page, Rendering rendering)
    {
        using var file = new MemoryStream();
        PngFile.Write(page, Sample.Fonts, DotsPerInch, DotDepth.Gray, file);
        using var picture = SKBitmap.Decode(file.ToArray());
        var pixels = picture.Bytes;
        var (sum, far, most, count, where) = (0L, 0, 0, 0, (0.0, 0.0));
        for (var y = 0; y + Side <= Math.Min(picture.Height, rendering.Height); y += Side)
        {
            for (var x = 0; x + Side <= Math.Min(picture.Width, rendering.Width); x += Side)
            {
                var (left, top) = (x, y);
                var difference = Math.Abs(
                    Block((i, j) => pixels[((top + j) * picture.RowBytes) + left + i]) - Block((i, j) => rendering.Shade(left + i, top + j)));
                (sum, far, count) = (sum + difference, far + (difference > Far ? 1 : 0), count + 1);
                if (difference > most)
                {
                    (most, where) = (difference, (x * 72.0 / DotsPerInch, y * 72.0 / DotsPerInch));
                }
            }
        }

        return new Likeness((double)sum / count, (double)far / count, where);
    }

    private static int Block(Func<int, int, byte> shade)
    {
        var sum = 0;
        for (var j = 0; j < Side; j++)
        {
            for (var i = 0; i < Side; i++)
            {
                sum += shade(i, j);
            }
        }

        return sum / (Side * Side);
    }
}
