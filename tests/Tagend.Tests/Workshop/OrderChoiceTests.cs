using Tagend.Workshop.Checks;
using Xunit;

namespace Tagend.Tests.Workshop;

public sealed class OrderChoiceTests : IDisposable
{
    private readonly WorkshopFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(new string[0], "1001/string 1001/buss 1002/string")]
    [InlineData(new[] { "1001" }, "1001/string 1001/buss")]
    [InlineData(new[] { "1001/Buss" }, "1001/buss")]
    [InlineData(new[] { "#1001/buss", "1002" }, "1001/buss 1002/string")]
    [InlineData(new[] { "1001/buss", "1001/string" }, "1001/string 1001/buss")]
    [InlineData(new[] { "1001/buss", "1001" }, "1001/string 1001/buss")]
    public void Of_OrdersAndPieces_AreTheseAlone(string[] texts, string expected)
    {
        var choice = OrderChoice.Read(texts, out var error);
        Assert.Null(error);
        var orders = _folder.Check();
        Assert.Null(orders.Missing(choice));
        Assert.Equal(expected, string.Join(' ', choice.Of(orders.Report.Ready)
            .SelectMany(s => s.Make().Builds).Select(b => $"{b.Spec.Order}/{b.Spec.Piece}")));
    }

    [Fact]
    public void Missing_PieceThatIsNotThere_SaysWhatThereIs() => Assert.Equal(
        "there is no piece yoke in order 1001; there are string, buss",
        _folder.Check().Missing(OrderChoice.Read(["1001/yoke"], out _)));

    [Fact]
    public void Read_TextOfNoPiece_SaysSo()
    {
        OrderChoice.Read(["1001", "1001/a/b"], out var error);
        Assert.Equal("\"1001/a/b\": expected an order and its piece, such as 1001/string", error);
    }

    [Fact]
    public void ProblemsOf_Choice_LeavesOutThoseOfOtherOrders()
    {
        var orders = _folder.Check(WorkshopFolder.Orders.Replace("57 5/8", "57 5/x", StringComparison.Ordinal));
        Assert.Contains(orders.ProblemsOf(OrderChoice.Read(["1002"], out _)), p => p.Text == "57 5/x");
        Assert.DoesNotContain(orders.ProblemsOf(OrderChoice.Read(["1001"], out _)), p => p.Text == "57 5/x");
    }
}
