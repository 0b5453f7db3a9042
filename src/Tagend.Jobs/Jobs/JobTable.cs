using System.Globalization;
using CsvHelper;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Jobs;

/// <summary>Jobs as CSV, one row a build, or one for a job without any: RFC 4180, UTF-8 with its mark.</summary>
/// <remarks>
/// Safe to open in a spreadsheet: <see cref="SpreadsheetText.Guarded"/>. What cannot be seen in a text is written as its number.
/// </remarks>
public static class JobTable
{
    private static readonly CsvWriterOptions Options =
        CsvWriterOptions.Default with { WriteByteOrderMark = true };

    /// <summary>Writes the header and a row a build.</summary>
    /// <param name="jobs">In the order of the rows.</param>
    /// <param name="unit">The unit of all lengths; loads are in lbf with inches and in N with millimeters.</param>
    /// <param name="output">It is left open.</param>
    public static void Write(IEnumerable<PrintedJob> jobs, LengthUnit unit, Stream output)
    {
        using var csv = CsvWriter.Create(output, Options, leaveOpen: true);
        var length = LengthWriter.Symbol(unit);
        csv.WriteRecord(
        [
            "order", "piece", "revision", "date", "kind", "material", "strands", $"finished_length_{length}", $"tolerance_{length}",
            $"posts_{length}", "customer", "bow", "due", "printed_at", "tag", "build", $"posts_set_{length}", "turns",
            $"measured_{length}", unit == LengthUnit.Inch ? "load_lbf" : "load_n", "minutes", "who", "logged_at", "left_out", "lots",
            "state", "bench", "build_bench", "struck", "replaces", "spools",
        ]);
        foreach (var job in jobs)
        {
            string[] start = Start(job, unit);
            foreach (var build in job.Builds.Count == 0 ? [null] : job.Builds.AsEnumerable<LoggedBuild?>())
            {
                csv.WriteRecord([.. start, .. End(build, unit), StateWords.Of(job.State), Said(job.Bench), .. Standing(build)]);
            }
        }
    }

    private static string[] Start(PrintedJob job, LengthUnit unit) =>
    [
        Said(job.Order), Said(job.Piece), Plain(job.Revision), DateWriter.Iso(job.Issued), Said(job.Kind), Said(job.Material), Plain(job.Strands),
        Plain(job.FinishedLength, unit), Plain(job.Tolerance, unit), Plain(job.Posts, unit),
        Said(job.Customer), Said(job.Bow), Said(job.Due), UtcTime.Write(job.PrintedAt), job.Tag,
    ];

    private static string[] End(LoggedBuild? logged, LengthUnit unit) => logged is not { Built: var built }
        ? ["", "", "", "", "", "", "", "", "", ""]
        :
        [
            Plain(logged.Number), Plain(built.Posts, unit), Plain(built.Turns), Plain(built.Measured, unit),
            Plain(unit == LengthUnit.Inch ? built.Load.Pounds : built.Load.Newtons), Plain(built.Minutes), Said(built.Who),
            UtcTime.Write(logged.LoggedAt), logged.IsLeftOut ? "yes" : "no", Said(string.Join(", ", built.Lots)),
        ];

    private static string[] Standing(LoggedBuild? logged) => logged is null
        ? ["", "", "", ""]
        :
        [
            Said(logged.Bench), logged.IsStruck ? "yes" : "no", logged.Replaces > 0 ? Plain(logged.Replaces) : "",
            string.Join(", ", logged.Built.Spools.Select(s => Plain(s.Spool))),
        ];

    /// <summary>A text of the user's.</summary>
    private static string Said(string text) => SpreadsheetText.Guarded(ShownText.Of(text, kept: "\t\r\n"));

    private static string Plain(Length length, LengthUnit unit) => Plain(unit == LengthUnit.Inch ? length.Inches : length.Millimeters);

    private static string Plain(double number) => number.ToString("0.#####", CultureInfo.InvariantCulture);
}
