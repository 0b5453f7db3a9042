using System.Text;
using CsvHelper;
using Tagend.Jobs;
using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Jobs;

public class JobTableTests
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("=HYPERLINK(\"http://example.invalid\",\"x\")")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    [InlineData("＝1+1")]
    [InlineData("＋1")]
    [InlineData("－1")]
    [InlineData("＠SUM(A1)")]
    public void Write_TextThatASpreadsheetWouldRun_IsMadeText(string evil)
    {
        var (header, rows) = Read([Job with { Customer = evil, Bow = evil, Due = evil, Builds = [Logged(evil)] }]);
        foreach (var column in new[] { "customer", "bow", "due", "who" })
        {
            Assert.Equal("'" + evil, Assert.Single(rows)[Array.IndexOf(header, column)]);
        }
    }

    [Fact]
    public void Write_QuotesCommasAndLines_ComeBack()
    {
        const string Awkward = "Example \"club\", 2nd floor\nback door";
        var (header, rows) = Read([Job with { Customer = Awkward }]);
        Assert.Equal(Awkward, rows[0][Array.IndexOf(header, "customer")]);
    }

    [Fact]
    public void Write_JobWithTwoBuilds_HasARowForEach()
    {
        var (header, rows) = Read([Job with { Builds = [Logged("AB"), Logged("CD")] }, Job]);
        Assert.Equal(3, rows.Count);
        Assert.Equal(["AB", "CD", ""], rows.Select(r => r[Array.IndexOf(header, "who")]));
        Assert.Equal("60.28125", rows[0][Array.IndexOf(header, "measured_in")]);
        Assert.Equal("300", rows[0][Array.IndexOf(header, "load_lbf")]);
    }

    private static PrintedJob Job { get; } = new()
    {
        Number = 1,
        Order = "D-1",
        Piece = "string",
        Revision = 1,
        Issued = new DateOnly(2026, 3, 14),
        Kind = "compound-string",
        Material = "hmpe-0145",
        Strands = 24,
        FinishedLength = Length.FromInches(60.25),
        Tolerance = Length.FromInches(0.0625),
        LaidUpLength = Length.FromInches(60.79),
        Posts = Length.FromInches(60.387),
        Customer = "",
        Bow = "",
        Due = "",
        Tag = "TE1*",
        PrintedAt = DateTimeOffset.UnixEpoch,
    };

    private static LoggedBuild Logged(string who) => new(1, TestBook.Built with { Who = who }, DateTimeOffset.UnixEpoch, IsLeftOut: false);

    private static (string[] Header, List<string[]> Rows) Read(IEnumerable<PrintedJob> jobs)
    {
        using var written = new MemoryStream();
        JobTable.Write(jobs, LengthUnit.Inch, written);
        Assert.Equal(Encoding.UTF8.GetPreamble(), written.ToArray()[..3]);
        using var csv = CsvReader.Create(written.ToArray()[3..], CsvReaderOptions.Default with { HasHeader = false });
        var rows = new List<string[]>();
        while (csv.Read())
        {
            rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i))]);
        }

        return (rows[0], rows[1..]);
    }
}
