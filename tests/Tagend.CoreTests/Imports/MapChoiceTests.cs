using Xunit;

namespace Tagend.Tests.Imports;

public sealed class MapChoiceTests
{
    private const string Columns = "title = \"t\"\n[columns]\n\"No\" = \"order\"\n\"Len\" = \"string.finished_length\"\n";

    [Fact]
    public void Read_OwnColumns_NeedNoMap()
    {
        var map = MapFixture.Map("title = \"t\"\n[columns]\n\"order\" = \"order\"\n\"finished_length\" = \"string.finished_length\"\n");
        var file = MapFixture.Orders([map], ("own.csv", "order,piece,finished_length\n1,buss,38\n"));
        Assert.Equal(["1/buss 38"], MapFixture.Shown(file));
        Assert.Empty(file.Remarks);
    }

    [Fact]
    public void Read_TwoMapsFit_TheFullerOneIsTaken()
    {
        var file = MapFixture.Orders(
            [MapFixture.Map(Columns), MapFixture.Map($"{Columns}\"Buss\" = \"buss.finished_length\"", "full")],
            ("a.csv", "No,Len,Buss\n1,58,38\n"));
        Assert.Equal(["1/string 58", "1/buss 38"], MapFixture.Shown(file));
    }

    [Fact]
    public void Read_SheetWithBowsAndLengths_IsTheMapsAndNotTheBowBooks()
    {
        const string Csv = "order,bow,string length\n1,Hybrid,58\n";
        var map = MapFixture.Map("title = \"t\"\n[columns]\n\"order\" = \"order\"\n\"bow\" = \"bow\"\n\"string length\" = \"string.finished_length\"\n");
        Assert.Equal(["1/string 58"], MapFixture.Shown(MapFixture.Orders([map], ("a.csv", Csv))));
        Assert.Equal(
            "a.csv:1: the header is not that of our order file, and there is no map in the templates' imports: make one of a.csv",
            Assert.Single(MapFixture.Orders([], ("a.csv", Csv)).Problems).ToString());
    }

    [Theory]
    [InlineData("No,Len\n1,58\n", "a.csv:1: the maps sheet and other fit this header equally well: choose one")]
    [InlineData("No,Length\n1,58\n", "a.csv:1: imports/sheet.toml reads files like this one, but here is no column \"Len\": put it back into the file, or take it out of the map")]
    [InlineData("Nr,Size\n1,58\n", "a.csv:1: the header is not that of our order file, and no map fits it in the templates' imports: make one of a.csv")]
    public void Read_NoMapToChoose_IsOneProblem(string csv, string expected) => Assert.Equal(
        expected,
        Assert.Single(MapFixture.Orders([MapFixture.Map(Columns), MapFixture.Map(Columns, "other")], ("a.csv", csv)).Problems).ToString());
}
