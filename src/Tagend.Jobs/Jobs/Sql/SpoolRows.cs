using System.Data.Common;
using System.Globalization;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Jobs.Sql;

/// <summary>The rows of the tables of spools and of what was taken from them, and what they say.</summary>
internal static class SpoolRows
{
    /// <summary>The columns of a spool that its seal holds.</summary>
    private static readonly SealedColumns SpoolColumns =
        new(["number", "kind", "name", "color", "lot", "received_nm", "received_on", "bench", "finished", "write_key"], []);

    /// <summary>The columns of a use that its seal holds.</summary>
    private static readonly SealedColumns UseColumns = new(["use_number", "number", "build", "length_nm", "use_key"], []);

    private static readonly (StockKind Kind, string Word)[] Kinds = [(StockKind.Strand, "strand"), (StockKind.Thread, "thread")];

    /// <summary>Selects spools with their uses and counts, a row each. A use of a build has its number, a count has none.</summary>
    public const string Select =
        """
        SELECT s.number, s.kind, s.name, s.color, s.lot, s.received_nm, s.received_on, s.bench, s.finished, s.write_key, s.seal, s.uses,
            u.number AS use_number, u.build, u.length_nm, u.write_key AS use_key, u.seal AS use_seal, b.struck
        FROM spools s LEFT JOIN spool_uses u ON u.spool = s.number LEFT JOIN builds b ON b.number = u.build
        """;

    /// <summary>A spool's row without what is on it now.</summary>
    /// <param name="Key">Of the write that entered it.</param>
    /// <param name="Uses">How many rows of uses and counts it has.</param>
    public sealed record Entry(ReceivedSpool Spool, string Bench, bool IsFinished, string Key, long Uses);

    /// <param name="Build">Null for a count.</param>
    /// <param name="Length">Taken, or what was found on the spool.</param>
    /// <param name="IsStruck">The build was struck, and what it took is on the spool again.</param>
    public sealed record Use(long? Build, Length Length, bool IsStruck);

    /// <summary>The values of a spool by column, with its seal.</summary>
    public static (string Name, object Value)[] Values(Entry entry) => SpoolColumns.Sealed(
    [
        ("number", entry.Spool.Number),
        ("kind", Array.Find(Kinds, k => k.Kind == entry.Spool.Kind).Word),
        ("name", entry.Spool.Name),
        ("color", entry.Spool.Color),
        ("lot", entry.Spool.Lot),
        ("received_nm", entry.Spool.Length.Nanometers),
        ("received_on", DateWriter.Iso(entry.Spool.Received)),
        ("bench", entry.Bench),
        ("finished", entry.IsFinished ? 1L : 0L),
        ("write_key", entry.Key),
    ]);

    /// <summary>The values of a use or a count by column, with its seal.</summary>
    /// <param name="build">Its number; no value for a count.</param>
    public static (string Name, object Value)[] UseValues(long number, long spool, object build, Length length, string key) =>
        UseColumns.Sealed([("use_number", number), ("number", spool), ("build", build), ("length_nm", length.Nanometers), ("use_key", key)]);

    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public static Entry Spool(DbDataReader row)
    {
        SpoolColumns.Hold(row, "seal", $"spool {row["number"]}");
        var kind = row.Text("kind");
        return new Entry(
            new ReceivedSpool(
                row.Whole("number"),
                Kinds.Single(k => k.Word == kind).Kind,
                row.Text("name"),
                row.Text("color"),
                row.Text("lot"),
                row.Length("received_nm"),
                DateOnly.ParseExact(row.Text("received_on"), "yyyy-MM-dd", CultureInfo.InvariantCulture)),
            row.Text("bench"),
            row.Whole("finished") != 0,
            row.Text("write_key"),
            row.Whole("uses"));
    }

    /// <returns>Null where the spool has none.</returns>
    /// <exception cref="InvalidDataException">The row does not fit its seal.</exception>
    public static Use? UseOf(DbDataReader row)
    {
        if (row.IsDBNull(row.GetOrdinal("use_number")))
        {
            return null;
        }

        UseColumns.Hold(row, "use_seal", $"use {row["use_number"]} of spool {row["number"]}");
        return row.IsDBNull(row.GetOrdinal("build"))
            ? new Use(null, row.Length("length_nm"), IsStruck: false)
            : new Use(row.Whole("build"), row.Length("length_nm"), row.Whole("struck") != 0);
    }
}
