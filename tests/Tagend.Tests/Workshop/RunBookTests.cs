using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Tests.Jobs;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class RunBookTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    private static BuildSet Set => new("D-101", [TestBook.Piece()]);

    [Fact]
    public void Record_Twice_EntersOnceAndSaysWhatItHas()
    {
        var book = _folder.Book;
        Assert.Equal(new BookEntry(_folder["book.db"], 1, 0), book.Record([Set]));
        Assert.Equal(new BookEntry(_folder["book.db"], 0, 1), book.Record([Set]));
        Assert.Null(book.Fault);
    }

    [Fact]
    public void Record_NothingOrWithoutABook_IsNothing()
    {
        Assert.Null(_folder.Book.Record([]));
        Assert.Null(WorkshopFolder.NoBook.Record([Set]));
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Record_WhereTheBookFails_SaysSoOnceAndLeavesItAlone()
    {
        var address = new BrokenAddress();
        var book = new RunBook(address, TimeProvider.System);
        Assert.Null(book.Record([Set]));
        Assert.Null(book.Record([Set]));
        Assert.Empty(book.Fits(SpecFixture.Catalog));
        Assert.Equal(new BookFault(BrokenAddress.Reason, "what is printed is not entered in it"), book.Fault);
        Assert.Equal(1, address.Tries);
    }

    [Fact]
    public void Fits_WithoutABookYet_AreNoneAndBeginNone()
    {
        Assert.Empty(_folder.Book.Fits(SpecFixture.Catalog));
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Fits_OfTwoBuilds_AreOfTheirMaterial()
    {
        using (var book = Open())
        {
            var log = new BenchLog(book, LengthUnit.Inch);
            log.Log(SpecFixture.Good(), TestBook.Built);
            log.Log(SpecFixture.Good(), TestBook.Built with { Turns = 44 });
        }

        Assert.Equal(("hmpe-0145", 24), _folder.Book.Fits(SpecFixture.Catalog).Select(f => (f.Material, f.Strands)).Single());
    }

    [Fact]
    public void Fits_OfASecondRun_AreReadAgainOnlyWhereABuildOrTheCatalogIsAnother()
    {
        var memory = new FitMemory();
        using var book = Open();
        var log = new BenchLog(book, LengthUnit.Inch);
        log.Log(SpecFixture.Good(), TestBook.Built);
        log.Log(SpecFixture.Good(), TestBook.Built with { Turns = 44 });
        var first = Fits(SpecFixture.Catalog);
        Assert.Equal(2, Assert.Single(first).Builds);
        Assert.Same(first, Fits(SpecFixture.Catalog));
        var soft = SpecFixture.Catalog.Materials.ToDictionary(m => m.Key, m => m.Value with { Settle = 0.01 });
        Assert.Equal(0.01, Assert.Single(Fits(SpecFixture.Catalog with { Materials = soft })).Settle);
        log.Log(SpecFixture.Good(), TestBook.Built with { Turns = 43 });
        Assert.Equal(3, Assert.Single(Fits(SpecFixture.Catalog)).Builds);
        book.LeaveOut([1], isLeftOut: true);
        Assert.Equal(2, Assert.Single(Fits(SpecFixture.Catalog)).Builds);

        // Each run has a book of its own.
        ValueList<FittedTakeUp> Fits(ShopCatalog catalog) =>
            new RunBook(new SqliteAddress(_folder["book.db"]), TimeProvider.System, "", memory).Fits(catalog);
    }

    [Fact]
    public void Find_ATagsText_IsItsPiece()
    {
        using var book = Open();
        var spec = SpecFixture.Good();
        Assert.Equal(new FoundPiece(spec, null), new BenchLog(book, LengthUnit.Inch).Find(TagWriter.Write(spec)));
    }

    [Fact]
    public void Find_AnOrderAndPieceThatWasPrinted_IsItsNewestIssue()
    {
        _folder.Book.Record([Set]);
        _folder.Book.Record([new BuildSet("D-101", [TestBook.Piece(cells: ("revision", "2"))])]);
        using var book = Open();
        Assert.Equal(2, new BenchLog(book, LengthUnit.Inch).Find(" d-101/string ").Spec!.Revision);
    }

    [Fact]
    public void Find_AnythingElse_SaysWhatItIs()
    {
        using var book = Open();
        var log = new BenchLog(book, LengthUnit.Inch);
        var bag = TagWriter.Write(new BuildSet("D-101", [TestBook.Piece(), TestBook.Piece(cells: ("piece", "second"))]));
        Assert.Equal("this is the tag of a bag that holds string, second: scan the card or the loop tag of one piece", log.Find(bag!).Error);
        Assert.StartsWith("1001/string is not in the job book", log.Find("1001/string").Error, StringComparison.Ordinal);
        Assert.StartsWith("\"hello\": expected an order and its piece", log.Find("hello").Error, StringComparison.Ordinal);
        Assert.StartsWith("the tag is damaged", log.Find(TagWriter.Write(SpecFixture.Good())[..^9]).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Log_ValuesGiven_TakesTheRestFromTheCard()
    {
        using var book = Open();
        var spec = SpecFixture.Good();
        var answer = new BenchLog(book, LengthUnit.Inch).Log(TagWriter.Write(spec), new Dictionary<string, string> { ["length"] = "60 5/16", ["who"] = "AB" }, isAnother: false);
        Assert.Null(answer.Error);
        Assert.Equal(BuiltQuestion.CardOf(spec) with { Measured = Length.FromInches(60.3125), Who = "AB" }, answer.Logged!.Build.Built);
        Assert.True(Assert.Single(book.Find(new JobSearch())).Builds.Count == 1);
    }

    [Theory]
    [InlineData("D-101/string", "turns", "44", true, "length is needed: it is what the log is for")]
    [InlineData("D-101/string", "length", "6o", true, "length \"6o\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("D-101/buss", "length", "60", false, "D-101/buss is not in the job book: check the name, or scan the card")]
    public void Log_WhatCannotBe_SaysWhatIsWrongAndLogsNothing(string piece, string name, string text, bool isKnown, string error)
    {
        _folder.Book.Record([Set]);
        using var book = Open();
        Assert.Equal(new LogAnswer(null, null, error, isKnown), new BenchLog(book, LengthUnit.Inch).Log(piece, new Dictionary<string, string> { [name] = text }, isAnother: false));
        Assert.Empty(book.Find(new JobSearch { IsBuilt = true }));
    }

    [Fact]
    public void JobsFile_OfABook_IsWholeOrSaysWhyNot()
    {
        _folder.Book.Record([Set]);
        using var book = Open();
        JobsFile.Write(_folder["jobs.csv"], book.Find(new JobSearch()), LengthUnit.Inch);
        Assert.Contains("D-101,string,", File.ReadAllText(_folder["jobs.csv"]), StringComparison.Ordinal);
        Assert.Throws<Tagend.Problems.TagendException>(() => JobsFile.Write(_folder.Path, book.Find(new JobSearch()), LengthUnit.Inch));
    }

    private IJobBook Open() => new SqliteAddress(_folder["book.db"]).OpenOrBegin(TimeProvider.System);

    public void Dispose() => _folder.Dispose();
}
