using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Jobs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Readings;
using Xunit;

namespace Tagend.Tests.Workshop;

/// <summary>What becomes of orders that were printed, and what is said of it afterwards.</summary>
public sealed class BookLogTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();
    private readonly IReadOnlyList<BuildSet> _sets;
    private readonly IJobBook _book;

    public BookLogTests()
    {
        _sets = _folder.Check().Report.MakeSets();
        _folder.Book.Record(_sets);
        _book = new SqliteAddress(_folder["book.db"]).OpenOrBegin(new StoppedClock(), "bench 1");
    }

    public void Dispose()
    {
        _book.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Enter_WholeOrder_IsOfItsPiecesAndNamesThoseThatAreNotBuilt()
    {
        Bench.Log(_sets[0].Builds[0].Spec, TestBook.Built);
        var answer = Enter("1001", EventKind.Shipped);
        Assert.Null(answer.Error);
        Assert.Equal([("string", PieceState.Shipped), ("buss", PieceState.Shipped)], answer.Pieces.Select(p => (p.Piece, p.State)));
        Assert.Equal(["1001: not logged as built: buss; log it, if its length was measured"], answer.Remarks);
        Assert.Empty(Enter("1001/buss", EventKind.Reopened).Remarks);
    }

    [Theory]
    [InlineData("A\u001B[31m", "", "who \"A\u001B[31m\": expected a name or initials of at most 40 visible characters")]
    [InlineData("AB", "so\u202Eon", "reason \"so\u202Eon\": expected at most 400 visible characters")]
    public void Enter_TextThatCannotBeSeen_IsRefused(string who, string reason, string error)
    {
        var part = OrderPart.Read("1001", out _)!;
        Assert.Equal(error, new BookLog(_book).Enter(part, EventKind.Shipped, who, reason).Error);
        var built = Bench.Log(_sets[0].Builds[0].Spec, TestBook.Built).Build;
        Assert.Equal(error, Assert.Throws<TagendException>(() => Bench.Strike(built.Number, who, reason)).Message);
        Assert.Empty(_book.Events("1001"));
    }

    [Theory]
    [InlineData("1009", EventKind.Shipped, "", "there is no order 1009 in the job book: check the number")]
    [InlineData("1001/yoke", EventKind.Shipped, "", "there is no piece yoke of order 1001 in the job book; it has string, buss")]
    [InlineData("1001", EventKind.Cancelled, "", "1001: give a reason: whoever reads the log later needs it")]
    [InlineData("1001/buss", EventKind.Remade, "", "1001/buss: give a reason: whoever reads the log later needs it")]
    [InlineData("1001", EventKind.Reopened, "", "1001 is neither shipped nor cancelled")]
    [InlineData("1002", EventKind.Cancelled, "why", "1002 is already cancelled (2026-03-14: called off)")]
    [InlineData("1002/string", EventKind.Shipped, "", "1002/string is cancelled (2026-03-14: called off): reopen it first")]
    [InlineData("1002", EventKind.Remade, "why", "1002 is cancelled (2026-03-14: called off): reopen it first")]
    public void Enter_WhatCannotBe_IsRefusedAndNotLogged(string part, EventKind what, string reason, string error)
    {
        Enter("1002", EventKind.Cancelled, "called off");
        var answer = Enter(part, what, reason);
        Assert.Equal((error, 0), (answer.Error, answer.Pieces.Count));
        Assert.Empty(_book.Events("1001"));
        Assert.Single(_book.Events("1002"));
    }

    [Fact]
    public void Enter_OrderWithAPieceThatIsClosed_IsOfTheOthers()
    {
        Enter("1001/buss", EventKind.Cancelled, "not wanted");
        Assert.Equal([PieceState.Shipped, PieceState.Cancelled], Enter("1001", EventKind.Shipped).Pieces.Select(p => p.State));
        Assert.StartsWith("1001 is shipped and cancelled (2026-03-14): reopen it first", Enter("1001", EventKind.Cancelled, "x").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void NewsOf_ScannedPiece_SaysWhatBecameOfIt()
    {
        var spec = _sets[0].Builds[1].Spec;
        var issue = PieceIssue.Of(spec);
        Assert.Empty(PieceNews.Of(issue, _book));
        Enter("1001", EventKind.Cancelled, "called off");
        Assert.Equal(["1001/buss, revision 1: cancelled on 2026-03-14 (called off): do not build it unless it is reopened"], PieceNews.Of(issue, _book));
        Enter("1001/buss", EventKind.Reopened);
        Assert.Empty(PieceNews.Of(issue, _book));
        Enter("1001/buss", EventKind.Remade, "cut");
        Assert.Equal(["1001/buss, revision 1: to be remade on 2026-03-14 (cut)"], PieceNews.Of(issue, _book));
        Enter("1001/buss", EventKind.Shipped);
        Assert.Equal(["1001/buss, revision 1: shipped on 2026-03-14"], Bench.NewsOf(spec));
    }

    [Fact]
    public void Print_CancelledPiece_IsLeftOutAndSaysSo()
    {
        Enter("1001/buss", EventKind.Cancelled, "not wanted");
        Enter("1002", EventKind.Cancelled, "called off");
        var orders = _folder.Check(book: _folder.Book);
        var set = Assert.Single(orders.Report.MakeSets());
        Assert.Equal(["string"], set.Builds.Select(b => b.Spec.Piece));
        Assert.Equal(
            [("piece", "is cancelled, so no papers of it are printed: leave it out of the file, or reopen it first"),
                ("order", "is cancelled, so no papers of it are printed: leave it out of the file, or reopen it first")],
            orders.Report.Problems.Where(p => p.Severity == Severity.Warning && p.At.Column is "piece" or "order").Select(p => (p.At.Column, p.Message)));
        Assert.Empty(OrderChoice.Read(["1001/buss"], out _).Of(orders.Report.Ready));
    }

    [Fact]
    public void Print_CancelledOrder_IsToldOfOnce()
    {
        Enter("1001", EventKind.Cancelled, "called off");
        var problem = Assert.Single(_folder.Check(book: _folder.Book).Report.Problems, p => p.Message.StartsWith("is cancelled", StringComparison.Ordinal));
        Assert.Equal(
            "orders.csv:2: order \"1001\": warning: is cancelled, so no papers of it are printed: leave it out of the file, or reopen it first",
            problem.ToString().Replace(_folder.Path + "/", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Log_TheSameWriteAgain_IsTheSameBuildAndNotAskedAbout()
    {
        var (given, key) = (new Dictionary<string, string> { ["length"] = "38 1/2" }, Guid.NewGuid());
        var first = Bench.Log("1001/buss", given, isAnother: false, key).Logged!.Build;
        Assert.Equal(first, Bench.Log("1001/buss", given, isAnother: false, key).Logged!.Build);
        Assert.NotNull(Bench.Log("1001/buss", given, isAnother: false, Guid.NewGuid()).Before);
    }

    [Fact]
    public void Log_PieceThatIsBuilt_IsAskedAboutUnlessItIsAnother()
    {
        var given = new Dictionary<string, string> { ["length"] = "38 1/2", ["who"] = "AB" };
        var first = Bench.Log("1001/buss", given, isAnother: false).Logged!.Build;
        var second = Bench.Log("1001/buss", given, isAnother: false);
        Assert.Equal((null, null, first), (second.Logged, second.Error, second.Before!.Build));
        Assert.Equal(2, Bench.Log("1001/buss", given, isAnother: true).Logged!.Build.Number);
        Enter("1001/buss", EventKind.Remade, "cut");
        Assert.Equal(3, Bench.Log("1001/buss", given, isAnother: false).Logged!.Build.Number);
        Assert.Equal("AB", Bench.LastBuilder());
    }

    [Fact]
    public void Correct_Build_KeepsWhatIsNotGiven()
    {
        Bench.Log("1001/buss", new Dictionary<string, string> { ["length"] = "38 1/2", ["turns"] = "28", ["who"] = "AB" }, isAnother: false);
        var corrected = Bench.Correct(1, new Dictionary<string, string> { ["length"] = "38 9/16" }, "CD", "read wrong").Logged!.Build;
        Assert.Equal((Length.FromInches(38.5625), 28, "AB", 1), (corrected.Built.Measured, corrected.Built.Turns, corrected.Built.Who, corrected.Replaces));
        Assert.StartsWith("length \"83\": expected about", Bench.Correct(2, new Dictionary<string, string> { ["length"] = "83" }, "", "").Error, StringComparison.Ordinal);
        Assert.Equal("there is no build 9 in the job book: check the number", Bench.Correct(9, new Dictionary<string, string>(), "", "").Error);
    }

    [Fact]
    public void History_OfAnOrder_SaysAllThatWasDone()
    {
        Bench.Log("1001/buss", new Dictionary<string, string> { ["length"] = "38 1/2", ["who"] = "AB" }, isAnother: false);
        Bench.Correct(1, new Dictionary<string, string> { ["turns"] = "28" }, "CD", "read wrong");
        Bench.Strike(2, "CD", "");
        Enter("1001", EventKind.Cancelled, "called off");
        var history = OrderHistory.Of(new OrderPart("1001", "buss"), _book, LengthUnit.Inch).Where(e => e.Note.Bench.Length > 0);
        Assert.Equal(
            [
                ("buss", "build 1, revision 1: 38 1/2 in, 29 turns", new EventNote("AB", "bench 1", "")),
                ("buss", "build 2, in place of 1, revision 1: 38 1/2 in, 28 turns", new EventNote("AB", "bench 1", "")),
                ("buss", "build 1 corrected", new EventNote("CD", "bench 1", "read wrong")),
                ("buss", "build 2 struck", new EventNote("CD", "bench 1", "")),
                ("", "cancelled", new EventNote("", "bench 1", "called off")),
            ],
            history.Select(e => (e.Piece, e.What, e.Note)));
        Assert.Equal(["string", "buss"], OrderHistory.Of(new OrderPart("1001", null), _book, LengthUnit.Inch).Where(e => e.What == "revision 1 printed").Select(e => e.Piece));
        Assert.Empty(OrderHistory.Of(new OrderPart("1009", null), _book, LengthUnit.Inch));
    }

    private BenchLog Bench => new(_book, LengthUnit.Inch);

    private StateAnswer Enter(string part, EventKind what, string reason = "") => new BookLog(_book).Enter(OrderPart.Read(part, out _)!, what, "", reason);

    private sealed class StoppedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 14, 12, 30, 0, TimeSpan.Zero);
    }
}
