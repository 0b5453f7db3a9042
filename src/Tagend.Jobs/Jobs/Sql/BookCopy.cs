using Tagend.Problems;

namespace Tagend.Jobs.Sql;

/// <summary>Copies a book to another of any kind, row by row as the columns are.</summary>
internal static class BookCopy
{
    /// <summary>Rows that are read at once.</summary>
    private const int PageSize = 500;

    /// <summary>The tables, each after those its rows refer to, with all columns that every kind of book has.</summary>
    private static readonly (string Table, string[] Columns)[] Tables =
    [
        (
            "jobs",
            [
                "number", "order_number", "piece", "revision", "issued", "kind", "material", "strands", "finished_nm", "tolerance_nm",
                "laid_up_nm", "posts_nm", "customer", "bow", "due", "tag", "printed_at", "customer_folded", "bow_folded", "seal", "builds",
                "notes", "language", "units", "accessories", "bench", "mark", "remade_from",
            ]),
        (
            "builds",
            [
                "number", "job", "posts_nm", "turns", "measured_nm", "load_un", "minutes", "who", "logged_at", "left_out", "lots", "seal", "write_key",
                "bench", "struck", "replaces", "spools",
            ]),
        ("build_lots", ["number", "lot", "build", "job"]),
        ("events", ["number", "order_number", "piece", "what", "build", "at", "who", "bench", "reason", "write_key", "seal"]),
        ("label_sheets", ["number", "bench", "stock", "next_label", "seal"]),
        (
            "spools",
            ["number", "kind", "name", "color", "lot", "received_nm", "received_on", "bench", "finished", "uses", "seal", "write_key"]),
        ("spool_uses", ["number", "spool", "build", "length_nm", "seal", "write_key"]),
    ];

    /// <summary>Copies one state of a book into an empty one, in its writing, and reads each row again there.</summary>
    /// <returns>The number of rows.</returns>
    /// <exception cref="TagendException">The target is not empty, or a row does not come back as it was.</exception>
    public static int Copy(SqlStore from, SqlStore to, string target) => from.Snapshot(() =>
    {
        if (to.Read("SELECT 1 FROM jobs UNION ALL SELECT 1 FROM spools LIMIT 1", _ => 0).Count > 0)
        {
            throw new TagendException(JobWording.NotEmpty(target));
        }

        var rows = Tables.Sum(t => CopyTable(from, to, t.Table, t.Columns));
        to.NumbersAreGiven();
        return rows;
    });

    private static int CopyTable(SqlStore from, SqlStore to, string table, string[] columns)
    {
        var insert = $"INSERT INTO {table} ({string.Join(", ", columns)}) VALUES ({string.Join(", ", columns.Select(c => "@" + c))})";
        var rows = 0;
        for (var after = long.MinValue; ;)
        {
            var page = Page(from, table, columns, after);
            foreach (var row in page)
            {
                to.Run(insert, [.. columns.Zip(row)]);
            }

            if (Page(to, table, columns, after).Zip(page).Any(p => !p.First.SequenceEqual(p.Second)))
            {
                throw new TagendException(JobWording.CopyDiffers(table));
            }

            rows += page.Count;
            if (page.Count < PageSize)
            {
                return rows;
            }

            after = (long)page[^1][0];
        }
    }

    private static List<object[]> Page(SqlStore store, string table, string[] columns, long after) => store.Read(
        $"SELECT {string.Join(", ", columns)} FROM {table} WHERE number > @after ORDER BY number LIMIT {PageSize}",
        row => columns.Select(c => row[c]).ToArray(),
        ("after", after));
}
