using System.Data.Common;
using System.Globalization;
using Tagend.Measures;

namespace Tagend.Jobs.Sql;

/// <summary>The rows of a book's tables as values, each read by its columns' names.</summary>
internal static class JobRows
{
    /// <summary>Of jobs.</summary>
    public const string JobColumns =
        "number, order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm, posts_nm, "
        + "customer, bow, due, tag, printed_at";

    /// <summary>Of builds, each beside its job's.</summary>
    public const string BuildColumns =
        "b.number AS build, b.posts_nm AS set_nm, b.turns, b.measured_nm, b.load_un, b.minutes, b.who, b.logged_at, b.left_out";

    public static PrintedJob Job(DbDataReader row) => new()
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

    /// <returns>Null where the job has no build.</returns>
    public static LoggedBuild? Build(DbDataReader row) => row.IsDBNull(row.GetOrdinal("build")) ? null : new LoggedBuild(
        row.Whole("build"),
        new AsBuilt
        {
            Posts = row.Length("set_nm"),
            Turns = row.GetDouble(row.GetOrdinal("turns")),
            Measured = row.Length("measured_nm"),
            Load = Force.FromMicronewtons(row.Whole("load_un")),
            Minutes = row.GetDouble(row.GetOrdinal("minutes")),
            Who = row.Text("who"),
        },
        UtcTime.Read(row.Text("logged_at")),
        row.Whole("left_out") != 0);

    private static string Text(this DbDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    private static long Whole(this DbDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    private static Length Length(this DbDataReader row, string column) => Measures.Length.FromNanometers(row.Whole(column));
}
