using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Tests.Jobs;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class OrderListTests : IDisposable
{
    private const string Header = "order,piece,kind,finished_length,customer,due\n";
    private static readonly DateOnly Today = new(2026, 11, 26);

    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Of_BookAndFile_SaysHowFarEachOrderIsAndWhatIsDueFirst()
    {
        var orders = Check(Header
            + "701,buss,buss-cable,38,Demo one,2026-12-04\n701,control,control-cable,40,Demo one,\n"
            + "702,buss,buss-cable,38,Demo two,4 Jan\n"
            + "703,buss,buss-cable,38,Demo three,soon\n"
            + "704,buss,buss-cable,38,Demo four,2026-11-30\n");
        var sets = orders.Report.MakeSets();
        _folder.Book.Record(sets.Where(s => s.Order != "704"));
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        Build(book, sets[0].Builds[0].Spec);
        Build(book, sets[1].Builds[0].Spec);

        var listed = OrderList.Of(book, isOpenOnly: true, orders.File, DateStyle.Unknown, Today);
        Assert.Equal(["704", "701", "702", "703"], listed.Select(o => o.Order));
        Assert.Equal([OrderState.New, OrderState.PartBuilt, OrderState.Built, OrderState.Printed], listed.Select(o => o.State));
        Assert.Equal(["control"], listed[1].In(PieceState.Printed).Select(p => p.Piece));
        Assert.Equal(new DateOnly(2027, 1, 4), listed[2].Due);
        Assert.Equal((null, "soon"), (listed[3].Due, listed[3].DueText));
        Assert.Equal("Demo four", listed[0].Customer);
    }

    [Theory]
    [InlineData("Demo two", OrderState.New, "Demo two", "2027-01-04")]
    [InlineData("DEMO ONE", OrderState.Printed, "Demo one", "2026-12-04")]
    [InlineData("", OrderState.Printed, "Demo one", "2026-12-04")]
    public void OfFile_NumberThatWasPrinted_IsNewForAnotherCustomer(string customer, OrderState state, string listed, string due)
    {
        _folder.Book.Record(Check(Header + "701,buss,buss-cable,38,Demo one,2026-12-04\n").Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        var order = Assert.Single(OrderList.OfFile(book, Check(Header + $"701,buss,buss-cable,38,{customer},2027-01-04\n").File, DateStyle.Unknown, Today));
        Assert.Equal((state, listed, due), (order.State, order.Customer, order.DueText));
    }

    [Fact]
    public void Of_PieceWithANewerRevision_IsNotBuiltByItsOldPapers()
    {
        var orders = Check(Header + "701,buss,buss-cable,38,,\n");
        _folder.Book.Record(orders.Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        Build(book, orders.Report.MakeSets()[0].Builds[0].Spec);
        Assert.Equal(OrderState.Built, Assert.Single(OrderList.Of(book, true, null, DateStyle.Unknown, Today)).State);

        _folder.Book.Record(Check(Header + "701,buss,buss-cable,39,,\n").Report.MakeSets());
        Assert.Equal(OrderState.Printed, Assert.Single(OrderList.Of(book, true, null, DateStyle.Unknown, Today)).State);
    }

    [Theory]
    [InlineData(OrderState.Printed)]
    [InlineData(OrderState.Printed, "cancelled buss")]
    [InlineData(OrderState.Remade, "remade control")]
    [InlineData(OrderState.Remade, "built buss", "remade control")]
    [InlineData(OrderState.PartBuilt, "shipped buss")]
    [InlineData(OrderState.PartBuilt, "built control")]
    [InlineData(OrderState.Built, "cancelled buss", "built control")]
    [InlineData(OrderState.Built, "shipped buss", "built control")]
    [InlineData(OrderState.Built, "remade buss", "built buss", "built control")]
    [InlineData(OrderState.Shipped, "shipped buss", "shipped control")]
    [InlineData(OrderState.Shipped, "shipped buss", "cancelled control")]
    [InlineData(OrderState.Cancelled, "cancelled buss", "cancelled control")]
    [InlineData(OrderState.Printed, "cancelled buss", "cancelled control", "reopened buss")]
    public void Of_WhatBecameOfPieces_IsTheOrdersState(OrderState state, params string[] events)
    {
        var orders = Check(Header + "701,buss,buss-cable,38,,\n701,control,control-cable,40,,\n");
        _folder.Book.Record(orders.Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        foreach (var word in events.Select(e => e.Split(' ')))
        {
            if (word[0] == "built")
            {
                Build(book, orders.Report.MakeSets()[0].Builds.Single(b => b.Spec.Piece == word[1]).Spec);
            }
            else
            {
                book.Enter("701", word[1], Enum.Parse<EventKind>(word[0], ignoreCase: true), "", "why", Guid.NewGuid());
            }
        }

        Assert.Equal(state, Assert.Single(OrderList.Of(book, false, null, DateStyle.Unknown, Today)).State);
        var isClosed = state is OrderState.Shipped or OrderState.Cancelled;
        Assert.Equal(isClosed ? 0 : 1, OrderList.Of(book, true, orders.File, DateStyle.Unknown, Today).Count);
    }

    [Fact]
    public void Of_PieceThatIsNewInTheFile_IsListedWithItsOrder()
    {
        _folder.Book.Record(Check(Header + "701,buss,buss-cable,38,,\n").Report.MakeSets());
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        var file = Check(Header + "701,buss,buss-cable,38,,\n701,control,control-cable,40,,\n").File;
        var order = Assert.Single(OrderList.Of(book, true, file, DateStyle.Unknown, Today));
        Assert.Equal((OrderState.Printed, "control"), (order.State, Assert.Single(order.In(PieceState.New)).Piece));
    }

    [Fact]
    public void Of_Pieces_SaysWhoWhereAndWhy()
    {
        var orders = Check(Header + "701,buss,buss-cable,38,,\n701,control,control-cable,40,,\n");
        using (var desk = new SqliteAddress(_folder["book.db"]).OpenOrBegin(TimeProvider.System, "desk"))
        {
            desk.Record(orders.Report.MakeSets()[0].Builds);
        }

        using var book = new SqliteAddress(_folder["book.db"]).OpenOrBegin(TimeProvider.System, "bench 2");
        Build(book, orders.Report.MakeSets()[0].Builds[0].Spec);
        book.Enter("701", "control", EventKind.Remade, "", "cut too short", Guid.NewGuid());
        var order = Assert.Single(OrderList.Of(book, true, null, DateStyle.Unknown, Today));
        Assert.Equal(
            [new("buss", PieceState.Built, 1, "bench 2", "AB", ""), new ListedPiece("control", PieceState.Remade, 1, "desk", "", "cut too short")], order.Pieces);
        Assert.Equal(["AB"], order.Builders);
        Assert.Equal(["bench 2", "desk"], order.Benches);
    }

    private static void Build(IJobBook book, BuildSpec spec) => book.Log(spec, TestBook.Built, Guid.NewGuid());

    private CheckedOrders Check(string csv)
    {
        File.WriteAllText(_folder["o.csv"], csv);
        return CheckedOrders.Read([_folder["o.csv"]], null, SpecFixture.Catalog, _folder.Book, null, SpecFixture.Date);
    }
}
