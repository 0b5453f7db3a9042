using Tagend.Jobs;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>A book as version 1 of its kind made it: brought up to date when it is opened, and nothing of it lost.</summary>
public abstract class OlderBookContract : CopyContract
{
    /// <summary>A tag of version 1 says less than one of today, but it is the same piece.</summary>
    private const string TagOfVersionOne =
        "TE1*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L60.25/.0625*W70*MHMPE-0145/24/.07941976*T45/R/.54/.5186121/0/C"
        + "*J1/.25/60.38706386/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T019/.019/RED"
        + "*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75*B696.9599998*X300/20/60.54963717*G*Q3882*E7746C85C";

    /// <summary>The one job of the old book. Seals are by Python's zlib.crc32 over the row's values, each with U+001F behind it.</summary>
    protected static OldJob Old { get; } = new("OLD-1", 2, "TE1*OLD", 1668572107);

    /// <summary>The same with the tag of a piece that can be printed today.</summary>
    private static OldJob OldTag { get; } = new("D-101", 1, TagOfVersionOne, 1998073312);

    /// <summary>The statements that make such a book, with the job in it.</summary>
    protected abstract string VersionOne(OldJob job);

    /// <summary>Runs statements at the book's own tables.</summary>
    protected abstract void Run(string sql);

    [Fact]
    public void Open_BookOfVersionOne_KeepsItsJobsAndTakesBuilds()
    {
        Run(VersionOne(Old));
        using var book = Open("bench 1");
        var job = Assert.Single(book.Find(new JobSearch { Order = "OLD-1" }));
        Assert.Equal(
            (new DateOnly(2025, 1, 31), 2, "Example club", PieceState.Printed, "", 0),
            (job.Issued, job.Revision, job.Customer, job.State, job.Bench, job.Builds.Count));
        Assert.Equal(1, book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number);
        Assert.Equal(2, book.Find(new JobSearch()).Count());
    }

    [Fact]
    public void Open_BookOfVersionOne_DoesWhatCameLater()
    {
        Run(VersionOne(Old));
        using var book = Open("bench 1");
        book.Enter("OLD-1", null, EventKind.Cancelled, "AB", "called off", Guid.NewGuid());
        Assert.Equal(PieceState.Cancelled, Assert.Single(book.Find(new JobSearch())).State);
        Assert.Equal("called off", Assert.Single(book.Events("OLD-1")).Note.Reason);
        book.KeepLabel("sheet-10", 4);
        Assert.Equal(4, book.NextLabel("sheet-10"));
        book.Spools.Receive([Black], Guid.NewGuid());
        Assert.Equal(1, Assert.Single(book.Spools.All(withFinished: false)).Spool.Number);
        Assert.Equal(1, book.Forget("example CLUB"));
    }

    [Fact]
    public void Record_PieceWithATagOfVersionOne_IsTheSameEntry()
    {
        Run(VersionOne(OldTag));
        using var book = Open();
        Assert.Equal(0, book.Record([TestBook.Piece()]));
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        var job = Assert.Single(book.Find(new JobSearch()));
        Assert.Equal((TagOfVersionOne, 1), (job.Tag, job.Builds.Count));
    }

    [Fact]
    public void Open_BookOfVersionOne_IsSearchedAndHeldToItsSealsLikeANewOne()
    {
        Run(VersionOne(Old));
        using var book = Open();
        Assert.Single(book.Find(new JobSearch { Customer = "PLE CL", Bow = "Compound" }));
        Run("UPDATE jobs SET laid_up_nm = laid_up_nm + 65536");
        Assert.Contains("(job 1 does not fit its check)", Assert.Throws<TagendException>(() => book.Find(new JobSearch()).Count()).Message, StringComparison.Ordinal);
    }

    /// <param name="Seal">Of its row, where the version has seals.</param>
    protected sealed record OldJob(string Order, int Revision, string Tag, long Seal);
}
