using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Tagend.Workshop;
using ZXing;
using ZXing.Common;

namespace Tagend.Pictures;

/// <summary>What one decoder read in one picture.</summary>
/// <param name="Milliseconds">Of reading; decoding the file is in it for decoders that take files.</param>
public sealed record Reading(string Picture, double Milliseconds, IReadOnlyList<string> Texts);

/// <summary>The decoders that are scored. The results of all but ours are kept beside the pictures.</summary>
internal static class Decoders
{
    /// <summary>Ends the texts of one code in what zbarimg prints; no text here holds it.</summary>
    private const char NewLine = '\n';

    public static IReadOnlyDictionary<string, Func<IReadOnlyList<string>, string, IEnumerable<Reading>>> All { get; } =
        new Dictionary<string, Func<IReadOnlyList<string>, string, IEnumerable<Reading>>>
        {
            ["Tagend"] = (pictures, _) => pictures.Select(p => Timed(p, picture => [.. TagPictures.Read(picture).Select(c => c.Text)])),
            ["ZXing.Net 0.16.11"] = (pictures, _) => pictures.Select(p => Timed(p, ZXingAsItComes)),
            ["zbar"] = (pictures, _) => pictures.Select(p => Timed(p, Zbar)),
            ["zxing-cpp (zxing-wasm 3.1.4)"] = (pictures, modules) => Node("zxing-wasm", modules, pictures),
            ["jsQR 1.4.0"] = (pictures, modules) => Node("jsqr", modules, pictures),
        };

    private static Reading Timed(string picture, Func<string, IReadOnlyList<string>> read)
    {
        var clock = Stopwatch.StartNew();
        var texts = read(picture);
        return new Reading(Path.GetFileName(picture), clock.Elapsed.TotalMilliseconds, texts);
    }

    private static string[] ZXingAsItComes(string picture)
    {
        using var bitmap = SkiaSharp.SKBitmap.Decode(picture);
        using var gray = bitmap.Copy(SkiaSharp.SKColorType.Gray8);
        var source = new RGBLuminanceSource(gray.Bytes, gray.Width, gray.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var reader = new BarcodeReaderGeneric
        {
            AutoRotate = true,
            Options = new DecodingOptions { TryHarder = true, TryInverted = true, PossibleFormats = [BarcodeFormat.QR_CODE] },
        };
        return [.. (reader.DecodeMultiple(source) ?? []).Select(r => r.Text)];
    }

    private static string[] Zbar(string picture) =>
        [.. Run("zbarimg", ["--quiet", "--nodbus", "--raw", "-Sdisable", "-Sqrcode.enable", picture]).Split(NewLine, StringSplitOptions.RemoveEmptyEntries)];

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
