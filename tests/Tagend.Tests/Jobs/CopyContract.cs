using Tagend.Jobs;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>What every kind of job book must do when it is copied, and when a name is taken out of it.</summary>
public abstract class CopyContract : HistoryContract
{
    [Fact]
    public void Forget_Customer_KeepsJobsAndBuildsWithoutTheName()
    {
        using var book = Open();
        book.Record([TestBook.Piece("Éxample Club", "bow"), TestBook.Piece("Éxample Club two", cells: ("order", "D-2"))]);
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Assert.Equal(1, book.Forget("éxample club"));
        Assert.Equal(["", "Éxample Club two"], book.Find(new JobSearch()).Select(j => j.Customer));
        Assert.Equal("D-2", Assert.Single(book.Find(new JobSearch { Customer = "xample" })).Order);
        Assert.Equal("bow", Assert.Single(book.Built()).Bow);
        Assert.Equal(2, book.Built()[0].Builds.Count);
        Assert.Equal(0, book.Forget("éxample club"));
    }

    [Fact]
    public void CopyTo_AFileAndBack_LosesNothing()
    {
        using var test = new TestBook();
        using var book = Open();
        var spec = TestBook.Piece().Spec;
        book.Record(Enumerable.Range(1, 501).Select(i => new Build(spec with { Order = $"N-{i:000}" }, new OrderSlip($"Ä {i}", "bow", "soon", ""))));
        var key = Guid.NewGuid();
        book.Log(spec with { Order = "N-007" }, TestBook.Built with { Turns = 1 / 3.0, Lots = ["A", "B"] }, key);
        book.LeaveOut([book.Log(spec with { Order = "N-501" }, TestBook.Built, Guid.NewGuid()).Number], isLeftOut: true);
        book.Enter("N-008", null, EventKind.Cancelled, "AB", "called off", Guid.NewGuid());
        book.Correct(1, TestBook.Built with { Lots = ["B"] }, "AB", "", Guid.NewGuid());
        book.KeepLabel("sheet-10", 4);
        var file = new Tagend.Jobs.Sqlite.SqliteAddress(test.Path);
        Assert.Equal(510, book.CopyTo(file));
        var back = NewAddress();
        using (var copy = file.OpenExisting(new StoppedClock())!)
        {
            Assert.Equal(510, copy.CopyTo(back));
        }

        using var again = back.OpenExisting(new StoppedClock())!;
        Assert.Equal(book.Find(new JobSearch()), again.Find(new JobSearch()));
        Assert.Equal(book.Built(), again.Built());
        Assert.Equal(book.Find(new JobSearch { Customer = "ä 50" }), again.Find(new JobSearch { Customer = "ä 50" }));
        Assert.Equal("N-007", Assert.Single(again.Find(new JobSearch { Lot = "b" })).Order);
        // A write that is sent again, and a new one.
        Assert.Equal(book.Events("N-007"), again.Events("N-007"));
        Assert.Equal(book.Events("N-008"), again.Events("N-008"));
        Assert.Equal(4, again.NextLabel("sheet-10"));
        Assert.Equal(1, again.Log(spec with { Order = "N-007" }, TestBook.Built, key).Number);
        Assert.True(again.Log(spec, TestBook.Built, Guid.NewGuid()).Number > 3);
        again.Enter("N-009", null, EventKind.Shipped, "", "", Guid.NewGuid());
        Assert.Single(again.Events("N-009"));
        Assert.Equal(502, again.Find(new JobSearch()).Count());
    }

    [Fact]
    public void CopyTo_BookThatIsNotEmpty_IsRefused()
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        var fault = Assert.Throws<TagendException>(() => book.CopyTo(Address));
        Assert.Equal($"{Address.Text}: there are already jobs in this book, and a copy needs an empty one; name another place", fault.Message);
    }

    [Fact]
    public void Fill_ThatIsBrokenOff_BeginsNoBook()
    {
        var place = NewAddress();
        Assert.Throws<TagendException>(() => place.Fill<int>(new StoppedClock(), _ => throw new TagendException("broken off")));
        Assert.Null(place.OpenExisting(new StoppedClock()));
    }
}
