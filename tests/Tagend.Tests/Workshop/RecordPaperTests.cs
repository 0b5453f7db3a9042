using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Tests.Jobs;
using Tagend.Tests.Specs;
using Tagend.Workshop.Printing;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class RecordPaperTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();
    private readonly TestBook _test = new();

    [Fact]
    public void Of_Order_IsTheNewestPapersWithTheLastBuildThatStands()
    {
        using var book = _test.Open();
        book.Record([TestBook.Piece("Jo Sample"), TestBook.Piece("Jo Sample", cells: ("piece", "buss")), TestBook.Piece("Jo Sample", cells: ("piece", "yoke"))]);
        var first = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built with { Measured = Length.FromInches(60.25), Lots = ["H1"] }, Guid.NewGuid());
        book.Strike(book.Log(TestBook.Piece().Spec, first.Built, Guid.NewGuid()).Number, "AB", "", Guid.NewGuid());
        book.Enter("D-101", "yoke", EventKind.Cancelled, "AB", "", Guid.NewGuid());
        var set = RecordPaper.Of("D-101", book)!;
        Assert.Equal(["string", "buss"], set.Builds.Select(b => b.Spec.Piece));
        Assert.Equal((Length.FromInches(60.25), "H1", "Jo Sample"), (set.Builds[0].Measured!.Length, set.Builds[0].Measured!.Lots[0], set.Builds[0].Slip.Customer));
        Assert.Null(set.Builds[1].Measured);
        Assert.Null(RecordPaper.Of("D-102", book));
    }

    [Fact]
    public void Print_WithTags_IsARecordAndItsTags()
    {
        using var book = _test.Open();
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        var plan = new RecordPlan { Folder = _folder.Path, HasTags = true, Language = "de" };
        var (papers, problems) = RecordPaper.Print(RecordPaper.Of("D-101", book)!, SpecFixture.Catalog, plan, SpecFixture.Date);
        Assert.Empty(problems);
        Assert.Equal([1, 2], papers.Select(p => p.Pages));
        Assert.Equal(["D-101-record.pdf", "D-101-tags.pdf"], _folder.Files);
    }

    public void Dispose()
    {
        _folder.Dispose();
        _test.Dispose();
    }
}
