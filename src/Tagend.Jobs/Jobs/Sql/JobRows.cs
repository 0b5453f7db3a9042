using System.Data.Common;
using System.Globalization;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Jobs.Sql;

/// <summary>The rows of the tables of jobs and builds, and what they say.</summary>
/// <remarks>Each row that is read is held to its seal, which is made of the values of its columns in their order.</remarks>
internal static class JobRows
{
    /// <summary>Between two lots, or two accessories, in their column; none of them has it.</summary>
    private const char ListSeparator = '\n';

    /// <summary>Between a spool's number and the nanometers taken from it.</summary>
    private const char LengthSeparator = ':';

    private static readonly SealedColumns JobColumns = new(
        [
            "order_number", "piece", "revision", "issued", "kind", "material", "strands", "finished_nm", "tolerance_nm", "laid_up_nm",
            "posts_nm", "customer", "bow", "due", "tag", "printed_at",
        ],
        [("notes", ""), ("language", ""), ("units", ""), ("accessories", ""), ("bench", ""), ("mark", ""), ("remade_from", 0L)]);

    /// <summary>With the columns that say which job it is of.</summary>
    private static readonly SealedColumns BuildColumns = new(
        ["build", "order_number", "piece", "tag", "set_nm", "turns", "measured_nm", "load_un", "minutes", "who", "logged_at", "left_out", "lots"],
        [("build_bench", ""), ("struck", 0L), ("replaces", 0L), ("spools", "")]);

    /// <summary>The columns of a job that a writing gives values to, but for its seal.</summary>
    public static IEnumerable<string> OfJob => JobColumns.All;

    /// <summary>Selects jobs with their builds, a row each.</summary>
    /// <param name="jobs">A table or query of jobs, named <c>j</c>.</param>
    /// <param name="join">How builds, named <c>b</c>, are joined.</param>
    public static string Select(string jobs, string join) =>
        $"""
         SELECT j.number, {string.Join(", ", OfJob.Select(c => $"j.{c}"))}, j.seal, j.builds,
             b.number AS build, b.posts_nm AS set_nm, b.turns, b.measured_nm, b.load_un, b.minutes, b.who, b.logged_at, b.left_out, b.lots,
             b.bench AS build_bench, b.struck, b.replaces, b.spools, b.seal AS build_seal
         FROM {jobs} {join} builds b ON b.job = j.number
         """;

    /// <summary>A job that is new in the book, without a number.</summary>
    public static PrintedJob New(Build build, string tag, DateTimeOffset now, string bench) => new()
    {
        Number = 0,
        Order = build.Spec.Order,
        Piece = build.Spec.Piece,
        Revision = build.Spec.Revision,
        Issued = build.Spec.Date,
        Kind = build.Spec.Kind,
        Material = build.Spec.Bundle.Material,
        Strands = build.Spec.Bundle.Strands,
        FinishedLength = build.Spec.FinishedLength,
        Tolerance = build.Spec.Tolerance,
        LaidUpLength = build.Spec.LaidUpLength,
        Posts = build.Spec.Posts.Outside,
        Customer = build.Slip.Customer,
        Bow = build.Slip.Bow,
        Due = build.Slip.Due,
        Notes = build.Slip.Notes,
        Language = build.Slip.Language,
        Units = build.Slip.Units,
        Accessories = build.Slip.Accessories,
        Tag = tag,
        PrintedAt = now,
        Bench = bench,
    };

    /// <summary>The values of a job by column, with its seal.</summary>
    public static (string Name, object Value)[] Values(PrintedJob job) => JobColumns.Sealed(
    [
        ("order_number", job.Order),
        ("piece", job.Piece),
        ("revision", (long)job.Revision),
        ("issued", DateWriter.Iso(job.Issued)),
        ("kind", job.Kind),
        ("material", job.Material),
        ("strands", (long)job.Strands),
        ("finished_nm", job.FinishedLength.Nanometers),
        ("tolerance_nm", job.Tolerance.Nanometers),
        ("laid_up_nm", job.LaidUpLength.Nanometers),
        ("posts_nm", job.Posts.Nanometers),
        ("customer", job.Customer),
        ("bow", job.Bow),
        ("due", job.Due),
        ("tag", job.Tag),
        ("printed_at", UtcTime.Write(job.PrintedAt)),
        ("notes", job.Notes),
        ("language", job.Language),
        ("units", job.Units is { } unit ? LengthWriter.Symbol(unit) : ""),
        ("accessories", string.Join(ListSeparator, job.Accessories)),
        ("bench", job.Bench),
        ("mark", job.Mark is { } mark ? StateWords.Of(mark) : ""),
        ("remade_from", job.RemadeFrom),
    ]);

    /// <summary>The values of a build by column, with those that say which job it is of and its seal.</summary>
    public static (string Name, object Value)[] Values(PrintedJob job, LoggedBuild build) => BuildColumns.Sealed(
    [
        ("build", build.Number),
        ("order_number", job.Order),
        ("piece", job.Piece),
        ("tag", job.Tag),
        ("set_nm", build.Built.Posts.Nanometers),
        ("turns", build.Built.Turns),
        ("measured_nm", build.Built.Measured.Nanometers),
        ("load_un", build.Built.Load.Micronewtons),
        ("minutes", build.Built.Minutes),
        ("who", build.Built.Who),
        ("logged_at", UtcTime.Write(build.LoggedAt)),
        ("left_out", build.IsLeftOut ? 1L : 0L),
        ("lots", string.Join(ListSeparator, build.Built.Lots)),
        ("build_bench", build.Bench),
        ("struck", build.IsStruck ? 1L : 0L),
        ("replaces", build.Replaces),
        ("spools", string.Join(ListSeparator, build.Built.Spools.Select(s => FormattableString.Invariant($"{s.Spool}{LengthSeparator}{s.Length.Nanometers}")))),
    ]);

    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public static PrintedJob Job(DbDataReader row)
    {
        JobColumns.Hold(row, "seal", $"job {row["number"]}");
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
            Notes = row.Text("notes"),
            Language = row.Text("language"),
            Units = BookWords.Unit(row.Text("units")),
            Accessories = row.List("accessories"),
            Bench = row.Text("bench"),
            Mark = BookWords.Mark(row.Text("mark")),
            RemadeFrom = row.Whole("remade_from"),
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

        BuildColumns.Hold(row, "build_seal", $"build {row["build"]}");
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
                Lots = row.List("lots"),
                Spools = row.List("spools").Select(Use).ToValueList(),
            },
            UtcTime.Read(row.Text("logged_at")),
            row.Whole("left_out") != 0)
        {
            Bench = row.Text("build_bench"),
            IsStruck = row.Whole("struck") != 0,
            Replaces = row.Whole("replaces"),
        };
    }

    /// <summary>The seals of all builds of some jobs.</summary>
    public static IReadOnlyList<long> SealsOf(IEnumerable<PrintedJob> jobs) =>
        [.. jobs.SelectMany(j => j.Builds.Select(b => (long)Values(j, b)[^1].Value))];

    private static SpoolUse Use(string text)
    {
        var parts = text.Split(LengthSeparator, 2);
        return new SpoolUse(long.Parse(parts[0], CultureInfo.InvariantCulture), Length.FromNanometers(long.Parse(parts[1], CultureInfo.InvariantCulture)));
    }

    private static ValueList<string> List(this DbDataReader row, string column) =>
        row.Text(column).Split(ListSeparator, StringSplitOptions.RemoveEmptyEntries).ToValueList();
}
