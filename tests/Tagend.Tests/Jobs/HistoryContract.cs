using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>What every kind of job book must do with what became of pieces and builds.</summary>
public abstract class HistoryContract : SpoolsContract
{
    [Fact]
    public void Enter_WhatBecameOfAnOrder_MarksItsPiecesAndStaysInTheLog()
    {
        using var book = Open("bench 2");
        var (text, buss) = (TestBook.Piece(), TestBook.Piece(cells: ("piece", "buss")));
        book.Record([text, buss, TestBook.Piece(cells: ("order", "D-2"))]);
        Assert.Equal([PieceState.Printed, PieceState.Printed], States(book));
        book.Enter("D-101", "buss", EventKind.Cancelled, "AB", "called off", Guid.NewGuid());
        Assert.Equal([PieceState.Printed, PieceState.Cancelled], States(book));
        book.Enter("D-101", null, EventKind.Remade, "", "loops too wide", Guid.NewGuid());
        Assert.Equal([PieceState.Remade, PieceState.Cancelled], States(book));
        book.Enter("D-101", null, EventKind.Shipped, "", "", Guid.NewGuid());
        Assert.Equal([PieceState.Shipped, PieceState.Cancelled], States(book));
        book.Enter("D-101", null, EventKind.Cancelled, "", "too late", Guid.NewGuid());
        Assert.Equal([PieceState.Shipped, PieceState.Cancelled], States(book));
        Assert.Equal(["D-2"], book.Find(new JobSearch { IsOpen = true }).Select(j => j.Order));
        var reopened = book.Enter("D-101", "buss", EventKind.Reopened, "", "came back", Guid.NewGuid());
        Assert.Equal(PieceState.Printed, Assert.Single(reopened).State);
        Assert.Equal(["D-101", "D-101", "D-2"], book.Find(new JobSearch { IsOpen = true }).Select(j => j.Order));
        Assert.Equal(
            [
                ("buss", EventKind.Cancelled, new EventNote("AB", "bench 2", "called off")),
                ("", EventKind.Remade, new EventNote("", "bench 2", "loops too wide")),
                ("", EventKind.Shipped, new EventNote("", "bench 2", "")),
                ("", EventKind.Cancelled, new EventNote("", "bench 2", "too late")),
                ("buss", EventKind.Reopened, new EventNote("", "bench 2", "came back")),
            ],
            book.Events("D-101").Select(e => (e.Piece, e.What, e.Note)));
        Assert.All(book.Events("D-101"), e => Assert.Equal(("D-101", 0, StoppedClock.Now), (e.Order, e.Build, e.At)));
        Assert.Empty(book.Events("D-2"));
    }

