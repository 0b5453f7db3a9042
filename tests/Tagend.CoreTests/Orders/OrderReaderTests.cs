using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Orders;

public class OrderReaderTests
{
    private const string Minimal = "order,piece,finished_length\n";

    [Fact]
    public void Read_EveryColumn_IsKept()
    {
        var file = Read(
            """
            order,piece,kind,finished_length,material,strands,colors,draw_weight,servings,center_serving,nock_point,peep,speed_nocks,nock_groove,twists,customer,bow,due,notes
            so-1,String,Compound-String,60 1/4,HMPE-0145,24,black:12 red:12,70 lb,A 0..7 1/2 t021; B 0..8 t021,26 1/4..31 t021 red,28,A 19 1/2,B 7; B 8,0.116,0.75,Demo customer 1,"compound bow, hybrid cam",3 May,wax well
            """);

        Assert.Empty(file.Problems);
        var line = Assert.Single(file.Lines);
        Assert.Equal("SO-1", line.Order);
        Assert.Equal("string", line.Piece);
        Assert.Equal("compound-string", line.Kind);
        Assert.Equal(Length.FromInches(60.25), line.FinishedLength);
        Assert.Null(line.BowLength);
        Assert.Equal("hmpe-0145", line.Material);
        Assert.Equal(24, line.Strands);
        Assert.Equal([new OrderedColor("black", 12), new OrderedColor("red", 12)], line.Colors);
        Assert.Equal(Force.FromPounds(70), line.DrawWeight);
        Assert.Equal(2, line.Servings?.Count);
        Assert.Equal("red", line.CenterServing?.Color);
        Assert.Equal(FromA(28), line.NockPoint);
        Assert.Equal(FromA(19.5), line.Peep);
        Assert.Equal([FromB(7), FromB(8)], line.SpeedNocks);
        Assert.Equal(Length.FromInches(0.116), line.NockGroove);
        Assert.Equal(0.75, line.TurnsPerInch);
        Assert.Equal(new OrderSlip("Demo customer 1", "compound bow, hybrid cam", "3 May", "wax well"), line.Slip);
        Assert.Equal(2, line.Row.Line);
        Assert.Equal("60 1/4", line.Row["finished_length"]);
    }

    /// <summary>Longer than what is split off at once, and than what room is made for: first short rows, then long ones.</summary>
    [Fact]
    public void Read_TwoLongFiles_AreAllTheirRowsWithProblemsAtTheirLines()
    {
        byte[] Rows(int first) => Encoding.UTF8.GetBytes("order,piece,finished_length,notes\n" + string.Concat(Enumerable.Range(first, 3_000).Select(i =>
            $"{i},string,{(i % 256 == 0 ? "6o" : "60")},{(i < 2_000 ? "" : $"note {i} {new string('x', i % 50)}")}\n")));

        var file = OrderReader.Read([("one.csv", Rows(0)), ("two.csv", Rows(3_000))], LengthUnit.Inch, new OwnColumns(new Dictionary<string, string>()));
        var good = Enumerable.Range(0, 6_000).Where(i => i % 256 != 0).ToList();
        Assert.Equal(good.Select(i => $"{i}"), file.Lines.Select(l => l.Order));
        Assert.Equal(good.Select(i => i < 2_000 ? "" : $"note {i} {new string('x', i % 50)}".TrimEnd()), file.Lines.Select(l => l.Slip.Notes));
        Assert.Equal(
            Enumerable.Range(0, 6_000).Where(i => i % 256 == 0).Select(i => new Place(i < 3_000 ? "one.csv" : "two.csv", (i % 3_000) + 2, "finished_length")),
            file.Problems.Select(p => p.At));
    }

    [Fact]
    public void Read_WhatTheCustomerGets_IsTheSetsButForAccessories()
    {
        var file = Read("order,piece,finished_length,language,units,accessories\n1,string,60,DE,mm,loop; peep 3/16 in ;\n1,buss,38,,,silencers A 12 in\n2,string,60,,,\n");

        Assert.Empty(file.Problems);
        Assert.Equal(["de", "de", ""], file.Lines.Select(l => l.Slip.Language));
        Assert.Equal([LengthUnit.Millimeter, LengthUnit.Millimeter, null], file.Lines.Select(l => l.Slip.Units));
        Assert.Equal([["loop", "peep 3/16 in"], ["silencers A 12 in"], []], file.Lines.Select(l => l.Slip.Accessories));
    }

