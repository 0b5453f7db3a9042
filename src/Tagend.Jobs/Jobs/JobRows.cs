using System.Globalization;
using Microsoft.Data.Sqlite;
using Tagend.Measures;

namespace Tagend.Jobs;

/// <summary>The columns of the book's tables, and their rows as values.</summary>
internal static class JobRows
{
    public const string EnteredColumns =
        "order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm, posts_nm, "
        + "customer, bow, due, tag, printed_at";

    public const string JobColumns = "number, " + EnteredColumns;

    public const string BuildColumns = "number, posts_nm, turns, measured_nm, load_un, minutes, who, logged_at, left_out";

    /// <summary>UTC, ISO 8601.</summary>
    public static string Time(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    /// <summary>Of <see cref="JobColumns"/>.</summary>
    public static PrintedJob Job(SqliteDataReader row) => new(
        row.GetInt64(0),
        row.GetString(1),
        row.GetString(2),
        row.GetInt32(3),
        DateOnly.ParseExact(row.GetString(4), "yyyy-MM-dd", CultureInfo.InvariantCulture),
        row.GetString(5),
        row.GetString(6),
        row.GetInt32(7),
        Length.FromNanometers(row.GetInt64(8)),
        Length.FromNanometers(row.GetInt64(9)),
        Length.FromNanometers(row.GetInt64(10)),
        Length.FromNanometers(row.GetInt64(11)),
        row.GetString(12),
        row.GetString(13),
        row.GetString(14),
        row.GetString(15),
        TimeOf(row.GetString(16)));

    /// <summary>Of the job's number and <see cref="BuildColumns"/>.</summary>
    public static (long Job, LoggedBuild Build) Build(SqliteDataReader row) => (
        row.GetInt64(0),
        new LoggedBuild(
            row.GetInt64(1),
            new AsBuilt(
                Length.FromNanometers(row.GetInt64(2)),
                row.GetDouble(3),
                Length.FromNanometers(row.GetInt64(4)),
                Force.FromMicronewtons(row.GetInt64(5)),
                row.GetDouble(6),
                row.GetString(7)),
            TimeOf(row.GetString(8)),
            row.GetInt64(9) != 0));

    private static DateTimeOffset TimeOf(string text) =>
        DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
