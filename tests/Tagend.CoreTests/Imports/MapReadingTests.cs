using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Imports;

public sealed class MapReadingTests
{
    private const string Sheet = """
        title = "The shop's own spreadsheet"
        blank = ["-", "n/a"]

        [columns]
        "No." = "order"
        "Client" = "customer"
        "String Length" = "string.finished_length"
        "Buss Length" = "buss.finished_length"
        "Yokes" = "yoke.quantity"
        "Yoke Length" = "yoke.finished_length"
        "Remarks" = "notes"
        "Phone" = "never"

        [join]
        colors = "{Color 1}/{Color 2}"

        [constants]
        "string.kind" = "compound-string"
        "buss.kind" = "buss-cable"
        material = "hmpe-0145"

        [values.colors]
        "Flo Green" = "flo-green"

        [[leave_out]]
        column = "Paid"
        is_not = ["yes", "paid*"]
        why = "unpaid"
        """;

    private const string Header = "No.,Client,String Length,Buss Length,Yokes,Yoke Length,Color 1,Color 2,Remarks,Phone,Paid\n";

    [Fact]
    public void Read_RowOfAnOrder_MakesAPieceOfEachFilledLength()
    {
        var file = MapFixture.Orders(Sheet, Header + "701,Demo,58 1/2,38 1/4,2,16,Black,Flo Green,call first,555,Yes\n702,Demo 2,60,-,,n/a,Red,,,,PAID by card\n");
        Assert.Equal(["701/string 58.5", "701/buss 38.25", "701/yoke 1 16", "701/yoke 2 16", "702/string 60"], MapFixture.Shown(file));
        var first = file.Lines[0];
        Assert.Equal("compound-string", first.Kind);
        Assert.Equal("hmpe-0145", file.Lines[2].Material);
        Assert.Equal([new OrderedColor("black", null), new OrderedColor("flo-green", null)], first.Colors!);
        Assert.Equal([new OrderedColor("red", null)], file.Lines[4].Colors!);
        Assert.Equal(new OrderSlip("Demo", "", "", "call first"), first.Slip);
    }

