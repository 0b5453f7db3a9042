using System.Text;
using CsvHelper;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>PostgreSQL's own programs against ours: what a dump says, and whether the tables are sound.</summary>
public sealed class PostgresDumpTests(PostgresServer server) : IClassFixture<PostgresServer>
{
    /// <summary>The columns of <see cref="JobTable"/> in inches, as psql computes them; all but the state, which no column has.</summary>
    private const string Rows =
        """
        SELECT order_number, piece, revision, issued, kind, material, strands, inches(finished_nm), inches(tolerance_nm), inches(j.posts_nm),
            customer, bow, due, printed_at, tag, b.number, inches(b.posts_nm), plain(turns::numeric), inches(measured_nm),
            plain(load_un / 4448221.6152605), plain(minutes::numeric), who, logged_at, CASE left_out WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END,
            replace(lots, chr(10), ', '), j.bench, b.bench, CASE struck WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END, nullif(replaces, 0),
            regexp_replace(replace(spools, chr(10), ', '), ':[0-9]+', '', 'g')
        FROM tagend.jobs j LEFT JOIN tagend.builds b ON b.job = j.number ORDER BY j.number, b.number
        """;

    private const string Functions =
        """
        CREATE FUNCTION plain(n numeric) RETURNS text LANGUAGE sql AS 'SELECT trim_scale(round(n, 5))::text';
        CREATE FUNCTION inches(nm bigint) RETURNS text LANGUAGE sql AS 'SELECT plain(nm / 25400000.0)';
        """;

    [Fact]
    public void Dump_ReadByPsqlInAnotherDatabase_AgreesWithOurCsv()
    {
        var (address, copy) = (server.NewDatabase(), server.NewDatabase());
        using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System, "left");
        book.Spools.Receive([new NewSpool(StockKind.Strand, "hmpe-0145", "black", "H88-4", Length.FromMillimeters(900_000), new DateOnly(2026, 3, 14))], Guid.NewGuid());
        book.Record(
        [
            TestBook.Piece("Éxample \"club\", two\nlines", "compound bow; 70 lb"), TestBook.Piece(cells: ("order", "D-2")), TestBook.Piece(cells: ("piece", "buss")),
        ]);
        var built = TestBook.Built with { Turns = 45.5, Minutes = 1 / 3.0, Lots = ["H88-4", "T 0210"], Spools = [new SpoolUse(1, Length.FromMillimeters(12_345))] };
        var first = book.Log(TestBook.Piece().Spec, built, Guid.NewGuid());
        book.LeaveOut([book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built, Guid.NewGuid()).Number], isLeftOut: true);
        book.Correct(first.Number, built with { Measured = Length.FromMillimeters(1530.4) }, "AB", "", Guid.NewGuid());

        var file = Path.GetTempFileName();
        try
        {
            server.Client("pg_dump", "-d", NameOf(address), "-f", file);
            server.Client("psql", "-q", "-v", "ON_ERROR_STOP=1", "-d", NameOf(copy), "-f", file);
        }
        finally
        {
            File.Delete(file);
        }

        server.Client("psql", "-q", "-v", "ON_ERROR_STOP=1", "-d", NameOf(copy), "-c", Functions);
        using var ours = new MemoryStream();
        JobTable.Write(book.Find(new JobSearch()), LengthUnit.Inch, ours);
        var rows = Read(ours.ToArray()[Encoding.UTF8.GetPreamble().Length..]);
        var state = rows[0].ToList().IndexOf("state");
        var expected = Read(Encoding.UTF8.GetBytes(server.Client("psql", "-d", NameOf(copy), "--csv", "-t", "-c", Rows)));
        Assert.Equal(4, expected.Count);
        Assert.Equal(expected, rows.Skip(1).Select(r => r.Where((_, i) => i != state)));
    }

    [Fact]
    public void Amcheck_OfABookThatWasUsed_FindsNothing()
    {
        var address = server.NewDatabase();
        using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
        var spec = TestBook.Piece().Spec;
        book.Record(Enumerable.Range(1, 600).Select(i => new Build(spec with { Order = $"N-{i}" }, new Tagend.Orders.OrderSlip($"Club {i}", "bow", "", ""))));
        book.Forget("club 7");
        Assert.Equal("", server.Client("pg_amcheck", "--install-missing", "--heapallindexed", "-d", NameOf(address)));
    }

    private static string NameOf(string address) => address[(address.IndexOf("@/", StringComparison.Ordinal) + 2)..address.IndexOf('?', StringComparison.Ordinal)];

    private static List<string[]> Read(byte[] bytes)
    {
        using var csv = CsvReader.Create(bytes, CsvReaderOptions.Default with { HasHeader = false });
        var rows = new List<string[]>();
        while (csv.Read())
        {
            rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i))]);
        }

        return rows;
    }
}
