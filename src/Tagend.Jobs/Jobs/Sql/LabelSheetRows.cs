namespace Tagend.Jobs.Sql;

/// <summary>Where the part-used sheets of labels beside each bench go on.</summary>
internal static class LabelSheetRows
{
    private static readonly SealedColumns Columns = new(["bench", "stock", "next_label"], []);

    /// <returns>The first free label, from 1; null where no sheet of the stock is part-used.</returns>
    public static int? Next(SqlStore store, string bench, string stock) => store.Read(
        "SELECT bench, stock, next_label, seal FROM label_sheets WHERE bench = @bench AND stock = @stock",
        row =>
        {
            Columns.Hold(row, "seal", $"the sheet of {row["stock"]}");
            return (int?)checked((int)row.Whole("next_label"));
        },
        ("bench", bench), ("stock", stock)).SingleOrDefault();

    /// <param name="next">The first free label, from 1; 1 for a whole sheet.</param>
    public static void Keep(SqlStore store, string bench, string stock, int next) => store.Run(
        """
        INSERT INTO label_sheets (bench, stock, next_label, seal) VALUES (@bench, @stock, @next_label, @seal)
        ON CONFLICT (bench, stock) DO UPDATE SET next_label = excluded.next_label, seal = excluded.seal
        """,
        Columns.Sealed([("bench", bench), ("stock", stock), ("next_label", (long)next)]));
}
