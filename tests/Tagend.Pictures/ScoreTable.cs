using System.Globalization;

namespace Tagend.Pictures;

/// <summary>Kind by decoder, in Markdown: reads, reads that differ from the known text, milliseconds.</summary>
internal static class ScoreTable
{
    public static void Write(TextWriter output, IReadOnlyList<KnownPicture> pictures, Dictionary<string, List<Reading>> scores)
    {
        var readings = scores.ToDictionary(s => s.Key, s => s.Value.ToDictionary(r => r.Picture));
        output.WriteLine($"| damage | pictures | {string.Join(" | ", readings.Keys)} |");
        output.WriteLine($"|---|---|{string.Concat(readings.Select(_ => "---|"))}");
        foreach (var kind in pictures.GroupBy(p => p.Kind))
        {
            Row(kind.Key, [.. kind], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        }

        Row("tags", [.. pictures.Where(p => p.IsTag)], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        Row("foreign codes", [.. pictures.Where(p => !p.IsTag)], (p, r) => $"{Reads(p, r)}{Differing(p, r)}");
        Row("**all**", pictures, (p, r) => $"**{Reads(p, r)}**{Differing(p, r)}");
        Row("ms a picture read, median", pictures, (p, r) => Median(p.Where(k => Right(k, r)), r));
        Row("ms a picture not read, median", pictures, (p, r) => Median(p.Where(k => !Right(k, r)), r));
        Row("ms in all", pictures, (p, r) => p.Sum(k => r[k.Name].Milliseconds).ToString("F0", CultureInfo.InvariantCulture));

        void Row(string title, IReadOnlyList<KnownPicture> rows, Func<IReadOnlyList<KnownPicture>, Dictionary<string, Reading>, string> cell) =>
            output.WriteLine($"| {title} | {rows.Count} | {string.Join(" | ", readings.Values.Select(r => cell(rows, r)))} |");
    }

    private static bool Right(KnownPicture picture, Dictionary<string, Reading> readings) =>
        readings.TryGetValue(picture.Name, out var reading) && reading.Texts.Contains(picture.Text);

    private static int Reads(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings) => pictures.Count(p => Right(p, readings));

    /// <summary>Any other text than the known one, beside it or in its place.</summary>
    private static string Differing(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings)
    {
        var differing = pictures.Count(p => readings.TryGetValue(p.Name, out var r) && r.Texts.Any(t => t != p.Text));
        return differing == 0 ? "" : $" ({differing} differ)";
    }

    private static string Median(IEnumerable<KnownPicture> pictures, Dictionary<string, Reading> readings)
    {
        var sorted = pictures.Select(p => readings[p.Name].Milliseconds).Order().ToList();
        return sorted.Count == 0 ? "" : sorted[sorted.Count / 2].ToString("F0", CultureInfo.InvariantCulture);
    }
}
