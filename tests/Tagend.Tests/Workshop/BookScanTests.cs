using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Tags;
using Tagend.Workshop.Books;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class BookScanTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("1001/buss", "buss 1")]
    [InlineData("#1001", "string 1, buss 1")]
    [InlineData("1002", "string 2")]
    [InlineData("1003", null)]
    [InlineData("1001/yoke", null)]
    [InlineData("1001/a/b", null)]
    [InlineData("photo.jpg", null)]
    public void Find_OrderOrPiece_IsItsNewestIssue(string text, string? found)
    {
        _folder.Book.Record(_folder.Check().Report.MakeSets());
        _folder.Book.Record(_folder.Check(WorkshopFolder.Orders.Replace("57 5/8", "57 3/4", StringComparison.Ordinal), _folder.Book).Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        var scan = BookScan.Find(text, book);
        Assert.Equal(found, scan is null ? null : string.Join(", ", scan.Specs.Select(s => $"{s.Piece} {s.Revision}")));
        Assert.Equal(found, scan is null ? null : string.Join(", ", scan.Issues.Select(s => $"{s.Piece} {s.Revision}")));
    }

    [Fact]
    public void Find_OrderWithACancelledPiece_IsWithoutIt()
    {
        _folder.Book.Record(_folder.Check().Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        book.Enter("1001", "buss", EventKind.Cancelled, "", "not wanted", Guid.NewGuid());
        Assert.Equal(["string"], BookScan.Find("1001", book)!.Specs.Select(s => s.Piece));
        Assert.IsType<TagReading.Piece>(BookScan.Find("1001/buss", book)!.Reading);
    }
}
