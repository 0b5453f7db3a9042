using SkiaSharp;
using Tagend.Problems;
using ZXing;
using ZXing.Common;
using ZXing.Multi;
using ZXing.Multi.QrCode;
using ZXing.QrCode;

namespace Tagend.Scan;

/// <summary>Reads QR codes from pictures.</summary>
public static class PictureReader
{
    /// <summary>Pixels looked at before a picture is given up, over all passes: the same on every machine, unlike a time.</summary>
    private const double PixelBudget = 300_000_000;

    private static readonly Dictionary<DecodeHintType, object> Hints = new()
    {
        [DecodeHintType.TRY_HARDER] = true,
        [DecodeHintType.CHARACTER_SET] = "UTF-8",
    };

    /// <summary>The texts of all codes found, each once, in reading order; empty if there are none.</summary>
    /// <param name="path">A PNG, JPEG or WebP file.</param>
    /// <exception cref="TagendException">The file cannot be read as a picture.</exception>
    public static IReadOnlyList<string> Read(string path)
    {
        using var picture = PictureFile.Load(path);
        return [.. FoundCode.InReadingOrder(Search(picture)).Select(c => c.Text)];
    }

    private static List<FoundCode> Search(SKBitmap picture)
    {
        var found = new Dictionary<string, FoundCode>();
        var budget = PixelBudget;
        foreach (var round in ReadingPass.All.GroupBy(p => p.Round))
        {
            foreach (var pass in round.Where(p => p.Cost(picture) <= budget))
            {
                budget -= pass.Cost(picture);
                foreach (var code in Look(picture, pass))
                {
                    found.TryAdd(code.Text, code);
                }
            }

            if (found.Count > 0)
            {
                break;
            }
        }

        return [.. found.Values];
    }

    private static IEnumerable<FoundCode> Look(SKBitmap picture, ReadingPass pass)
    {
        using var treated = pass.Apply(picture);
        var source = new RGBLuminanceSource(Packed(treated), treated.Width, treated.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var bitmap = new BinaryBitmap(pass.Threshold == Threshold.Local
            ? new HybridBinarizer(source)
            : new GlobalHistogramBinarizer(source));
        // The first pairs finder patterns over the whole picture, the second finds one code and looks around it:
        // either sees codes that the other misses.
        Result[] results =
        [
            .. new QRCodeMultiReader().decodeMultiple(bitmap, Hints) ?? [],
            .. new GenericMultipleBarcodeReader(new QRCodeReader()).decodeMultiple(bitmap, Hints) ?? [],
        ];
        return results.Select(r => FoundCode.Of(r, pass.Scale));
    }

    private static byte[] Packed(SKBitmap gray)
    {
        var pixels = gray.GetPixelSpan();
        if (gray.RowBytes == gray.Width)
        {
            return pixels.ToArray();
        }

        var packed = new byte[gray.Width * gray.Height];
        for (var y = 0; y < gray.Height; y++)
        {
            pixels.Slice(y * gray.RowBytes, gray.Width).CopyTo(packed.AsSpan(y * gray.Width));
        }

        return packed;
    }
}
