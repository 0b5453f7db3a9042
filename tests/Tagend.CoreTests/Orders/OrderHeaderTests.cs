using Xunit;

namespace Tagend.Tests.Orders;

public class OrderHeaderTests
{
    [Theory]
    [InlineData(
        "order,piece,length",
        "length: did you mean finished_length? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    [InlineData(
        "order,piece,finshed_lenght",
        "finshed_lenght: did you mean finished_length? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    [InlineData(
        "order no,piece,finished_length",
        "order no: did you mean order? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    [InlineData(
        "order,part,bow_length",
        "piece: there is no such column among order, part, bow_length: add it, or map yours under [columns] in shop.toml")]
    [InlineData(
        "order,piece,finished_length,Finished Length",
        "finished_length: two columns have this meaning: remove or rename one")]
    [InlineData(
        "order,piece,finished_length,stands",
        "stands: did you mean strands? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    [InlineData("order,piece,finished_length,String Colors", "String Colors: did you mean colors? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    [InlineData("order,piece,finished_length,Strand Colour", "Strand Colour: did you mean colors? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)")]
    public void Header_ThatCannotBeUsed_NamesWhatIsThereAndWhatIsNear(string header, string expected)
    {
        var file = OrderReaderTests.Read($"{header}\n1,string,60\n");
        Assert.Equal($"orders.csv:1: {expected}", Assert.Single(file.Problems).ToString());
        Assert.Empty(file.Lines);
    }

    [Theory]
    [InlineData("Order #,Piece,Finished Length,Colour")]
    [InlineData("order,piece,finished_length,colors,String Colors")]
    [InlineData("order,piece,finished_length,color,peep size")]
    public void Header_AsPeopleWriteIt_IsRead(string header)
    {
        var file = OrderReaderTests.Read($"{header}\n1,string,60,red{new string(',', header.Count(c => c == ',') - 3)}\n");
        Assert.Empty(file.Problems);
        Assert.Equal("red", file.Lines[0].Colors![0].Name);
    }

    [Fact]
    public void Header_WithSeveralMistakes_ShowsThemAll()
    {
        var file = OrderReaderTests.Read("a,b\n1,2\n");
        Assert.Equal(["order", "piece", "finished_length"], file.Problems.Select(p => p.At.Column));
    }

    [Fact]
    public void Header_OfThousandsOfColumns_IsAnotherFile()
    {
        var file = OrderReaderTests.Read($"order,piece{string.Concat(Enumerable.Repeat(",ser", 20_000))}\n1,string\n");
        Assert.Equal(
            "orders.csv:1: the header has 20002 columns, and an order file has 250 at most: check that this is the right file, and its separators",
            Assert.Single(file.Problems).ToString());
    }

    [Fact]
    public void Header_WithALineEndInACell_IsSaidInOneLine()
    {
        var file = OrderReaderTests.Read("\"or\nder\",piece,finished_length\n1,string,60\n");
        Assert.Equal(
            "orders.csv:1: or⏎der: did you mean order? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)",
            Assert.Single(file.Problems).ToString());
    }

    [Theory]
    [InlineData(4_001, "order,piece,finished_length,notes\n1,string,60,{0}\n", "notes")]
    [InlineData(4_001, "order,piece,finished_length,finish\n1,string,60,{0}\n", "finish")]
    [InlineData(4_009, "order,piece,finished_length,notes,x,y\n1,string,60,{0}\n", "notes")]
    public void Cell_LongerThanAPage_IsRefused(int length, string rows, string column)
    {
        var text = column == "notes" && rows.Contains(",x,y", StringComparison.Ordinal)
            ? $"{new string('n', 2_000)},{new string('n', 2_000)},{new string('n', 1)}"
            : new string('n', length);
        var file = OrderReaderTests.Read(string.Format(System.Globalization.CultureInfo.InvariantCulture, rows, text));
        Assert.Equal(
            $"orders.csv:2: {column} \"{new string('n', 40)}…\": has {length} characters, and no page has room for more than 4000: "
                + "shorten it, or see whether a quote is missing in the file",
            Assert.Single(file.Problems).ToString());
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
            "orders.csv:3 \"x\": is in a column without a name: name it in the header, or clear the cell",
            Assert.Single(file.Problems).ToString());
        Assert.Equal(["1"], file.Lines.Select(l => l.Order));
    }
}
