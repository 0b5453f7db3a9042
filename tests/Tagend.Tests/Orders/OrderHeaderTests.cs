using Xunit;

namespace Tagend.Tests.Orders;

public class OrderHeaderTests
{
    [Theory]
    [InlineData(
        "order,piece,length",
        "finished_length: there is neither this column nor bow_length among order, piece, length: did you mean length? Rename the column, or name it under [columns] in shop.toml")]
    [InlineData(
        "order,piece,finshed_lenght",
        "finished_length: there is neither this column nor bow_length among order, piece, finshed_lenght: did you mean finshed_lenght? Rename the column, or name it under [columns] in shop.toml")]
    [InlineData(
        "order no,piece,finished_length",
        "order: there is no such column among order no, piece, finished_length: did you mean order_no? Rename the column, or name it under [columns] in shop.toml")]
    [InlineData(
        "order,part,bow_length",
        "piece: there is no such column among order, part, bow_length: add it, or name yours under [columns] in shop.toml")]
    [InlineData(
        "order,piece,finished_length,Finished Length",
        "finished_length: there are two columns of this meaning: remove or rename one")]
    [InlineData(
        "order,piece,finished_length,stands",
        "stands: did you mean strands? Rename the column, or name it under [columns] in shop.toml")]
    public void Header_ThatCannotBeUsed_NamesWhatIsThereAndWhatIsNear(string header, string expected)
    {
        var file = OrderReaderTests.Read($"{header}\n1,string,60\n");
        Assert.Equal($"orders.csv:1: {expected}", Assert.Single(file.Problems).ToString());
        Assert.Empty(file.Lines);
    }

    [Fact]
    public void Header_WithSeveralMistakes_ShowsThemAll()
    {
        var file = OrderReaderTests.Read("a,b\n1,2\n");
        Assert.Equal(["order", "piece", "finished_length"], file.Problems.Select(p => p.At.Column));
    }

    [Fact]
    public void Header_OfAnotherSeparator_IsOneColumn()
    {
        var file = OrderReaderTests.Read("order|piece|finished_length\n1|string|60\n");
        Assert.StartsWith(
            "orders.csv:1: order: there is no such column among order|piece|finished_length: ",
            file.Problems[0].ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Header_CellWithoutName_RefusesTextBelowIt()
    {
        var file = OrderReaderTests.Read("order,piece,,finished_length\n1,string,,60\n2,string,x,60\n");
        Assert.Equal(
            "orders.csv:3 \"x\": stands in a column that has no name: name it in the header, or empty the cell",
            Assert.Single(file.Problems).ToString());
        Assert.Equal(["1"], file.Lines.Select(l => l.Order));
    }
}
