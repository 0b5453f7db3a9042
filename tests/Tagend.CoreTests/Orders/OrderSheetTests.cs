using System.Text;
using CsCheck;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Orders;

public class OrderSheetTests
{
    private const string Small = "order,piece,finished_length\r\n1001,string,\"60 1/4\"\r\n\r\n1002,\"buss\nwide\",38 1/2\r\n";

    [Fact]
    public void WithCell_ChangesItsRowAloneByteForByte()
    {
        var sheet = Read(Small).WithCell(0, 2, "61");
        Assert.Equal(Small.Replace("\"60 1/4\"", "61", StringComparison.Ordinal), Text(sheet));
        Assert.Equal(4, sheet.Rows[1].Line);
        Assert.Equal("buss\nwide", sheet.Rows[1][1]);
    }

    [Theory]
    // RFC 4180, 2.6 and 2.7: a text with a separator, a quote or a line end stands in quotes, and its quotes are doubled.
    [InlineData("black, red", "\"black, red\"")]
    [InlineData("60 1/4\"", "\"60 1/4\"\"\"")]
    [InlineData("two\nlines", "\"two\nlines\"")]
    [InlineData(" space", "\" space\"")]
    [InlineData("", "")]
    public void WithCell_AnyText_IsQuotedByTheStandard(string text, string written)
    {
        var sheet = Read("order,notes\n7,x\n").WithCell(0, 1, text);
        Assert.Equal($"order,notes\n7,{written}\n", Text(sheet));
        Assert.Equal(text.Trim(), sheet.Rows[0][1]);
    }

    [Theory]
    [InlineData("order;piece\n7;string\n", "order;piece\n7;\"a;b\"\n")]
    [InlineData("order\tpiece\n7\tstring\n", "order\tpiece\n7\ta;b\n")]
    [InlineData("\uFEFForder,piece\n7,string", "\uFEFForder,piece\n7,a;b")]
    public void WithCell_KeepsSeparatorMarkAndEnd(string before, string after) =>
        Assert.Equal(after, Text(Read(before).WithCell(0, 1, "a;b")));

    [Fact]
    public void WithCell_OfTheHeader_IsTheHeader() =>
        Assert.Equal("\uFEFForder,piece\n7,string\n", Text(Read("\uFEFForder,pice\n7,string\n").WithCell(-1, 1, "piece")));

    [Fact]
    public void WithCell_OfARowThatIsTooShort_FillsIt() =>
        Assert.Equal("order,piece,notes\n7,,here\n", Text(Read("order,piece,notes\n7\n").WithCell(0, 2, "here")));

    [Fact]
    public void WithColumn_IsEmptyInEveryRow() =>
        Assert.Equal("order,piece,peep\n7,string,\n8,\"b,c\",\n", Text(Read("order,piece\n7,string\n8,\"b,c\"\n").WithColumn("peep")));

    [Theory]
    [InlineData("order,piece\n7,string\n", "order,piece\n7,string\n8,buss\n")]
    [InlineData("order,piece\r\n7,string", "order,piece\r\n7,string\r\n8,buss\r\n")]
    public void WithRow_StandsAtTheEnd(string before, string after) => Assert.Equal(after, Text(Read(before).WithRow(["8", "buss"])));

    [Fact]
    public void WithoutRow_TakesItsLineOut() =>
        Assert.Equal("order,piece,finished_length\r\n\r\n1002,\"buss\nwide\",38 1/2\r\n", Text(Read(Small).WithoutRow(0)));

    [Theory]
    [InlineData("order,piece\n7,string\n8,buss\n", "order,piece\n8,buss\n")]
    [InlineData("order,piece\n7,string", "order,piece\n")]
    [InlineData("order,piece\r\n7,string", "order,piece\r\n")]
    public void WithoutRow_AtAnyEndOfALine_TakesThatEndAlone(string before, string after) => Assert.Equal(after, Text(Read(before).WithoutRow(0)));

    [Theory]
    [InlineData("", 0, new string[0])]
    [InlineData("\n\n,,\n", 0, new string[0])]
    [InlineData("\n order , piece\n7,string\n", 2, new[] { "order", "piece" })]
    [InlineData("sep=;\norder;piece\n7;string\n", 2, new[] { "order", "piece" })]
    public void Header_OfAFile_IsItsFirstLineWithText(string text, int line, string[] titles)
    {
        var sheet = Read(text);
        Assert.Equal(line, sheet.HeaderLine);
        Assert.Equal(titles, sheet.Titles);
        Assert.Equal(titles.Length > 0 ? 1 : 0, sheet.Rows.Count);
    }

    [Fact]
    public void Cell_OutsideItsRow_IsEmpty()
    {
        var row = Assert.Single(Read("order,piece\n7,string\n").Rows);
        Assert.Equal(["", "7", "string", ""], Enumerable.Range(-1, 4).Select(column => row[column]));
    }

    [Fact]
    public void WithColumn_OfRowsOfAnyLength_StandsBehindTheHeadersLast() =>
        Assert.Equal("order,piece,peep\n7,,\n8,buss,,more\n", Text(Read("order,piece\n7\n8,buss,more\n").WithColumn("peep")));

    [Fact]
    public void Read_OfNoText_SaysWhatIsWrong()
    {
        List<Problem> problems = [];
        Assert.Null(OrderSheet.Read("orders.csv", [0xD0, 0xCF, 0x11, 0xE0, 0xA1], problems));
        Assert.StartsWith("orders.csv: this is a spreadsheet's own file", Assert.Single(problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Begin_ThenRows_IsAFileThatIsRead()
    {
        var bytes = OrderSheet.Begin(["order", "piece", "finished_length"]).WithRow(["7", "string", "60 1/4\""]).ToBytes();
        var file = OrderReader.Read("new.csv", bytes, LengthUnit.Inch, new Dictionary<string, string>());
        Assert.Empty(file.Problems);
        Assert.Equal("7", Assert.Single(file.Lines).Order);
    }

    [Fact]
    public void WithCell_OfRandomTexts_ComesBack() =>
        Gen.Select(Gen.Char[" ,;\"\n\tab1/é"].Array[0, 12], Gen.Int[0, 1], Gen.Int[0, 2]).Sample(
            (letters, row, column) =>
            {
                var text = new string(letters).Trim();
                return Read(Small).WithCell(row, column, text).Rows.Count == 2
                    && (text.Length == 0 || Read(Text(Read(Small).WithCell(row, column, text))).Rows[row][column] == text);
            },
            seed: "0N0XIzNsQ0O2");

    private static OrderSheet Read(string text) => OrderSheet.Read("small.csv", Encoding.UTF8.GetBytes(text), [])!;

    private static string Text(OrderSheet sheet) => Encoding.UTF8.GetString(sheet.ToBytes());
}
