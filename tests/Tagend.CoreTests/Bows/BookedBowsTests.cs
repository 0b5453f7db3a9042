using System.Text;
using Tagend.Bows;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tests.Specs;
using Xunit;

namespace Tagend.Tests.Bows;

public sealed class BookedBowsTests
{
    private static readonly Dictionary<string, string> NoAliases = [];

    [Theory]
    [InlineData("Demo hybrid 34")]
    [InlineData("HYBRID CAM (34 in)")]
    [InlineData("dh-34")]
    public void Read_RowOfBowColorsAndCustomer_IsTheWholeSet(string bow)
    {
        var file = Read($"order,bow,customer,colors,due\n801,\"{bow}\",Demo,red/black,2026-12-04\n");
        Assert.Empty(file.Problems);
        Assert.Equal(["string", "buss", "control"], file.Lines.Select(l => l.Piece));
        var first = file.Lines[0];
        Assert.Equal((Length.FromInches(60.25), "compound-string", 24), (first.FinishedLength, first.Kind, first.Strands));
        Assert.Equal("red", file.Lines[2].Colors![0].Name);
        Assert.Equal(new OrderSlip("Demo", bow, "2026-12-04", "Bow book: Demo hybrid 34"), first.Slip);
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Empty(report.Problems);
        Assert.Equal(3, Assert.Single(report.MakeSets()).Builds.Count);
    }

    [Fact]
    public void Read_OrdersOwnCells_WinAndAreNoted()
    {
        var file = Read("order,bow,colors,strands,peep\n801,Demo hybrid 34,red,28,23\n");
        Assert.Empty(file.Problems);
        Assert.All(file.Lines, l => Assert.Equal(28, l.Strands));
        Assert.Equal([Length.FromInches(23), null, null], file.Lines.Select(l => l.Peep?.Distance));
        Assert.Equal(
            "Bow book: Demo hybrid 34, but as ordered: strands 28 (book: 24); peep 23 (book: 23 1/2 in)", file.Lines[0].Slip.Notes);
        Assert.Equal("Bow book: Demo hybrid 34, but as ordered: strands 28 (book: 24)", file.Lines[1].Slip.Notes);
    }

    [Fact]
    public void Read_RowThatNamesAPiece_IsThatPieceAlone()
    {
        var file = Read("order,bow,piece,finished_length\n801,Demo hybrid 34,Buss,38 5/8\n801,Demo hybrid 34,loop,20\n802,Some other bow,string,58\n");
        Assert.Empty(file.Problems);
        Assert.Equal(["buss", "loop", "string"], file.Lines.Select(l => l.Piece));
        Assert.Equal(Length.FromInches(38.625), file.Lines[0].FinishedLength);
        Assert.Equal("buss-cable", file.Lines[0].Kind);
        Assert.Null(file.Lines[1].Kind);
        Assert.Equal("", file.Lines[2].Slip.Notes);
    }

    [Fact]
    public void Read_OwnLength_IsInsteadOfTheBooksBowLength()
    {
        var file = Read("order,bow,finished_length\n801,demo recurve 66,62 3/4\n");
        Assert.Empty(file.Problems);
        Assert.Equal((Length.FromInches(62.75), null), (file.Lines[0].FinishedLength, file.Lines[0].BowLength));
    }

    [Theory]
    [InlineData("order,bow\n801,Demo hybird 34\n", "o.csv:2: bow \"Demo hybird 34\": the row names no piece, and there is no such bow in the bow book: did you mean Demo hybrid 34?")]
    [InlineData("order,bow\n801,Nothing like it\n", "o.csv:2: bow \"Nothing like it\": the row names no piece, and there is no such bow in the bow book: there are Demo hybrid 34, Demo recurve 66")]
    [InlineData("order,bow,piece\n801,Demo hybrid 34,yoke\n", "o.csv:2: piece \"yoke\": bows/demo-hybrid-34.toml has no such piece, and the row has no length: it has string, buss, control")]
    [InlineData("order,bow,finished_length\n801,Demo hybrid 34,60\n", "o.csv:2: finished_length \"60\": the row is for the whole set, and this may be of any piece of it: name the piece (string, buss, control) in a row of its own")]
    [InlineData("order,bow,colors\n801,,red\n", "o.csv:2: piece: the row names no piece: expected a name such as string, buss or yoke")]
    public void Read_WhatTheBookCannotTell_IsAProblem(string csv, string expected) =>
        Assert.Contains(expected, Read(csv).Problems.Select(p => p.ToString()));