    [Fact]
    public void Read_LanguageThatDiffersWithinASet_IsAProblem()
    {
        var file = Read("order,piece,finished_length,language\n1,string,60,de\n1,buss,38,fr\n");

        Assert.Equal(
            "language \"fr\": order 1 has \"de\" in line 2: give it once, or repeat it in every row of the set",
            Assert.Single(file.Problems).ToString().Split(": ", 2)[1]);
    }

    [Fact]
    public void Read_EmptyCellsAndAbsentColumns_AreNull()
    {
        var line = Assert.Single(Read("order,piece,finished_length,kind,peep\n1,string,60,,\n").Lines);
        Assert.Null(line.Kind);
        Assert.Null(line.Peep);
        Assert.Null(line.Servings);
        Assert.Equal(OrderSlip.Blank, line.Slip);
    }

    [Theory]
    [InlineData("order,piece,finished_length,notes\n1,string,60 1/4,\"a, b\"\n")]
    [InlineData("order;piece;finished_length;notes\n1;string;60,25;a, b\n")]
    [InlineData("order\tpiece\tfinished_length\tnotes\n1\tstring\t60,25\ta, b\n")]
    [InlineData("sep=;\norder;piece;finished_length;notes\n1;string;60,25;a, b\n")]
    [InlineData("\"order\",\"piece\",\"finished_length\",\"notes\"\n\"1\",\"string\",\"60 1/4\"\"\",\"a, b\"\n")]
    [InlineData("order,piece,finished_length,notes\n1, string , 60 1/4\", \"a, b\"")]
    [InlineData("\n\n order,piece,finished_length,notes,,\n1,string,5' 0 1/4\",\"a, b\",,\n,,,,,\n")]
    [InlineData("Order,PIECE,Finished Length,Notes\n1,string,60.25,\"a, b\"\n")]
    [InlineData("piece,finished-length,note,order\nstring,60.25,\"a, b\",1,,,\n")]
    [InlineData("order,piece,finished_length,notes\r\n1,string,60 1/4,\"a, b\"\r\n")]
    [InlineData("order,piece,finished_length,notes\r1,string,60 1/4,\"a, b\"\r")]
    public void Read_EverySeparatorQuotingAndLineEnd_IsTheSame(string text)
    {
        var file = Read(text);
        Assert.Empty(file.Problems);
        var line = Assert.Single(file.Lines);
        Assert.Equal(("1", "string", "a, b"), (line.Order, line.Piece, line.Slip.Notes));
        Assert.Equal(Length.FromInches(60.25), line.FinishedLength);
    }

    [Fact]
    public void Read_Aliases_NameTheShopsColumns()
    {
        var aliases = new Dictionary<string, string>
        {
            ["auftrag"] = "order",
            ["teil"] = "piece",
            ["länge"] = "finished_length",
            ["farbe 1"] = "colors",
        };
        var file = OrderReader.Read(
            "orders.csv",
            Encoding.UTF8.GetBytes("Auftrag;Teil;Länge;Farbe 1\n1;sehne;1530,5;schwarz\n"),
            LengthUnit.Millimeter,
            aliases);

        Assert.Empty(file.Problems);
        var line = Assert.Single(file.Lines);
        Assert.Equal(Length.FromMillimeters(1530.5), line.FinishedLength);
        Assert.Equal("schwarz", line.Colors?[0].Name);
    }

    [Fact]
    public void Read_UnknownColumns_BecomeNotes()
    {
        var line = Assert.Single(Read("order,piece,finished_length,notes,Bin,Box no\n1,string,60,wax,B7,\n").Lines);
        Assert.Equal("wax\nBin: B7", line.Slip.Notes);
    }

