using Tagend.Jobs.Sqlite;
using Tagend.Problems;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Readings;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class BookIssuesTests : IDisposable
{
    private const string Header = "order,piece,kind,finished_length,colors,customer,revision\n";
    private const string First = Header + "701,buss,buss-cable,38 1/2,red,Demo one,\n";
    private const string Longer = Header + "701,buss,buss-cable,38 5/8,red,Demo one,\n";

    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Read_SameSpecOnAnotherDay_IsTheSameIssue()
    {
        Print(First, day: 0);
        var (entry, orders) = Print(First, day: 1);
        Assert.Equal((0, 1), (entry!.Added, entry.Known));
        Assert.Equal((1, SpecFixture.Date), (SpecOf(orders).Revision, SpecOf(orders).Date));
        Assert.DoesNotContain(orders.Report.Problems, p => p.Message.Contains("revision", StringComparison.Ordinal));
    }

    /// <summary>More than the book's jobs are kept of: what was settled in the first reading stands when the book is closed.</summary>
    [Fact]
    public void Read_ASeasonAgain_IsTheSameIssuesWheneverAPieceIsMade()
    {
        Print(Season(""), day: 0);
        var orders = Check(Season(""), day: 1, mayReplace: false);
        Assert.Equal(700, orders.Report.Pieces.Count);
        Assert.All(orders.Report.Pieces, p => Assert.Equal((1, SpecFixture.Date), (p.Spec!.Revision, p.Spec.Date)));
        var others = Check(Season(" junior"), day: 1, mayReplace: false);
        Assert.Equal(600, others.Strangers.Count);
    }

    [Fact]
    public void Read_ASeason_AsksTheBookForManyOrdersAtOnce()
    {
        var file = Check(Season(""), day: 0, mayReplace: false).File;
        var asked = new List<string>();
        var questions = 0;
        var issues = new BookIssues(Answer, file.Rows, NumberReuse.Never);
        foreach (var line in file.Lines)
        {
            issues.CheckOrder(line, []);
        }

        Assert.Equal(file.Rows.Select(r => r.Order).Distinct(), asked);
        Assert.Equal(10, questions); // of 600 orders

        IReadOnlyList<Tagend.Jobs.PrintedJob> Answer(IReadOnlyCollection<string> some)
        {
            questions++;
            asked.AddRange(some);
            return [];
        }
    }

    /// <summary>600 orders, of which some have a second piece far behind the first.</summary>
    private static string Season(string junior) => Header
        + string.Concat(Enumerable.Range(1000, 600).Select(i => $"{i},buss,buss-cable,38 1/2,red,Demo {i}{junior},\n"))
        + string.Concat(Enumerable.Range(1100, 100).Select(i => $"{i},control,control-cable,38 3/4,red,Demo {i}{junior},\n"));

    [Fact]
    public void Read_ChangedSpec_IsTheNextRevisionAndSaysWhatChanged()
    {
        Print(First, day: 0);
        var (entry, orders) = Print(Longer, day: 2);
        Assert.Equal((1, 0), (entry!.Added, entry.Known));
        Assert.Equal((2, SpecFixture.Date.AddDays(2)), (SpecOf(orders).Revision, SpecOf(orders).Date));
        var warning = Assert.Single(orders.Report.Problems, p => p.At.Column == "piece");
        Assert.Equal(Severity.Warning, warning.Severity);
        Assert.StartsWith("is now revision 2: finished length 38 5/8 in (was 38 1/2 in)", warning.Message, StringComparison.Ordinal);
        Assert.EndsWith("Throw away the card, strip and tags of revision 1, printed 2026-03-14", warning.Message, StringComparison.Ordinal);
        // And the first again is a change once more, not revision 1.
        Assert.Equal(3, SpecOf(Print(First, day: 3).Orders).Revision);
    }

    [Fact]
    public void Read_OlderRevisionOrderedAgain_IsPrintedAsItWasAndMarked()
    {
        Print(First, day: 0);
        Print(Longer, day: 1);
        var orders = Print(First.Replace("Demo one,\n", "Demo one,1\n", StringComparison.Ordinal), day: 2).Orders;
        Assert.Equal((1, SpecFixture.Date), (SpecOf(orders).Revision, SpecOf(orders).Date));
        var build = Assert.Single(orders.Report.MakeSets()).Builds[0];
        Assert.Equal((2, ""), (build.SupersededBy, build.Slip.Notes));
        Assert.Contains(orders.Report.Problems, p => p.At.Column == "revision" && p.Message.StartsWith("superseded by revision 2 of 2026-03-15", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_OrderOfAnotherCustomer_IsRefusedUnlessItIsMeant()
    {
        Print(First, day: 0);
        var others = First.Replace("Demo one", "Demo two", StringComparison.Ordinal);
        var refused = Check(others, 1, mayReplace: false);
        Assert.Equal(["701"], refused.Report.Withheld);
        Assert.StartsWith(
            "was printed for Demo one on 2026-03-14 (buss), and here it is for Demo two",
            Assert.Single(refused.Report.Problems, p => p.Severity == Severity.Refusal).Message,
            StringComparison.Ordinal);
        var meant = Check(others, 1, mayReplace: true);
        Assert.Equal(2, SpecOf(meant).Revision);
        Assert.Contains(meant.Report.Problems, p => p.Message.Contains("customer Demo two (was Demo one)", StringComparison.Ordinal));
        Assert.Empty(Check(First.Replace("Demo one", "DEMO ONE", StringComparison.Ordinal), 1, mayReplace: false).Report.Withheld);
    }

    [Theory]
    [InlineData("38 1/2", "38 x")]
    [InlineData("buss-cable", "buss-cabl")]
    public void Read_OrderOfAnotherCustomerWithAWrongCell_IsRefusedForBoth(string good, string wrong)
    {
        Print(First, day: 0);
        var others = First.Replace("Demo one", "Demo two", StringComparison.Ordinal).Replace(good, wrong, StringComparison.Ordinal);
        var refused = Check(others, 1, mayReplace: false);
        Assert.Equal(["701"], refused.Strangers);
        Assert.Equal(2, refused.Report.Problems.Count(p => p.Severity == Severity.Refusal));
        Assert.Single(Check(others, 1, mayReplace: true).Report.Problems, p => p.Severity == Severity.Refusal);
    }

    [Theory]
    [InlineData("--replace", "say that the number is used again on purpose (--replace)")]
    [InlineData("", "say that the number is used again on purpose")]
    public void Read_OrderOfAnotherCustomer_SaysHowItIsMeantWhereThatIsNotBesideIt(string how, string end)
    {
        Print(First, day: 0);
        var file = System.Text.Encoding.UTF8.GetBytes(First.Replace("Demo one", "Demo two", StringComparison.Ordinal));
        var refused = CheckedOrders.Read("o.csv", file, SpecFixture.Catalog, _folder.Book, SpecFixture.Date, new NumberReuse((_, _) => false, how));
        Assert.EndsWith(end, Assert.Single(refused.Report.Problems, p => p.Severity == Severity.Refusal).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ScannedTag_SaysOnlyOfAnOlderOne()
    {
        var old = SpecOf(Print(First, day: 0).Orders);
        var newest = SpecOf(Print(Longer, day: 1).Orders);
        using var book = new SqliteAddress(_folder["book.db"]).OpenExisting(TimeProvider.System)!;
        Assert.Equal(
            ["701/buss, revision 1: superseded by revision 2 of 2026-03-15: do not build from it; find that card or print it again"], PieceNews.Of(PieceIssue.Of(old), book));
        Assert.Empty(PieceNews.Of(PieceIssue.Of(newest), book));
        Assert.Empty(PieceNews.Of(new PieceIssue("702", "buss", 1), book));
    }

    private (BookEntry? Entry, CheckedOrders Orders) Print(string orders, int day)
    {
        var made = Check(orders, day, mayReplace: false);
        return (_folder.Book.Record(made.Report.MakeSets()), made);
    }

    private CheckedOrders Check(string orders, int day, bool mayReplace)
    {
        File.WriteAllText(_folder["o.csv"], orders);
        return CheckedOrders.Read([_folder["o.csv"]], null, SpecFixture.Catalog, _folder.Book, null, SpecFixture.Date.AddDays(day), new NumberReuse((_, _) => mayReplace, "--replace"));
    }

    private static Tagend.Specs.BuildSpec SpecOf(CheckedOrders orders) => Assert.Single(orders.Report.Pieces).Spec!;
}
