using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using SkiaSharp;
using Tagend.Qr.Read;
using Tagend.Workshop;
using ZXing;
using ZXing.Common;

namespace Tagend.Pictures;

/// <summary>What one decoder read in one picture.</summary>
/// <param name="Milliseconds">Of processor time for reading pixels; zbar, which takes files, elapsed time with decoding the file.</param>
public sealed record Reading(string Picture, double Milliseconds, IReadOnlyList<string> Texts);

/// <summary>The decoders that are scored. The results of all but ours are kept beside the pictures.</summary>
internal static class Decoders
{
    /// <summary>Ends the texts of one code in what zbarimg prints; no text here holds it.</summary>
    private const char NewLine = '\n';

    public static IReadOnlyDictionary<string, Func<IReadOnlyList<string>, string, IEnumerable<Reading>>> All { get; } =
        new Dictionary<string, Func<IReadOnlyList<string>, string, IEnumerable<Reading>>>
        {
            ["Tagend"] = (pictures, _) => pictures.Select(Ours),
            ["ZXing.Net 0.16.11"] = (pictures, _) => pictures.Select(p => OfPixels(p, ZXingAsItComes)),
            ["zbar"] = (pictures, _) => pictures.Select(Zbar),
            ["zxing-cpp (zxing-wasm 3.1.4)"] = (pictures, modules) => Node("zxing-wasm", modules, pictures),
            ["jsQR 1.4.0"] = (pictures, modules) => Node("jsqr", modules, pictures),
        };

    private static Reading OfPixels(string picture, Func<byte[], int, int, IReadOnlyList<string>> read)
    {
        using var bitmap = SKBitmap.Decode(picture);
        using var gray = bitmap.Copy(SKColorType.Gray8);
        var pixels = gray.Bytes;
        var start = Environment.CpuUsage.TotalTime;
        var texts = read(pixels, gray.Width, gray.Height);
        return new Reading(Path.GetFileName(picture), (Environment.CpuUsage.TotalTime - start).TotalMilliseconds, texts);
    }

    private static Reading Ours(string picture)
    {
        var decoded = PictureFile.Load(picture);
        var start = Environment.CpuUsage.TotalTime;
        string[] texts = [.. TagPictures.Reader.Read(decoded, long.MaxValue).Select(c => c.Text)];
        return new Reading(Path.GetFileName(picture), (Environment.CpuUsage.TotalTime - start).TotalMilliseconds, texts);
    }

    private static string[] ZXingAsItComes(byte[] pixels, int width, int height)
    {
        var source = new RGBLuminanceSource(pixels, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        var reader = new BarcodeReaderGeneric
        {
            AutoRotate = true,
            Options = new DecodingOptions { TryHarder = true, TryInverted = true, PossibleFormats = [BarcodeFormat.QR_CODE] },
        };
        return [.. (reader.DecodeMultiple(source) ?? []).Select(r => r.Text)];
    }

    private static Reading Zbar(string picture)
    {
        var clock = Stopwatch.StartNew();
        var output = Run("zbarimg", ["--quiet", "--nodbus", "--raw", "-Sdisable", "-Sqrcode.enable", picture]);
        return new Reading(Path.GetFileName(picture), clock.Elapsed.TotalMilliseconds, output.Split(NewLine, StringSplitOptions.RemoveEmptyEntries));
    }

    private static IEnumerable<Reading> Node(string decoder, string modules, IReadOnlyList<string> pictures)
    {
        var script = Path.Combine(AppContext.BaseDirectory, "decoders.mjs");
        foreach (var line in Run("node", [script, decoder, modules, .. pictures]).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = line.Split('\t', 3);
            using var texts = JsonDocument.Parse(parts[2]);
            yield return new Reading(
                parts[0], double.Parse(parts[1], CultureInfo.InvariantCulture), [.. texts.RootElement.EnumerateArray().Select(t => t.GetString()!)]);
        }
    }

    private static string Run(string program, IEnumerable<string> arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }
}
