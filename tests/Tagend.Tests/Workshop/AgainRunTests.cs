using Tagend.Orders;
using Tagend.Pages;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class AgainRunTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    [Fact]
    public void Add_APiece_PrintsEachKindIntoAFileOfItsName()
    {
        var made = Run("card", "tag", "sheet").Add([SpecFixture.Good()]);
        Assert.Empty(made.Problems);
        Assert.Equal(["D-101-string-card.pdf", "D-101-string-sheet.pdf", "D-101-string-tag.pdf"], _folder.Files);
        Assert.Equal([2, 1, 2], made.Papers.Select(p => p.Pages)); // a card has two sides
        Assert.Equal("Tagend D-101-string-card", made.Papers[0].Title);
    }

    [Fact]
    public void Add_ABag_PrintsACardAPieceAndOneOfTheRest()
    {
        var made = Run("card", "tag").Add([SpecFixture.Good(), SpecFixture.Good(("piece", "second"))]);
        Assert.Equal(["D-101-second-card.pdf", "D-101-string-card.pdf", "D-101-tag.pdf"], _folder.Files);
        Assert.Equal(3, made.Papers[^1].Pages); // a bag and two loops
    }

    [Fact]
    public void Add_PiecesWithNamesThatLookAlike_GivesEachAFileOfItsOwn()
    {
        var run = Run("card");
        BuildSpec[] specs = [SpecFixture.Good(("piece", "cable 1")), SpecFixture.Good(("piece", "cable-1")), SpecFixture.Good(("piece", "cable_1"))];
        var made = run.Add(specs);
        Assert.Equal(3, made.Papers.Select(p => p.Path).Distinct().Count());
        Assert.Equal(3, _folder.Files.Count);
        var again = run.Add([specs[1]]);
        Assert.Equal(made.Papers[1].Path, again.Papers[0].Path); // the same tag, scanned twice
    }

    [Fact]
    public void Add_OrderAndPieceThatMeetInOneName_GivesEachAFileOfItsOwn()
    {
        var run = Run("card");
        run.Add([SpecFixture.Good(("order", "D-1"), ("piece", "x-y"))]);
        run.Add([SpecFixture.Good(("order", "D-1-x"), ("piece", "y"))]);
        Assert.Equal(["D-1-X-y-card-2.pdf", "D-1-x-y-card.pdf"], _folder.Files);
    }

    [Fact]
    public void Add_WithAChange_IsANewRevisionAndEnteredInTheBook()
    {
        var run = Run(Plan("card") with { Changes = [new CellChange(null, OrderColumn.FinishedLength, "60 1/2")] }, _folder.Book);
        var made = run.Add([SpecFixture.Good()]);
        Assert.Empty(made.Problems);
        Assert.Equal(new BookEntry(_folder["book.db"], 1, 0), made.Entry);
    }

    [Fact]
    public void Add_WithTheCustomersUnits_TakesThoseThereAre()
    {
        Assert.Empty(Run(Plan("sheet") with { Changes = [new CellChange(null, OrderColumn.Units, "mm"), new CellChange(null, OrderColumn.Language, "de")] }).Add([SpecFixture.Good()]).Problems);
        var refused = Run(Plan("sheet") with { Changes = [new CellChange(null, OrderColumn.Units, "cm")] }).Add([SpecFixture.Good()]);
        Assert.Equal("expected in or mm, the units of the customer's sheet", Assert.Single(refused.Problems).Message);
    }

    [Fact]
    public void Add_WithAChangeAndABookThatFails_PrintsAllTheSame()
    {
        var book = new RunBook(new BrokenAddress(), TimeProvider.System);
        var made = Run(Plan("card") with { Changes = [new CellChange(null, OrderColumn.Customer, "Demo customer 9")] }, book).Add([SpecFixture.Good()]);
        Assert.Null(made.Entry);
        Assert.Single(made.Papers);
        Assert.Equal("papers are as their tags say, and nothing is entered in it", book.Fault!.Consequence);
    }

    [Theory]
    [InlineData(null, "60 1/2", "D-101: has string, second: say which of them to change, such as --change \"string/finished_length=60 1/2\"")]
    [InlineData("yoke", "60 1/2", "D-101: there is no piece yoke to change; there are string, second")]
    public void Add_ABagWithAChangeOfNoneOfItsPieces_IsRefused(string? piece, string text, string said)
    {
        var run = Run(Plan("card") with { Changes = [new CellChange(piece, OrderColumn.FinishedLength, text)] });
        Assert.Equal(said, Assert.Single(run.Add([SpecFixture.Good(), SpecFixture.Good(("piece", "second"))]).Problems).ToString());
        Assert.True(run.HasRefusals);
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Add_ABagWithAChangeOfOnePiece_LeavesTheOthersAsTheyAre()
    {
        var run = Run(
            Plan("tag") with { AsOrder = true, Changes = [new CellChange("second", OrderColumn.FinishedLength, "60 1/2"), new CellChange(null, OrderColumn.Customer, "Demo customer 9")] },
            _folder.Book);
        var made = run.Add([SpecFixture.Good(), SpecFixture.Good(("piece", "second"))]);
        Assert.Equal((0, 2), (made.Problems.Count, made.Entry!.Added));
        var file = OrderReader.Read("again.csv", run.Orders()!, SpecFixture.Good().Unit, new Dictionary<string, string>());
        Assert.Equal([("string", 1, "Demo customer 9"), ("second", 2, "Demo customer 9")], file.Lines.Select(l => (l.Piece, l.Revision!.Value, l.Slip.Customer)));
    }

    [Fact]
    public void Add_PieceThatTheBookKnows_HasItsCustomerAndTheNextRevision()
    {
        var (spec, slip) = (SpecFixture.Good(), new OrderSlip("Demo customer 1", "Demo bow", "2026-04-01", "soft"));
        _folder.Book.Record([new BuildSet("D-101", [new Build(spec, slip), new Build(SpecFixture.Good(("finished_length", "60 1/8")) with { Revision = 2 }, slip)])]);
        var run = Run(Plan() with { AsOrder = true, Changes = [new CellChange(null, OrderColumn.CenterServing, "green")] }, _folder.Book);
        var warning = Assert.Single(run.Add([spec]).Problems);
        Assert.StartsWith("D-101/string: warning: is now revision 3: ", warning.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("Throw away the card, strip and tags of revision 2, printed 2026-03-14", warning.Message, StringComparison.Ordinal);
        var line = Assert.Single(OrderReader.Read("again.csv", run.Orders()!, spec.Unit, new Dictionary<string, string>()).Lines);
        Assert.Equal((slip, 3, "green"), (line.Slip, line.Revision!.Value, line.CenterServing!.Color));
    }

    [Fact]
    public void Add_AsANewOrder_IsItsFirstRevisionWithCustomerAndBowAndNoDueDate()
    {
        var spec = SpecFixture.Good() with { Revision = 2 };
        _folder.Book.Record([new BuildSet("D-101", [new Build(spec, new OrderSlip("Demo customer 1", "Demo bow", "2026-04-01", "soft"))])]);
        var run = Run(Plan("card") with { AsOrder = true, NewOrder = "D-202" }, _folder.Book);
        var made = run.Add([spec]);
        Assert.Equal((0, 1), (made.Problems.Count, made.Entry!.Added));
        Assert.Equal(["D-202-string-card.pdf", "book.db"], _folder.Files);
        var line = Assert.Single(OrderReader.Read("again.csv", run.Orders()!, spec.Unit, new Dictionary<string, string>()).Lines);
        Assert.Equal(("D-202", 1, new OrderSlip("Demo customer 1", "Demo bow", "", "soft")), (line.Order, line.Revision!.Value, line.Slip));
    }

    [Fact]
    public void Add_AChangeThatCannotBeBuilt_IsRefusedAndNothingIsPrinted()
    {
        var run = Run(Plan("card") with { Changes = [new CellChange(null, OrderColumn.FinishedLength, "60 1/x")] });
        Assert.NotEmpty(run.Add([SpecFixture.Good()]).Problems);
        Assert.True(run.HasRefusals);
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Add_ASheetOfAKindTheTemplatesHaveNoMore_IsRefused()
    {
        var run = Run("sheet");
        var problem = Assert.Single(run.Add([SpecFixture.Good() with { Kind = "gone" }]).Problems);
        Assert.StartsWith("D-101: the templates have no kind gone or no material hmpe-0145 any more", problem.ToString(), StringComparison.Ordinal);
        Assert.Empty(_folder.Files);
    }

    [Fact]
    public void Add_IntoAFolderThatCannotBe_SaysSo()
    {
        File.WriteAllText(_folder["out"], "a file");
        Assert.Throws<TagendException>(() => Run(Plan("card") with { Folder = _folder["out"] }).Add([SpecFixture.Good()]));
    }

    [Fact]
    public void Orders_OfPieces_MakeTheSameSpecs()
    {
        var run = Run(Plan() with { AsOrder = true });
        var spec = SpecFixture.Good();
        Assert.Empty(run.Add([spec]).Problems);
        var file = OrderReader.Read("again.csv", run.Orders()!, spec.Unit, new Dictionary<string, string>());
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, spec.Unit, SpecFixture.Date));
        Assert.Equal(spec, Assert.Single(report.Pieces).Spec);
    }

    [Fact]
    public void Orders_WhereNoneAreWanted_AreNone() => Assert.Null(Run("card").Orders());

    private AgainRun Run(params string[] kinds) => Run(Plan(kinds));

    private static AgainRun Run(AgainPlan plan, RunBook? book = null) => new(SpecFixture.Catalog, plan, book ?? WorkshopFolder.NoBook);

    private AgainPlan Plan(params string[] kinds) => new()
    {
        Kinds = [.. PageKinds.All.Where(k => kinds.Contains(k.FromTag))],
        Changes = [],
        Folder = _folder.Path,
        Date = SpecFixture.Date,
    };

    public void Dispose() => _folder.Dispose();
}
