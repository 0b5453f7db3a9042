using System.Globalization;

namespace Tagend.Pictures;

/// <summary>Kind by decoder, in Markdown: reads, reads that differ from the known text, milliseconds.</summary>
internal static class ScoreTable
{
    public static void Write(TextWriter output, IReadOnlyList<KnownPicture> pictures, Dictionary<string, List<Reading>> scores)
    {
        var readings = scores.ToDictionary(s => s.Key, s => s.Value.ToDictionary(r => r.Picture));
        output.WriteLine($"| kind | pictures | {string.Join(" | ", readings.Keys)} |");
        output.WriteLine($"|---|---|{string.Concat(readings.Select(_ => "---|"))}");
        foreach (var kind in pictures.GroupBy(p => p.Kind))
        {
            Row(kind.Key, [.. kind], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        }

        Row("tags", [.. pictures.Where(p => p.IsTag)], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        Row("foreign codes", [.. pictures.Where(p => !p.IsTag)], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        Row("**all**", pictures, (p, r) => $"**{Reads(p, r)}**{Differing(p, r)}");
        Row("ms a picture read, median", pictures, (p, r) => Median(p.Where(k => IsRead(k, r)), r));
        Row("ms a picture that all but zbar and jsQR read, median", [.. pictures.Where(k => readings.Where(r => !r.Key.StartsWith("zbar", StringComparison.Ordinal) && !r.Key.StartsWith("jsQR", StringComparison.Ordinal)).All(r => IsRead(k, r.Value)))], (p, r) => Median(p, r));
        Row("ms a picture not read, median", pictures, (p, r) => Median(p.Where(k => !IsRead(k, r)), r));
        Row("ms a picture not read, longest", pictures, (p, r) => p.Where(k => !IsRead(k, r)).Select(k => r[k.Name].Milliseconds).DefaultIfEmpty().Max().ToString("F0", CultureInfo.InvariantCulture));
        Row("ms in all", pictures, (p, r) => p.Sum(k => r[k.Name].Milliseconds).ToString("F0", CultureInfo.InvariantCulture));

        void Row(string title, IReadOnlyList<KnownPicture> rows, Func<IReadOnlyList<KnownPicture>, Dictionary<string, Reading>, string> cell) =>
            output.WriteLine($"| {title} | {rows.Count} | {string.Join(" | ", readings.Values.Select(r => cell(rows, r)))} |");
    }

    /// <summary>The share of the picture's codes that was read.</summary>
    private static double Share(KnownPicture picture, Dictionary<string, Reading> readings) =>
        readings.TryGetValue(picture.Name, out var reading) ? picture.Texts.Count(reading.Texts.Contains) / (double)picture.Texts.Count : 0;

    private static bool IsRead(KnownPicture picture, Dictionary<string, Reading> readings) => Share(picture, readings) == 1;

    /// <summary>Pictures, and shares of those whose codes were read in part.</summary>
    private static string Reads(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings) =>
        pictures.Sum(p => Share(p, readings)).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Any other text than a known one, beside it or in its place.</summary>
    private static string Differing(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings)
    {
        var differing = pictures.Count(p => readings.TryGetValue(p.Name, out var r) && r.Texts.Any(t => !p.Texts.Contains(t)));
        return differing == 0 ? "" : $" ({differing} differ)";
    }

    private static string Median(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings)
    {
        var sorted = pictures.Select(p => readings[p.Name].Milliseconds).Order().ToList();
        return sorted.Count == 0 ? "" : sorted[sorted.Count / 2].ToString("F0", CultureInfo.InvariantCulture);
    }
}
