using Xunit;

namespace Tagend.Tests.Orders;

public class OrderSetsTests
{
    [Fact]
    public void Piece_NamedTwice_NamesBothLines()
    {
        var file = OrderReaderTests.Read("order,piece,finished_length\na1,Buss,38\na2,buss,38\nA1,buss,39\n");
        Assert.Equal(
            "orders.csv:4: piece \"buss\": order A1 already has a piece of that name in line 2: give each piece of a set its own name",
            Assert.Single(file.Problems).ToString());
        Assert.Equal(["A1"], file.BrokenOrders);
    }

    [Fact]
    public void Piece_NamedTwiceAfterABrokenRow_IsStillSeen()
    {
        var file = OrderReaderTests.Read("order,piece,finished_length\n1,buss,x\n1,buss,39\n");
        Assert.Equal([2, 3], file.Problems.Select(p => p.At.Line));
    }

    [Theory]
    [InlineData("customer")]
    [InlineData("bow")]
    [InlineData("due")]
    public void Slip_ThatDiffersInASet_IsRefused(string column)
    {
        var file = OrderReaderTests.Read(
            $"order,piece,finished_length,{column}\n1,string,60,Demo one\n1,buss,38,\n1,yoke,10,Demo two\n2,string,60,Demo two\n");
        Assert.Equal(
            $"orders.csv:4: {column} \"Demo two\": order 1 has \"Demo one\" in line 2: give it once, or repeat it in every row of the set",
            Assert.Single(file.Problems).ToString());
        Assert.Equal(["1"], file.BrokenOrders);
    }
}