    [Fact]
    public void Read_QuotedLineEnds_KeepLineNumbersRight()
    {
        var file = Read(
            "order,piece,finished_length,notes\r\n1,a,60,\"one\r\ntwo\"\r\n\r\n1,b,6o,\"x\r\ny\"\r\n1,c,60,\r\n1,d,0,\r\n");
        Assert.Equal(
            [
                "orders.csv:5: finished_length \"6o\": expected a length such as 60 1/4, 60.25 in or 1530 mm",
                "orders.csv:8: finished_length \"0\": expected a length above 0 and below 10 m (393 11/16 in)",
            ],
            file.Problems.Select(p => p.ToString()));
        Assert.Equal("one\ntwo", file.Lines[0].Slip.Notes);
        Assert.Equal([2, 7], file.Lines.Select(l => l.Row.Line));
    }

    [Fact]
    public void Read_RowWithAProblem_BreaksItsOrderOnly()
    {
        var file = Read(Minimal + "a1,string,60\na1,buss,x\na2,string,61\n");
        Assert.Equal([new RowName("A1", "buss", "orders.csv", 3)], file.BrokenRows);
        Assert.Equal(["A1"], file.BrokenOrders);
        Assert.Equal(["A1", "A2"], file.Lines.Select(l => l.Order));
    }

    [Fact]
    public void Read_RowWithoutOrder_BreaksTheOrderAbove()
    {
        var file = Read(Minimal + "1,string,60\n,buss,38\n2,string,61\n");
        Assert.Equal(
            "orders.csv:3: order: the row names no order: every row of a set needs the set's number",
            Assert.Single(file.Problems).ToString());
        Assert.Equal(["1"], file.BrokenOrders);
    }

    [Fact]
    public void Read_Slip_IsTakenFromAnyRowOfTheSet()
    {
        var file = Read(
            "order,piece,finished_length,customer,bow,due,notes\n" +
            "1,string,60,Demo,,,own\n2,string,60,Other,,,\n1,buss,38,demo,\"a\n bow\",,\n1,yoke,10,,,May,\n");
        Assert.Empty(file.Problems);
        Assert.Equal(
            [
                new OrderSlip("Demo", "a bow", "May", "own"),
                new OrderSlip("Other", "", "", ""),
                new OrderSlip("Demo", "a bow", "May", ""),
                new OrderSlip("Demo", "a bow", "May", ""),
            ],
            file.Lines.Select(l => l.Slip));
    }

    [Fact]
    public void Read_QuotesThatMayHideRows_LeaveNothingToPrint()
    {
        var file = Read(Minimal + "1,string,60\n2,\"string,60\n1,buss\",38\",9\n3,string,61\n");
        Assert.Equal(
            [
                "orders.csv:3: the row has 4 cells and the header 3: put quotes around a cell that holds the separator",
                "orders.csv:3: the row spans several lines, so rows may be lost in it: nothing in this file is printed until it is fixed",
            ],
            file.Problems.Select(p => p.ToString()));
        Assert.Empty(file.Lines);
        Assert.Equal([2, 5], file.BrokenRows.Select(r => r.Line));
        Assert.Equal(["1", "2", "3"], file.BrokenOrders.Order());
    }

    [Theory]
    [InlineData("2,\"a\nb\",\"60 1/4\"\"\",\"x\n3,string,61,\n", 4)]
    [InlineData("2,\"a\r\nb\",60\",\"x\"\"y\r\n\"\"\r\n3,string,61,\r\n", 4)]
    [InlineData("2,\"x,\n,\"\"\n", 3)]
    [InlineData("2,buss 38\",60\",\"x\n3,string,61,\n4,string,62,\n", 3)] // an inch mark before it
    public void Read_QuoteNeverClosed_IsShownWhereItOpens(string rows, int line)
    {
        var file = Read($"order,piece,finished_length,notes\n1,string,60,\n{rows}");
        Assert.Equal(
            $"orders.csv:{line}: the quote that opens here is never closed: close it, or double it if it is an inch mark in a quoted cell",
            file.Problems.Single(p => p.Message.StartsWith("the quote", StringComparison.Ordinal)).ToString());
        Assert.Empty(file.Lines);
    }

