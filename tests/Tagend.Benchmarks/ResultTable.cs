using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using SkiaSharp;

namespace Tagend.Benchmarks;

/// <summary>The results as one table in Markdown.</summary>
internal static class ResultTable
{
    public static string Of(
        IReadOnlyList<Standing> standings, IReadOnlyList<(string Name, double Milliseconds)> parts, string peers, string load, TimeProvider clock)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{clock.GetUtcNow():yyyy-MM-dd}, {Machine.Description}, {load}; {RuntimeInformation.OSDescription.Trim()},");
        text.AppendLine(CultureInfo.InvariantCulture, $"{RuntimeInformation.FrameworkDescription}, SkiaSharp {typeof(SKCanvas).Assembly.GetName().Version?.ToString(3)}; {peers}.");
        text.AppendLine();
        text.AppendLine("| × floor | what | median | CPU | pages a second | peak MB | KB a page |");
        text.AppendLine("|---|---|---|---|---|---|---|");
        foreach (var race in standings.GroupBy(s => s.Race))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| | **{race.Key}** | | | | | |");
            foreach (var standing in race)
            {
                text.AppendLine(Row(standing));
            }
        }

        text.Append(Growth(standings));
        text.AppendLine("| | **parts, in one process, compiled just in time** | | | | | |");
        foreach (var (name, milliseconds) in parts)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| | {name} | {Time(milliseconds)} | | | | |");
        }

        return text.ToString();
    }

    /// <summary>The station's figures, each with its bound.</summary>
    public static string Of(IReadOnlyList<StationFigure> figures, string load, TimeProvider clock)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"The station, {clock.GetUtcNow():yyyy-MM-dd}, {Machine.Description}, {load}:");
        text.AppendLine();
        text.AppendLine("| what | median | at most |");
        text.AppendLine("|---|---|---|");
        foreach (var figure in figures)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {figure.Name} | {figure.Value} | {figure.Bound} |");
        }

        return text.ToString();
    }

    private static string Row(Standing s)
    {
        if (s.Failure is { } failure)
        {
            return $"| skipped | {s.Program.Name} | {failure.Replace('|', '/')} | | | | |";
        }

        var ratio = s.Ratio?.ToString("0.00", CultureInfo.InvariantCulture) ?? "";
        var rate = s.Program.Pages is { } pages and > 1 ? (pages / s.Milliseconds * 1000).ToString("#,0", CultureInfo.InvariantCulture) : "";
        var size = s.Program.Pages is { } made ? (s.Bytes / 1000.0 / made).ToString("0.0", CultureInfo.InvariantCulture) : "";
        return string.Create(CultureInfo.InvariantCulture, $"| {ratio} | {s.Program.Name} | {Time(s.Milliseconds)} | {Time(s.CpuMilliseconds)} | {rate} | {s.PeakMegabytes:0} | {size} |");
    }

    /// <summary>How many times the work of half the pages each took, wherever both were measured.</summary>
    private static string Growth(IReadOnlyList<Standing> standings)
    {
        var text = new StringBuilder();
        foreach (var twice in standings.Where(s => s is { Failure: null, Program.Pages: > 1 }))
        {
            var once = standings.FirstOrDefault(s =>
                s.Failure is null && s.Program.Pages * 2 == twice.Program.Pages && s.Program.Name == twice.Program.Name && s.Program.OnOneCore == twice.Program.OnOneCore);
            if (once is not null)
            {
                text.AppendLine(CultureInfo.InvariantCulture, $"| | {twice.Program.Name}, {twice.Race}: to half as many | × {twice.CpuMilliseconds / once.CpuMilliseconds:0.00} | | | | |");
            }
        }

        return text.Length == 0 ? "" : "| | **growth of CPU time** | | | | | |\n" + text;
    }

    private static string Time(double milliseconds) => milliseconds switch
    {
        < 1 => string.Create(CultureInfo.InvariantCulture, $"{milliseconds * 1000:0} µs"),
        < 10 => string.Create(CultureInfo.InvariantCulture, $"{milliseconds:0.0} ms"),
        < 10_000 => string.Create(CultureInfo.InvariantCulture, $"{milliseconds:#,0} ms"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{milliseconds / 1000:#,0.0} s"),
    };
}