    [Fact]
    public void Enter_PieceThatIsMadeAgain_IsBuiltByALaterBuildAlone()
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        Assert.Equal(PieceState.Remade, Assert.Single(book.Enter("D-101", "string", EventKind.Remade, "", "cut", Guid.NewGuid())).State);
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Assert.Equal([PieceState.Built], States(book));
        book.Enter("D-101", "string", EventKind.Remade, "", "cut again", Guid.NewGuid());
        Assert.Equal([PieceState.Remade], States(book));
        // Correcting what was built before does not build it again.
        var corrected = book.Correct(1, TestBook.Built with { Turns = 44 }, "", "", Guid.NewGuid());
        Assert.Equal([PieceState.Remade], States(book));
        book.Correct(corrected.Number, TestBook.Built with { Turns = 43 }, "", "", Guid.NewGuid());
        Assert.Equal([PieceState.Remade], States(book));
        var again = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Assert.Equal([PieceState.Built], States(book));
        book.Strike(again.Number, "", "", Guid.NewGuid());
        Assert.Equal([PieceState.Remade], States(book));
        Assert.Equal(4, book.Built()[0].Builds.Count);
    }

    [Theory]
    [InlineData("D-9", null, "there is no order D-9 in the job book: check the number")]
    [InlineData("D-101", "yoke", "there is no piece yoke of order D-101 in the job book; it has string")]
    public void Enter_WhatTheBookDoesNotHave_IsRefusedAndNotInTheLog(string order, string? piece, string message)
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        Assert.Equal(message, Assert.Throws<TagendException>(() => book.Enter(order, piece, EventKind.Shipped, "", "", Guid.NewGuid())).Message);
        Assert.Empty(book.Events(order));
        Assert.Equal([PieceState.Printed], States(book));
    }

    [Fact]
    public void Enter_TheSameWriteAgain_IsInTheLogOnceAndChangesNothingLater()
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        var key = Guid.NewGuid();
        book.Enter("D-101", null, EventKind.Cancelled, "", "", key);
        book.Enter("D-101", null, EventKind.Reopened, "", "", Guid.NewGuid());
        book.Enter("D-101", null, EventKind.Cancelled, "", "", key);
        Assert.Equal([PieceState.Printed], States(book));
        Assert.Equal(2, book.Events("D-101").Count);
    }

    [Fact]
    public void Correct_Build_KeepsTheFirstAndPutsAnotherInItsPlace()
    {
        using var book = Open("bench 1");
        var first = book.Log(TestBook.Piece().Spec, TestBook.Built with { Lots = ["L1"] }, Guid.NewGuid());
        var key = Guid.NewGuid();
        var right = TestBook.Built with { Turns = 44, Lots = ["L2"] };
        var second = book.Correct(first.Number, right, "CD", "read wrong", key);
        Assert.Equal(second, book.Correct(first.Number, right, "CD", "read wrong", key));
        var job = Assert.Single(book.Built());
        Assert.Equal([first with { IsStruck = true }, second], job.Builds);
        Assert.Equal((right, first.Number, false, "bench 1"), (second.Built, second.Replaces, second.IsStruck, second.Bench));
        Assert.Equal([second], job.Standing);
        Assert.Equal([second.Number], BuildPoint.Of([job]).Select(b => b.Number));
        var entry = Assert.Single(book.Events("D-101"));
        Assert.Equal(("string", EventKind.Corrected, first.Number, new EventNote("CD", "bench 1", "read wrong")), (entry.Piece, entry.What, entry.Build, entry.Note));
        Assert.Single(book.Find(new JobSearch { Lot = "L2" }));
        // The one that stands for it may be corrected in its turn.
        Assert.Equal(first.Number, book.Correct(second.Number, right, "", "", Guid.NewGuid()).Replaces);
    }

    [Fact]
    public void Strike_Build_LeavesThePieceToBeBuilt()
    {
        using var book = Open();
        var build = book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number;
        Assert.Equal([PieceState.Built], States(book));
        var key = Guid.NewGuid();
        book.Strike(build, "AB", "scanned twice", key);
        book.Strike(build, "AB", "scanned twice", key);
        Assert.Equal([PieceState.Printed], States(book));
        Assert.Empty(BuildPoint.Of(book.Built()));
        Assert.Equal((EventKind.Struck, build), book.Events("D-101").Select(e => (e.What, e.Build)).Single());
        foreach (var use in new Action[]
        {
            () => book.Strike(build, "", "", Guid.NewGuid()), () => book.Correct(build, TestBook.Built, "", "", Guid.NewGuid()),
        })
        {
            Assert.Equal("build 1 was struck or corrected earlier and no longer counts: see which build of the piece stands now", Assert.Throws<TagendException>(use).Message);
        }

        Assert.Equal("there is no build 77 in the job book: check the number", Assert.Throws<TagendException>(() => book.Strike(77, "", "", Guid.NewGuid())).Message);
        Assert.Single(book.Events("D-101"));
    }

    [Fact]
    public void WithBuild_Number_FindsItsJobWithAllBuilds()
    {
        using var book = Open();
        book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Assert.Equal(("D-101", 2), (book.WithBuild(3)!.Order, book.WithBuild(3)!.Builds.Count));
        Assert.Null(book.WithBuild(4));
    }

    private static IEnumerable<PieceState> States(IJobBook book) => book.Find(new JobSearch { Order = "D-101" }).Select(j => j.State);

    protected static LoggedBuild OnlyBuild(IJobBook book) => Assert.Single(Assert.Single(book.Find(new JobSearch())).Builds);
}