    [Theory]
    [InlineData("", "orders.csv: the file is empty: expected a header such as order,piece,kind,finished_length and a row for each piece")]
    [InlineData("\uFEFF\n\n,,\n", "orders.csv: the file is empty: expected a header such as order,piece,kind,finished_length and a row for each piece")]
    [InlineData("\norder,piece,finished_length\n,,\n", "orders.csv:2: there are no rows below the header: add one for each piece")]
    [InlineData("order,\"piece\n", "orders.csv:1: the quote that opens here is never closed: close it, or double it if it is an inch mark in a quoted cell")]
    public void Read_NoRows_IsAProblem(string text, string problem)
    {
        var file = Read(text);
        Assert.Equal(problem, Assert.Single(file.Problems).ToString());
        Assert.Empty(file.Lines);
    }

    /// <summary>The header says what stands between cells, and neither the rows below it nor what its names have in quotes.</summary>
    [Theory]
    [InlineData("order,piece,finished_length,notes\n1,string,60,a;b;c;d;e;f;g;h;i;j\n", "a;b;c;d;e;f;g;h;i;j")]
    [InlineData("\r\n  \r\norder,piece,finished_length,notes\n1,string,60,a;b;c;d;e;f;g;h;i;j\n", "a;b;c;d;e;f;g;h;i;j")]
    [InlineData("order,piece,finished_length,notes,\"a;b;c;d\ne;f;g;h\"\n1,string,60,wax,\n", "wax")]
    [InlineData("\n\r\norder;piece;finished_length;notes\n1;string;60;a,b,c,d,e,f,g,h,i,j\n", "a,b,c,d,e,f,g,h,i,j")]
    [InlineData("\"order\";\"piece\";\"finished_length\";\"notes\"\n1;string;60;a,b,c,d,e,f,g,h,i,j\n", "a,b,c,d,e,f,g,h,i,j")]
    public void Read_SeparatorsElsewhere_DoNotCount(string text, string notes)
    {
        var file = Read(text);
        Assert.Empty(file.Problems);
        Assert.Equal(notes, Assert.Single(file.Lines).Slip.Notes);
    }

    [Theory]
    [InlineData("1,\"string\" ,60\", \"wax\" \t\r\n")]
    [InlineData("1,\t\"string\"\t,60\",\"wax\"\n")]
    public void Read_SpacesAroundQuotesBesideAnInchMark_AreNoFault(string row)
    {
        var file = Read($"order,piece,finished_length,notes\n{row}");
        Assert.Empty(file.Problems);
        Assert.Equal(("string", "wax"), (file.Lines[0].Piece, file.Lines[0].Slip.Notes));
    }

    [Fact]
    public void Read_PieceThatAnotherFileHas_NamesThatFile()
    {
        var text = "order,piece,finished_length\n1,buss,38\n"u8.ToArray();
        var file = OrderReader.Read([("a.csv", text), ("b.csv", text)], LengthUnit.Inch, new OwnColumns(new Dictionary<string, string>()));
        Assert.Equal(
            "b.csv:2: piece \"buss\": order 1 already has a piece of that name in line 2 of a.csv: give each piece of a set its own name",
            Assert.Single(file.Problems).ToString());
    }

    [Fact]
    public void Read_HeaderWithANameWithoutEnd_IsRefusedBeforeItIsCompared()
    {
        var file = Read($"order,piece,{new string('x', 201)}\n1,string,60\n");
        Assert.StartsWith(
            $"orders.csv:1 \"{new string('x', 40)}…\": the header has a name of 201 characters, and names have at most 200: ",
            Assert.Single(file.Problems).ToString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ByteOrderMarkInTheMiddle_IsLeftOutAsWhatCannotBeSeen()
    {
        var file = Read("notes,order,piece,finished_length\nwax,1,string,60\n\uFEFFwax,2,string,60\n");
        Assert.Equal(["wax", "wax"], file.Lines.Select(l => l.Slip.Notes));
    }

    internal static OrderFile Read(string text) => OrderReader.Read(
        "orders.csv", Encoding.UTF8.GetBytes(text), LengthUnit.Inch, new Dictionary<string, string>());

    private static Position FromA(double inches) => new(PieceEnd.A, Length.FromInches(inches));

    private static Position FromB(double inches) => new(PieceEnd.B, Length.FromInches(inches));
}
