using Tagend.Jobs;
using Tagend.Tests.Jobs;
using Tagend.Workshop.Books;
using Xunit;

namespace Tagend.Tests.Workshop;

public class JobTallyTests
{
    [Fact]
    public void Follow_JobsOfALot_CountsThemAndSaysWhomToCall()
    {
        using var test = new TestBook();
        using var book = test.Open();
        foreach (var (order, customer) in new[] { ("D-3", "Jo Sample"), ("D-1", "Éxample club"), ("D-2", ""), ("D-1", "éxample Club") })
        {
            var piece = TestBook.Piece(customer, cells: [("order", order), ("piece", customer == "éxample Club" ? "buss" : "string")]);
            book.Record([piece]);
            book.Log(piece.Spec, TestBook.Built with { Lots = ["H88-4"] }, Guid.NewGuid());
        }

        book.Strike(book.Log(TestBook.Piece(cells: ("order", "D-2")).Spec, TestBook.Built, Guid.NewGuid()).Number, "AB", "", Guid.NewGuid());
        var tally = new JobTally();
        Assert.Equal(4, tally.Follow(book.Find(new JobSearch { Lot = "H88-4" })).Count());
        Assert.Equal((4, 4), (tally.Pieces, tally.Builds));
        Assert.Equal(["Éxample club: D-1", "Jo Sample: D-3", ": D-2"], tally.Customers.OrderBy(c => c.Name.Length == 0).ThenBy(c => c.Orders[0]).Select(c => $"{c.Name}: {string.Join(' ', c.Orders)}"));
    }
}