    [Theory]
    [InlineData("701,Demo,58 1/2,38x,0.5,16,bl!,,,,yes", "Buss Length", "Color 1 + Color 2", "Yokes")]
    [InlineData("701,Demo,,,some,1x,Black,,,,yes", "Yoke Length", "Yokes")]
    [InlineData("701,Demo,30,38 1/4,,,Black,,,,yes", "String Length")]
    [InlineData("7 01!,Demo,30,,,,Black,,,,yes", "No.", "String Length")]
    public void Report_RowWithSeveralWrongCells_TellsThemAll(string row, params string[] places)
    {
        var report = SetBuilder.Build(MapFixture.Orders(Sheet, $"{Header}{row}\n"), new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal(places, report.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.At.Column).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("Length: 6o; Strands: odd; Material: hmpe-014", "Choice, Length", "Choice, Material", "Choice, Strands")]
    [InlineData("Length: 60; Length: 61; Material: hmpe-014; Strands: 24", "Choice, Length", "Choice, Material")]
    [InlineData("60 1/4; Strands: odd", "Choice", "Choice, Strands")]
    public void Report_OptionsWithSeveralFaults_TellThemAll(string options, params string[] places)
    {
        const string Options = "title = \"t\"\n[columns]\n\"No\" = \"order\"\n\"Item\" = \"piece\"\n\"Kind\" = \"kind\"\n[options.\"Choice\"]\n"
            + "\"Length\" = \"finished_length\"\n\"Strands\" = \"strands\"\n\"Material\" = \"material\"\n";
        var file = MapFixture.Orders(Options, $"No,Item,Kind,Choice\n701,string,compound-string,\"{options}\"\n701,buss,buss-cabl,\"Length: 38; Strands: 24; Material: hmpe-0145\"\n");
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal([.. places, "Kind"], report.Problems.Where(p => p.Severity == Severity.Refusal).Select(p => p.At.Column).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Read_OptionsOfABook_AreRefusedAndNotTakenApart()
    {
        const string Options = "title = \"t\"\n[columns]\n\"No\" = \"order\"\n\"Item\" = \"piece\"\n[options.\"Choice\"]\n\"Length\" = \"finished_length\"\n";
        var file = MapFixture.Orders(Options, $"No,Item,Choice\n701,buss,\"{new string(',', 300_000)}\"\n");
        Assert.StartsWith("sheet.csv:2: Choice \",,,", file.Problems[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("has 300000 characters", file.Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WhatIsLeftOut_IsCounted()
    {
        var file = MapFixture.Orders(Sheet, Header + "701,,58,,,,Red,,,,no\n702,,58,,,,Red,,,,yes\n703,,58,,,,Red,,,,\n");
        Assert.Equal(["702/string 58"], MapFixture.Shown(file));
        Assert.Equal(["sheet.csv: 1 row read by imports/sheet.toml; left out: 2 unpaid"], file.Remarks);
    }

    [Theory]
    [InlineData("701,,58x,,,,Red,,,,yes", "sheet.csv:2: String Length \"58x\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("701,,58,,,,Red,Flo Grün 12,,,yes", "sheet.csv:2: Color 1 + Color 2 \"Red/Flo Grün 12\": \"Flo Grün 12\": write a color's strands behind a colon, as in black:12")]
    [InlineData(",,58,,,,Red,,,,yes", "sheet.csv:2: No.: the row names no order: every row of a set needs the set's number")]
    [InlineData("701,,,,2,,Red,,,,yes", "sheet.csv:2: Yoke Length: the row has no length: give finished_length, or the bow_length of a recurve or longbow")]
    [InlineData("701,,58,,two,16,Red,,,,yes", "sheet.csv:2: Yokes \"two\": expected how many pieces, a whole number from 1 to 50")]
    [InlineData("701,,58,,51,16,Red,,,,yes", "sheet.csv:2: Yokes \"51\": expected how many pieces, a whole number from 1 to 50")]
    [InlineData("701,,-,,,,Red,,,,yes", "sheet.csv:2: String Length, Buss Length, Yoke Length: the row names no piece: expected a name such as string, buss or yoke")]
    public void Read_WrongCell_IsNamedAsTheFileNamesIt(string row, string expected) =>
        Assert.Contains(expected, MapFixture.Orders(Sheet, $"{Header}{row}\n").Problems.Select(p => p.ToString()));

    [Fact]
    public void Read_FiftyOfAPiece_AreRead() =>
        Assert.Equal(51, MapFixture.Orders(Sheet, $"{Header}701,,58,,50,16,Red,,,,yes\n").Lines.Count);

    [Fact]
    public void Read_ColumnThatTheMapDoesNotName_IsWarnedOfAndNotPrinted()
    {
        var file = MapFixture.Orders(Sheet, Header.Replace("Paid", "Paid,Gift", StringComparison.Ordinal) + "701,,58,,,,Red,,,,yes,for Sam\n");
        Assert.Equal(
            "sheet.csv:1: Gift: warning: the column is not in imports/sheet.toml, so it is printed nowhere: name it there under [columns], as \"notes\" or \"never\" if nothing else",
            Assert.Single(file.Problems).ToString());
        Assert.Equal("", Assert.Single(file.Lines).Slip.Notes);
    }

    private const string Store = """
        title = "A web store's export"
        carry = ["Paid", "Name"]

        [columns]
        "Order" = "order"
        "Name" = "customer"
        "Item" = ["piece", "kind"]
        "Qty" = "quantity"

        [options."Item options"]
        "Color" = "colors"
        "Length" = "finished_length"
        "Strands" = "strands"
        "Gift wrap" = "never"

        [values.piece]
        "Custom Yoke" = "yoke"
        "Buss Cable" = "buss"

        [values.kind]
        "Custom Yoke" = "yoke"
        "Buss Cable" = "buss-cable"

        [[leave_out]]
        column = "Paid"
        is_not = "paid"
        why = "unpaid"

        [[leave_out]]
        column = "Item"
        is = ["T-Shirt*", "Wax"]
        why = "other goods"
        """;

    private const string StoreHeader = "Order,Name,Paid,Item,Qty,Item options\n";

    [Fact]
    public void Read_RowOfALineItem_TakesItsOptionsApart()
    {
        var file = MapFixture.Orders(Store, StoreHeader
            + "A-1,Demo,paid,Custom Yoke,2,\"Color: Red/Black; Length: 16 1/2; Strands 24; Gift wrap: yes; Knot: left\"\n"
            + "A-1,,,T-shirt L,1,\n"
            + "A-1,,,Buss Cable,1,\"Color=Red, Black, Length: 38 1/2\"\n"
            + "A-1,,,Custom Yoke,1,Length: 17|Color: Red\n"
            + "A-2,Demo 2,pending,Buss Cable,1,Length: 38\n");
        Assert.Equal(["A-1/yoke 1 16.5", "A-1/yoke 2 16.5", "A-1/buss 38.5", "A-1/yoke 3 17"], MapFixture.Shown(file));
        Assert.Equal(24, file.Lines[0].Strands);
        Assert.Equal(new OrderSlip("Demo", "", "", "Knot: left"), file.Lines[0].Slip);
        Assert.Equal([new OrderedColor("red", null), new OrderedColor("black", null)], file.Lines[2].Colors!);
        Assert.Equal("sheet.csv: 3 rows read by imports/sheet.toml; left out: 1 other goods, 1 unpaid", Assert.Single(file.Remarks));
    }

    [Theory]
    [InlineData("Color: Red; Black; Length: 16", "sheet.csv:2: Item options \"Black\": has no label, so it could belong to anything; the labels in the map are Color, Length, Strands, Gift wrap")]
    [InlineData("Length: 16; Length: 17", "sheet.csv:2: Item options, Length \"17\": finished_length is \"16\" in Item options, Length already: keep one of them in this row, or mark one as never in the map")]
    [InlineData("Length: 16x", "sheet.csv:2: Item options, Length \"16x\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("Color: Red", "sheet.csv:2: Item options, Length: the row has no length: give finished_length, or the bow_length of a recurve or longbow")]
    public void Read_WrongOption_IsNamedByItsLabel(string options, string expected) => Assert.Equal(
        expected, Assert.Single(MapFixture.Orders(Store, $"{StoreHeader}A-1,Demo,paid,Custom Yoke,1,\"{options}\"\n").Problems).ToString());

    [Fact]
    public void Read_SameOrderInTwoFiles_IsNoSecondPiece()
    {
        var row = StoreHeader + "A-1,Demo,paid,Custom Yoke,1,Length: 16\n";
        var file = MapFixture.Orders([MapFixture.Map(Store)], ("may.csv", row), ("june.csv", row));
        Assert.Equal(
            "june.csv:2: Item \"Custom Yoke\": order A-1 already has a piece of that name in line 2 of may.csv: give each piece of a set its own name",
            Assert.Single(file.Problems).ToString());
    }

    [Fact]
    public void Read_OrderInTwoFiles_IsOneSet()
    {
        var file = MapFixture.Orders(
            [MapFixture.Map(Store)],
            ("may.csv", StoreHeader + "A-1,Demo,paid,Custom Yoke,1,Length: 16\n"),
            ("own.csv", "order,piece,kind,finished_length\nA-1,string,compound-string,58\n"));
        Assert.Equal(["A-1/yoke 16", "A-1/string 58"], MapFixture.Shown(file));
        Assert.Equal("Demo", file.Lines[1].Slip.Customer);
    }
}
