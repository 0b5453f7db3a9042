using Xunit;

namespace Tagend.Tests.Orders;

public class OrderCellsTests
{
    [Theory]
    [InlineData("finished_length", "6o 1/4", "expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("finished_length", "0", "expected a length above 0 and below 10 m (393 11/16 in)")]
    [InlineData("finished_length", "10 m", "expected a length above 0 and below 10 m (393 11/16 in)")]
    [InlineData("strands", "23", "strands are laid in loops of two, so their number is even: 22 or 24")]
    [InlineData("strands", "0", "expected an even whole number of strands such as 24")]
    [InlineData("strands", "-24", "expected an even whole number of strands such as 24")]
    [InlineData("strands", "24.0", "expected an even whole number of strands such as 24")]
    [InlineData("strands", "1000", "expected an even whole number of strands such as 24")]
    [InlineData("strands", "twenty", "expected an even whole number of strands such as 24")]
    [InlineData("colors", "black:12 red", "give every color its number of strands, or none of them")]
    [InlineData("draw_weight", "70 kg", "expected a force such as 70, 70 lb or 311 N")]
    [InlineData("draw_weight", "0", "a draw weight is above 0 and below 2,000 lbf")]
    [InlineData("draw_weight", "2000", "a draw weight is above 0 and below 2,000 lbf")]
    [InlineData("draw_weight", "9000 N", "a draw weight is above 0 and below 2,000 lbf")]
    [InlineData("servings", "0..8; 9", "item 2 \"9\": expected where it starts and ends, such as A 0..7 1/2 t021 black")]
    [InlineData("center_serving", "26..31; 9..10", "expected one serving such as 26 1/4..31 t021 red")]
    [InlineData("nock_point", "middle", "expected a place such as 26 1/4 (from end A) or B 8")]
    [InlineData("peep", "C 8", "expected a place such as 26 1/4 (from end A) or B 8")]
    [InlineData("speed_nocks", "B 7; 8x", "item 2 \"8x\": expected a place such as 26 1/4 (from end A) or B 8")]
    [InlineData("speed_nocks", ";", "expected places such as A 3; B 7 1/2")]
    [InlineData("finished_length", "1486", "expected a length above 0 and below 10 m (393 11/16 in); did you mean 1486 mm?")]
    [InlineData("finished_length", "1-Feb", "this is a date, and a spreadsheet makes one of a fraction such as 1/2: format the column as text there, and type it again")]
    [InlineData("peep", "02.01.2026", "this is a date, and a spreadsheet makes one of a fraction such as 1/2: format the column as text there, and type it again")]
    [InlineData("nock_groove", "2.9", "expected the width of an arrow nock's throat, above 0 and below 1/2 in; did you mean 2.9 mm?")]
    [InlineData("units", "inches", "expected in or mm, the units of the customer's sheet")]
    [InlineData("units", "cm", "expected in or mm, the units of the customer's sheet")]
    [InlineData("twists", "5.1", "expected turns per inch from 0 to 5, such as 0.75")]
    [InlineData("twists", "0.75 per inch", "expected turns per inch from 0 to 5, such as 0.75")]
    [InlineData("kind", "compound/string", "a name has letters, digits, spaces, hyphens, points and underscores only, not /")]
    [InlineData("material", "hmpe+", "a name has letters, digits, spaces, hyphens, points and underscores only, not +")]
    public void Cell_ThatCannotBeRead_SaysWhereAndWhatWasExpected(string column, string text, string expected)
    {
        var row = column == "finished_length"
            ? $"order\tpiece\tfinished_length\n1\tstring\t{text}\n"
            : $"order\tpiece\tfinished_length\t{column}\n1\tstring\t60\t{text}\n";
        var problem = Assert.Single(OrderReaderTests.Read(row).Problems);
        Assert.Equal($"orders.csv:2: {column} \"{text}\": {expected}", problem.ToString());
    }

    [Theory]
    [InlineData("1,,60,", "piece: the row names no piece: expected a name such as string, buss or yoke")]
    [InlineData("1,string,,", "finished_length: the row has no length: give finished_length, or the bow_length of a recurve or longbow")]
    [InlineData("1,string,63,66", "bow_length \"66\": finished_length and bow_length are both given and may differ: keep one of them")]
    [InlineData("1/2,string,63,", "order \"1/2\": a name has letters, digits, spaces, hyphens, points and underscores only, not /")]
    [InlineData("1,str:ing,63,", "piece \"str:ing\": a name has letters, digits, spaces, hyphens, points and underscores only, not :")]
    [InlineData("1,string,63", "the row has 3 cells and the header 4: a cell or a separator is missing")]
    [InlineData("1,string,63,25,", "bow_length \"25\": finished_length and bow_length are both given and may differ: keep one of them")]
    [InlineData("1,string,63,,25", "the row has 5 cells and the header 4: put quotes around a cell that holds the separator")]
    [InlineData("1,\"string\"x,63,", "text follows a closing quote: double the quotes inside a quoted cell, as in \"60 1/4\"\"\"")]
    public void Row_ThatCannotBeRead_SaysWhy(string row, string expected)
    {
        var file = OrderReaderTests.Read($"order,piece,finished_length,bow_length\n{row}\n2,string,60,\n");
        Assert.Equal($"orders.csv:2: {expected}", Assert.Single(file.Problems).ToString());
        Assert.Equal(["2"], file.Lines.Select(l => l.Order));
    }

    [Fact]
    public void Row_WithSeveralMistakes_ShowsThemAll()
    {
        var file = OrderReaderTests.Read("order,piece,finished_length,strands,peep\n1,,x,23,y\n");
        Assert.Equal(["piece", "finished_length", "strands", "peep"], file.Problems.Select(p => p.At.Column));
    }
}
