using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>What every kind of job book must do with spools.</summary>
public abstract class SpoolsContract
{
    protected static NewSpool Black { get; } = new(StockKind.Strand, "hmpe-0145", "black", "H88-4", Meters(1568), new DateOnly(2026, 3, 14));

    /// <summary>Where no book has been begun.</summary>
    protected abstract JobBookAddress Address { get; }

    /// <summary>Another such place, a new one each time.</summary>
    protected abstract JobBookAddress NewAddress();

    [Fact]
    public void Receive_Spools_AreThereWithTheirNumbers()
    {
        using (var book = Address.OpenOrBegin(TimeProvider.System))
        {
            Assert.Equal([1, 2], book.Spools.Receive([Black, Black with { Color = "" }], Guid.NewGuid()).Select(s => s.Number));
        }

        using var again = Address.OpenExisting(TimeProvider.System)!;
        Assert.Equal(
            new KeptSpool(new ReceivedSpool(1, StockKind.Strand, "hmpe-0145", "black", "H88-4", Meters(1568), new DateOnly(2026, 3, 14)), Meters(1568), 0, Length.Zero, "", false),
            again.Spools.Find(1));
        Assert.Equal("", again.Spools.Find(2)!.Spool.Color);
        Assert.Null(again.Spools.Find(3));
    }

    [Fact]
    public void Receive_TheSameWriteAgain_IsEnteredOnce()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        var key = Guid.NewGuid();
        Assert.Equal(book.Spools.Receive([Black, Black], key), book.Spools.Receive([Black, Black], key));
        Assert.Equal(2, book.Spools.All(withFinished: true).Count);
    }

    [Fact]
    public void Log_BuildOfSpools_TakesFromThemOnce()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black, Black with { Color = "red" }], Guid.NewGuid());
        var built = TestBook.Built with { Spools = [new SpoolUse(2, Meters(10.5)), new SpoolUse(1, Meters(20))] };
        var key = Guid.NewGuid();
        var logged = book.Log(TestBook.Piece().Spec, built, key);
        Assert.Equal(logged, book.Log(TestBook.Piece().Spec, built, key));
        Assert.Equal(built, Assert.Single(book.Built()).Builds[0].Built);
        Assert.Equal([Meters(1548), Meters(1557.5)], book.Spools.All(withFinished: false).Select(s => s.Left));
        Assert.Equal((1, Meters(20), 77), (book.Spools.Find(1)!.Builds, book.Spools.Find(1)!.Taken, book.Spools.Find(1)!.BuildsLeft));
    }

    [Fact]
    public void Log_BuildOfASpoolThatIsNotThere_EntersNothing()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        var fault = Assert.Throws<TagendException>(() => book.Log(TestBook.Piece().Spec, TestBook.Built with { Spools = [new SpoolUse(7, Meters(1))] }, Guid.NewGuid()));
        Assert.Equal("there is no spool 7 in the job book: check the number, or scan its tag", fault.Message);
        Assert.Empty(book.Built());
    }

    [Fact]
    public void Count_OfWhatIsLeft_IsCountedFrom()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black], Guid.NewGuid());
        Log(100);
        var key = Guid.NewGuid();
        book.Spools.Count(1, Meters(1400), key);
        book.Spools.Count(1, Meters(1400), key);
        Log(50);
        Assert.Equal((Meters(1350), 2, Meters(150)), (book.Spools.Find(1)!.Left, book.Spools.Find(1)!.Builds, book.Spools.Find(1)!.Taken));

        void Log(double meters) => book.Log(TestBook.Piece().Spec, TestBook.Built with { Spools = [new SpoolUse(1, Meters(meters))] }, Guid.NewGuid());
    }

    [Fact]
    public void Strike_AndCorrect_GiveBackWhatTheBuildTook()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black], Guid.NewGuid());
        var first = book.Log(TestBook.Piece().Spec, TestBook.Built with { Spools = [new SpoolUse(1, Meters(20))] }, Guid.NewGuid());
        var key = Guid.NewGuid();
        var second = book.Correct(first.Number, first.Built with { Turns = 44, Spools = [new SpoolUse(1, Meters(30))] }, "AB", "", key);
        Assert.Equal(second, book.Correct(first.Number, second.Built, "AB", "", key));
        Assert.Equal((Meters(1538), 1), (book.Spools.Find(1)!.Left, book.Spools.Find(1)!.Builds));
        book.Strike(second.Number, "AB", "", Guid.NewGuid());
        Assert.Equal((Meters(1568), 0), (book.Spools.Find(1)!.Left, book.Spools.Find(1)!.Builds));
    }

    [Fact]
    public void Mount_OneOfTheSame_SendsTheOtherBackToTheShelf()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black, Black, Black with { Color = "red" }], Guid.NewGuid());
        book.Spools.Mount(1, "left");
        book.Spools.Mount(3, "left");
        book.Spools.Mount(2, "left");
        Assert.Equal(["", "left", "left"], book.Spools.All(withFinished: false).Select(s => s.Bench));
        book.Spools.Mount(1, "right");
        Assert.Equal(["right", "left", "left"], book.Spools.All(withFinished: false).Select(s => s.Bench));
    }

    [Fact]
    public void Finish_Spool_IsNoLongerListed()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black, Black], Guid.NewGuid());
        book.Spools.Mount(1, "left");
        book.Spools.Finish(1);
        Assert.Equal(2, Assert.Single(book.Spools.All(withFinished: false)).Spool.Number);
        Assert.Equal(("", true), (book.Spools.Find(1)!.Bench, book.Spools.Find(1)!.IsFinished));
    }

    [Fact]
    public void CopyTo_AnotherBook_TakesSpoolsWithWhatIsLeft()
    {
        using var book = Address.OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([Black, Black], Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built with { Spools = [new SpoolUse(2, Meters(3))] }, Guid.NewGuid());
        book.Spools.Count(1, Meters(9), Guid.NewGuid());
        var target = NewAddress();
        Assert.Equal(6, book.CopyTo(target));
        using var copy = target.OpenExisting(TimeProvider.System)!;
        Assert.Equal(book.Spools.All(withFinished: true), copy.Spools.All(withFinished: true));
        Assert.Equal(3, Assert.Single(copy.Spools.Receive([Black], Guid.NewGuid())).Number);
        Assert.Throws<TagendException>(() => book.CopyTo(target));
    }

    protected static Length Meters(double meters) => Length.FromMillimeters(meters * 1000);

    protected IJobBook Open(string bench = "") => Address.OpenOrBegin(new StoppedClock(), bench);

    /// <summary>A moment of whole seconds, as a book keeps it.</summary>
    protected sealed class StoppedClock : TimeProvider
    {
        public static DateTimeOffset Now { get; } = new(2026, 3, 14, 9, 30, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
