using Microsoft.Data.Sqlite;
using Tagend.Jobs;
using Tagend.Problems;
using Tagend.Tags;
using Xunit;

namespace Tagend.Tests.Jobs;

public class JobBookTests
{
    [Fact]
    public void Record_Specs_AreThereAfterReopening()
    {
        using var test = new TestBook();
        var piece = TestBook.Piece("Example club", "compound bow, hybrid cam, 70 lb");
        using (var book = test.Open())
        {
            Assert.Equal(1, book.Record([piece]));
        }

        using var again = test.Open();
        var job = Assert.Single(again.Find(new JobSearch()));
        Assert.Equal(
            ("D-101", "string", 1, piece.Spec.Date, "Example club", "compound bow, hybrid cam, 70 lb"),
            (job.Order, job.Piece, job.Revision, job.Issued, job.Customer, job.Bow));
        Assert.Equal(TagWriter.Write(piece.Spec), job.Tag);
        Assert.Equal((piece.Spec.LaidUpLength, piece.Spec.Posts.Outside), (job.LaidUpLength, job.Posts));
    }

    [Fact]
    public void Record_TheSameAgain_KeepsOne()
    {
        using var test = new TestBook();
        using var book = test.Open();
        book.Record([TestBook.Piece()]);
        Assert.Equal(1, book.Record([TestBook.Piece(), TestBook.Piece(cells: ("finished_length", "60 1/8 in"))]));
        Assert.Equal(2, book.Find(new JobSearch()).Count);
    }

    public static TheoryData<JobSearch, string> Searches => new()
    {
        { new JobSearch(Order: "D-2"), "D-2/string D-2/buss" },
        { new JobSearch(Order: "D-2", Piece: "buss"), "D-2/buss" },
        { new JobSearch(Customer: "ÉXAMPLE"), "D-1/string" },
        { new JobSearch(Bow: "Crossbow"), "D-2/string" },
        { new JobSearch(From: new DateOnly(2026, 3, 14), To: new DateOnly(2026, 3, 14)), "D-1/string D-2/string D-2/buss" },
        { new JobSearch(From: new DateOnly(2026, 3, 15)), "" },
        { new JobSearch(To: new DateOnly(2026, 3, 13)), "" },
        { new JobSearch(Customer: "' OR 1=1 --"), "" },
        { new JobSearch(Order: "' OR 1=1 --"), "" },
    };

    [Theory]
    [MemberData(nameof(Searches))]
    public void Find_BySearch_GivesWhatFits(JobSearch search, string found)
    {
        using var test = new TestBook();
        using var book = test.Open();
        book.Record(
        [
            TestBook.Piece("Éxample club", "compound bow, 60 lb", ("order", "D-1")),
            TestBook.Piece("Sample", "crossbow, 150 lb", ("order", "D-2")),
            TestBook.Piece("", "", ("order", "D-2"), ("piece", "buss")),
        ]);
        Assert.Equal(found, string.Join(' ', book.Find(search).Select(j => $"{j.Order}/{j.Piece}")));
    }

    [Fact]
    public void Log_Build_ComesBackBitForBit()
    {
        using var test = new TestBook();
        var piece = TestBook.Piece();
        LoggedBuild logged;
        using (var book = test.Open())
        {
            book.Record([piece]);
            logged = book.Log(piece.Spec, TestBook.Built);
        }

        using var again = test.Open();
        var build = Assert.Single(Assert.Single(again.Find(new JobSearch())).Builds);
        Assert.Equal((logged.Number, TestBook.Built, false), (build.Number, build.Built, build.IsLeftOut));
        Assert.Equal(logged.LoggedAt.ToUnixTimeSeconds(), build.LoggedAt.ToUnixTimeSeconds());
    }

    [Fact]
    public void Log_SpecThatWasNotRecorded_EntersItFromItsTag()
    {
        using var test = new TestBook();
        using var book = test.Open();
        book.Log(TestBook.Piece().Spec, TestBook.Built);
        Assert.Single(Assert.Single(book.Find(new JobSearch(Order: "D-101"))).Builds);
    }

    [Fact]
    public void Find_Built_GivesThoseWithABuildOnly()
    {
        using var test = new TestBook();
        using var book = test.Open();
        book.Record([TestBook.Piece(), TestBook.Piece(cells: ("order", "D-2"))]);
        book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built);
        Assert.Equal("D-2", Assert.Single(book.Find(new JobSearch(IsBuilt: true))).Order);
        Assert.Equal(2, book.Find(new JobSearch()).Count);
    }

    [Fact]
    public void LeaveOut_AndTakeIn_AreRemembered()
    {
        using var test = new TestBook();
        using var book = test.Open();
        var number = book.Log(TestBook.Piece().Spec, TestBook.Built).Number;
        book.LeaveOut([number], isLeftOut: true);
        Assert.True(Assert.Single(book.Find(new JobSearch())[0].Builds).IsLeftOut);
        book.LeaveOut([number], isLeftOut: false);
        Assert.False(Assert.Single(book.Find(new JobSearch())[0].Builds).IsLeftOut);
    }

    [Fact]
    public void LeaveOut_OneNumberOfNoBuild_ChangesNone()
    {
        using var test = new TestBook();
        using var book = test.Open();
        var number = book.Log(TestBook.Piece().Spec, TestBook.Built).Number;
        var fault = Assert.Throws<TagendException>(() => book.LeaveOut([number, 77], isLeftOut: true));
        Assert.Equal("there is no build 77 in the job book; tagend jobs --built lists them", fault.Message);
        Assert.False(Assert.Single(book.Find(new JobSearch())[0].Builds).IsLeftOut);
    }

    [Fact]
    public void Record_WhileAnotherRunWrites_SaysSoAfterWaiting()
    {
        using var test = new TestBook();
        using var book = test.Open(TimeSpan.FromSeconds(1));
        using var other = new SqliteConnection($"Data Source={test.Path};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
        {
            var fault = Assert.Throws<TagendException>(() => book.Record([TestBook.Piece()]));
            Assert.Equal($"{test.Path}: another program holds the job book; wait for the other run to end, then run this one again", fault.Message);
        }

        Assert.Equal(1, book.Record([TestBook.Piece()]));
    }

    [Fact]
    public async Task Record_FourRunsAtOnce_EnterAll()
    {
        using var test = new TestBook();
        test.Open().Dispose();
        await Task.WhenAll(Enumerable.Range(0, 4).Select(run => Task.Run(() =>
        {
            foreach (var number in Enumerable.Range(0, 5))
            {
                using var book = test.Open();
                book.Record([TestBook.Piece(cells: ("order", $"R-{run}-{number}"))]);
            }
        })));
        using var all = test.Open();
        Assert.Equal(20, all.Find(new JobSearch()).Count);
    }

    [Fact]
    public void Open_AtRest_IsOneFile()
    {
        using var test = new TestBook();
        using (var book = test.Open())
        {
            book.Record([TestBook.Piece()]);
        }

        Assert.Equal([test.Path], Directory.GetFiles(Path.GetDirectoryName(test.Path)!));
    }
}