    [Fact]
    public void Read_ProblemOfABookedCell_NamesOrderAndBook()
    {
        var file = Read("order,bow,strands\n801,Demo hybrid 34,24\n");
        var line = file.Lines[0];
        Assert.Equal("o.csv:2: peep of string in bows/demo-hybrid-34.toml \"23 1/2 in\": why", line.Row.Problem("peep", "why").ToString());
        Assert.Equal("o.csv:2: strands \"24\": why", line.Row.Problem("strands", "why").ToString());
    }

    [Fact]
    public void Of_PiecesThatWereBuilt_AreTheSameBowAgain()
    {
        var before = Read("order,bow\n801,Demo hybrid 34\n");
        var specs = SetBuilder.Build(before, Specs()).MakeSets()[0].Builds.Select(b => b.Spec).ToList();
        var folder = Directory.CreateTempSubdirectory("tagend-").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "bows"));
        File.WriteAllText(Path.Combine(folder, "bows", "kept.toml"), BowText.Of("Kept \"34\"", specs, SpecFixture.Catalog));
        var after = Read("order,bow\n801,kept 34\n", folder);
        Directory.Delete(folder, recursive: true);
        Assert.Empty(after.Problems);
        Assert.Equal(specs, SetBuilder.Build(after, Specs()).MakeSets()[0].Builds.Select(b => b.Spec));

        static SpecBuilder Specs() => new(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date);
    }

    [Theory]
    [InlineData("bow = \"x\"\n", "bows/b.toml:1: expected a section for each piece of the bow, such as [string]")]
    [InlineData("bow = \"x\"\n[string]\nfinished_length = \"6o in\"\n", "bows/b.toml:2: [string] finished_length \"6o in\": expected a length such as 60 1/4, 60.25 in or 1530 mm")]
    [InlineData("bow = \"x\"\n[string]\nkind = \"plain\"\n", "bows/b.toml:2: [string] finished_length: the row has no length: give finished_length, or the bow_length of a recurve or longbow")]
    [InlineData("bow = \"x\"\nstrands = 23\n[string]\nfinished_length = \"60 in\"\n", "bows/b.toml:3: [string] strands \"23\": strands are laid in loops of two, so their number is even: 22 or 24")]
    [InlineData("bow = \"x\"\ncustomer = \"me\"\n[string]\nfinished_length = \"60 in\"\n", "bows/b.toml:2: customer: unknown entry; the entries here are")]
    public void Read_MistakeInABow_IsNamedWithItsPlace(string toml, string expected)
    {
        var folder = Directory.CreateTempSubdirectory("tagend-").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "bows"));
        File.WriteAllText(Path.Combine(folder, "bows", "b.toml"), toml);
        var problems = new List<Problem>();
        var book = BowBook.Read(folder, LengthUnit.Inch, ColorNames.None, problems);
        Directory.Delete(folder, recursive: true);
        Assert.Empty(book.Bows);
        Assert.StartsWith(expected, Assert.Single(problems).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("order,bow,kind,colors,strands,material\n801,Nobody's bow,compound-strin,bl!,odd,hmpe-014\n", "bow", "colors", "kind", "material", "strands")]
    [InlineData("order,bow,colors,draw_weight\n801,Nobody's bow,red/black,70 lb\n", "bow")]
    [InlineData("order,bow,piece,strands\n801,Demo hybrid 34,loop,odd\n", "piece", "strands")]
    [InlineData("order,bow,finished_length,material\n801,Demo hybrid 34,38 1/2,hmpe-014\n", "finished_length", "material", "material", "material")]
    public void Report_RowThatTheBookCannotFill_TellsWhatElseIsWrongWithIt(string csv, params string[] columns)
    {
        var report = SetBuilder.Build(Read(csv), new SpecBuilder(SpecFixture.Catalog, LengthUnit.Inch, SpecFixture.Date));
        Assert.Equal(columns, report.Problems.Select(p => p.At.Column).Order());
    }

    private static OrderFile Read(string csv, string? templates = null) => OrderReader.Read(
        [("o.csv", Encoding.UTF8.GetBytes(csv))],
        LengthUnit.Inch,
        new BookedBows(
            new OwnColumns(NoAliases, hasBows: true),
            problems => BowBook.Read(templates ?? TestFiles.Templates, LengthUnit.Inch, SpecFixture.Catalog.Colors, problems)),
        SpecFixture.Catalog.Colors);
}
