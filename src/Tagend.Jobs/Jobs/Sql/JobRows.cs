using System.Data.Common;
using System.Globalization;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Jobs.Sql;

/// <summary>The rows of the tables of jobs and builds, and what they say.</summary>
/// <remarks>A row's seal is made of the values of one of the lists, in their order, and each row that is read is held to its seal.</remarks>
internal static class JobRows
{
    /// <summary>The columns of a job that its seal holds.</summary>
    private static readonly string[] JobColumns =
    [
        "order_number", "piece", "revision", "issued", "kind", "material", "strands", "finished_nm", "tolerance_nm", "laid_up_nm",
        "posts_nm", "customer", "bow", "due", "tag", "printed_at",
    ];

    /// <summary>The columns of a build that its seal holds, with those that say which job it is of.</summary>
    private static readonly string[] BuildColumns =
        ["build", "order_number", "piece", "tag", "set_nm", "turns", "measured_nm", "load_un", "minutes", "who", "logged_at", "left_out", "lots"];

    /// <summary>Between two lots in their column; no lot has it.</summary>
    private const char LotSeparator = '\n';

    /// <summary>Selects jobs with their builds, a row each.</summary>
    /// <param name="jobs">A table or query of jobs, named <c>j</c>.</param>
    /// <param name="join">How builds, named <c>b</c>, are joined.</param>
    public static string Select(string jobs, string join) =>
        $"""
         SELECT j.number, {string.Join(", ", JobColumns.Select(c => $"j.{c}"))}, j.seal, j.builds,
             b.number AS build, b.posts_nm AS set_nm, b.turns, b.measured_nm, b.load_un, b.minutes, b.who, b.logged_at, b.left_out, b.lots,
             b.seal AS build_seal
         FROM {jobs} {join} builds b ON b.job = j.number
         """;

    /// <summary>The values of a new job by column.</summary>
    public static (string Name, object Value)[] Values(Build build, string tag, DateTimeOffset now) =>
    [
        ("order_number", build.Spec.Order),
        ("piece", build.Spec.Piece),
        ("revision", (long)build.Spec.Revision),
        ("issued", DateWriter.Iso(build.Spec.Date)),
        ("kind", build.Spec.Kind),
        ("material", build.Spec.Bundle.Material),
        ("strands", (long)build.Spec.Bundle.Strands),
        ("finished_nm", build.Spec.FinishedLength.Nanometers),
        ("tolerance_nm", build.Spec.Tolerance.Nanometers),
        ("laid_up_nm", build.Spec.LaidUpLength.Nanometers),
        ("posts_nm", build.Spec.Posts.Outside.Nanometers),
        ("customer", build.Slip.Customer),
        ("bow", build.Slip.Bow),
        ("due", build.Slip.Due),
        ("tag", tag),
        ("printed_at", UtcTime.Write(now)),
    ];

    /// <summary>The values of a build by column, with those that say which job it is of.</summary>
    public static (string Name, object Value)[] Values(
        long number, string order, string piece, string tag, AsBuilt built, DateTimeOffset loggedAt, bool isLeftOut) =>
    [
        ("build", number),
        ("order_number", order),
        ("piece", piece),
        ("tag", tag),
        ("set_nm", built.Posts.Nanometers),
        ("turns", built.Turns),
        ("measured_nm", built.Measured.Nanometers),
        ("load_un", built.Load.Micronewtons),
        ("minutes", built.Minutes),
        ("who", built.Who),
        ("logged_at", UtcTime.Write(loggedAt)),
        ("left_out", isLeftOut ? 1L : 0L),
        ("lots", string.Join(LotSeparator, built.Lots)),
    ];

    /// <summary>Adds the seal of some values to them.</summary>
    public static (string Name, object Value)[] Sealed((string Name, object Value)[] values) =>
        [.. values, ("seal", RowSeal.Of(values.Select(v => v.Value)))];

    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public static PrintedJob Job(DbDataReader row)
    {
        Hold(row, JobColumns, "seal", $"job {row["number"]}");
        return new PrintedJob
        {
            Number = row.Whole("number"),
            Order = row.Text("order_number"),
            Piece = row.Text("piece"),
            Revision = checked((int)row.Whole("revision")),
            Issued = DateOnly.ParseExact(row.Text("issued"), "yyyy-MM-dd", CultureInfo.InvariantCulture),
            Kind = row.Text("kind"),
            Material = row.Text("material"),
            Strands = checked((int)row.Whole("strands")),
            FinishedLength = row.Length("finished_nm"),
            Tolerance = row.Length("tolerance_nm"),
            LaidUpLength = row.Length("laid_up_nm"),
            Posts = row.Length("posts_nm"),
            Customer = row.Text("customer"),
            Bow = row.Text("bow"),
            Due = row.Text("due"),
            Tag = row.Text("tag"),
            PrintedAt = UtcTime.Read(row.Text("printed_at")),
        };
    }

    /// <summary>How many builds the job of a row has.</summary>
    public static long Builds(DbDataReader row) => row.Whole("builds");

    /// <returns>Null where the job has no build.</returns>
    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public static LoggedBuild? Build(DbDataReader row)
    {
        if (row.IsDBNull(row.GetOrdinal("build")))
        {
            return null;
        }

        Hold(row, BuildColumns, "build_seal", $"build {row["build"]}");
        return new LoggedBuild(
            row.Whole("build"),
            new AsBuilt
            {
                Posts = row.Length("set_nm"),
                Turns = row.GetDouble(row.GetOrdinal("turns")),
                Measured = row.Length("measured_nm"),
                Load = Force.FromMicronewtons(row.Whole("load_un")),
                Minutes = row.GetDouble(row.GetOrdinal("minutes")),
                Who = row.Text("who"),
                Lots = row.Text("lots").Split(LotSeparator, StringSplitOptions.RemoveEmptyEntries).ToValueList(),
            },
            UtcTime.Read(row.Text("logged_at")),
            row.Whole("left_out") != 0);
    }

    /// <summary>The seal of a job as it is.</summary>
    public static long SealOf(PrintedJob job) => RowSeal.Of(
    [
        job.Order, job.Piece, job.Revision, DateWriter.Iso(job.Issued), job.Kind, job.Material, job.Strands, job.FinishedLength.Nanometers,
        job.Tolerance.Nanometers, job.LaidUpLength.Nanometers, job.Posts.Nanometers, job.Customer, job.Bow, job.Due, job.Tag, UtcTime.Write(job.PrintedAt),
    ]);

    /// <summary>The seals of all builds of some jobs.</summary>
    public static IReadOnlyList<long> SealsOf(IEnumerable<PrintedJob> jobs) =>
    [
        .. jobs.SelectMany(j => j.Builds.Select(b => RowSeal.Of(
            Values(b.Number, j.Order, j.Piece, j.Tag, b.Built, b.LoggedAt, b.IsLeftOut).Select(v => v.Value)))),
    ];

    private static void Hold(DbDataReader row, string[] columns, string seal, string name)
    {
        if (row.Whole(seal) != RowSeal.Of(columns.Select(c => row[c])))
        {
            throw new InvalidDataException($"{name} does not fit its check");
        }
    }

    private static string Text(this DbDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    private static long Whole(this DbDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    private static Length Length(this DbDataReader row, string column) => Measures.Length.FromNanometers(row.Whole(column));
}
