using System.Text;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Specs;
using Xunit;

namespace Tagend.Tests.Specs;

public class ReorderTests
{
    [Theory]
    [InlineData("demo.csv", LengthUnit.Inch)]
    [InlineData("demo.csv", LengthUnit.Millimeter)]
    [InlineData("demo-mm.csv", LengthUnit.Inch)]
    [InlineData("demo-mm.csv", LengthUnit.Millimeter)]
    public void File_OfEveryDemoPiece_MakesTheSameSpecs(string name, LengthUnit unit)
    {
        var made = Build(OrderReader.Read(Path.Combine(TestFiles.DemoOrders, name), LengthUnit.Inch, SpecFixture.Catalog.Shop.Columns), unit);
        var again = Build(Read(Reorder.File(made.Pieces.Select(p => Reorder.CellsOf(p.Spec!, p.Slip)))), unit);
        Assert.Equal(made.Pieces.Select(p => (p.Spec, p.Slip with { Notes = "" })), again.Pieces.Select(p => (p.Spec, p.Slip with { Notes = "" })));
        Assert.All(made.Pieces.Zip(again.Pieces), p => Assert.Equal(p.First.Slip.Notes, p.Second.Slip.Notes));
    }

    [Fact]
    public void CellsOf_LengthChanged_KeepPlacesNearBAtTheirDistanceFromB()
    {
        var spec = SpecFixture.Good();
        var cells = Reorder.CellsOf(spec, OrderSlip.Blank);
        cells[OrderColumn.FinishedLength] = "61 in";
        cells[OrderColumn.Revision] = "2";
        var again = Assert.Single(Build(Read(Reorder.File([cells])), LengthUnit.Inch).Pieces).Spec!;
        Assert.Equal(2, again.Revision);
        Assert.Equal(8.5, (again.FinishedLength - again.Servings[^1].From).Inches, 9);
        Assert.Equal(again.FinishedLength, again.Servings[^1].To);
        Assert.Equal([9, 29.5, 51.5], again.Marks.Select(m => m.Position.Inches));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("two")]
    [InlineData("1000")]
    public void Revision_ThatIsNone_IsRefused(string revision) => Assert.Contains(
        SpecFixture.Build(("revision", revision)).Problems,
        p => p.ToString().EndsWith($"revision \"{revision}\": expected a revision number from 1 to 999", StringComparison.Ordinal));

    [Fact]
    public void File_OfAPiece_HasEveryCellExactAndInItsColumn()
    {
        var slip = new OrderSlip("Demo customer 1", "Demo bow, 70 lb", "May 3", "=soft")
        {
            Language = "de",
            Units = LengthUnit.Millimeter,
            Accessories = ["spare peep", "wax"],
        };
        var spec = SpecFixture.Good(("speed_nocks", "9 in; 30 1/8 in; B 9 1/2 in"), ("nock_groove", "0.118 in"));
        var text = Encoding.UTF8.GetString(Reorder.File([Reorder.CellsOf(spec, slip), new Dictionary<string, string> { ["order"] = "D-102" }]));
        string[] expected =
        [
            "\uFEFForder,piece,kind,revision,finished_length,material,strands,colors,draw_weight,servings,center_serving,nock_point,peep,"
                + "speed_nocks,nock_groove,twists,customer,bow,due,notes,language,units,accessories",
            "D-101,string,compound-string,1,60 1/4 in,hmpe-0145,24,black:12 red:12,70 lbf,0 in..8 in t021 black; B 0 in..8 1/2 in t021 black,"
                + "26 1/4 in..31 in t019 red,29 1/2 in,18 in,9 in; 30 1/8 in; B 9 1/2 in,.118 in,0.746888,"
                + "Demo customer 1,\"Demo bow, 70 lb\",May 3,'=soft,de,mm,spare peep; wax",
            "D-102,,,,,,,,,,,,,,,,,,,,,,",
            "",
        ];
        Assert.Equal(string.Join("\n", expected), text.Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void CellsOf_APieceWithoutMuch_AreEmptyWhereItHasNothing()
    {
        var cells = Reorder.CellsOf(
            SpecFixture.Good(
                ("kind", "plain"), ("servings", ""), ("center_serving", ""), ("nock_point", ""), ("peep", ""), ("speed_nocks", ""), ("draw_weight", "")),
            OrderSlip.Blank);
        Assert.Equal(
            ["accessories", "bow", "center_serving", "customer", "draw_weight", "due", "language", "nock_groove", "nock_point", "notes", "peep", "servings", "speed_nocks", "units"],
            cells.Where(c => c.Value.Length == 0).Select(c => c.Key).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("26.25 in..31 in t017 black", "green", "26.25 in..31 in t017 green")]
    [InlineData("26.25 in..31 in t017 black", "flo-green", "26.25 in..31 in t017 flo-green")]
    [InlineData("26.25 in..31 in t017 flo green", "dark blue", "26.25 in..31 in t017 dark blue")]
    [InlineData("26.25 in..31 in t017 black", "27..31 t019 red", "27..31 t019 red")]
    [InlineData("26.25 in..31 in t017 black", "", "")]
    [InlineData("", "green", "green")]
    public void Changed_CenterServing_TakesAColorAlone(string was, string text, string cell) =>
        Assert.Equal(cell, Reorder.Changed(was, OrderColumn.CenterServing, text));

    [Theory]
    [InlineData("0 in..8 in t021 black; B 0 mm..203 mm t021", "red", "0 in..8 in t021 red; B 0 mm..203 mm t021 red")]
    [InlineData("0 in..8 in t021 black; B 0 in..8 in t021 black", "A 0..9", "A 0..9")]
    public void Changed_Servings_TakeAColorForAllOfThem(string was, string text, string cell) =>
        Assert.Equal(cell, Reorder.Changed(was, OrderColumn.Servings, text));

    [Fact]
    public void Changed_AnyOtherCell_IsTheTextItself() => Assert.Equal("green", Reorder.Changed("black:12 red:12", OrderColumn.Colors, "green"));

    private static OrderFile Read(byte[] file)
    {
        var read = OrderReader.Read("again.csv", file, LengthUnit.Inch, new Dictionary<string, string>());
        Assert.Empty(read.Problems);
        return read;
    }

    private static SetReport Build(OrderFile file, LengthUnit unit)
    {
        var report = SetBuilder.Build(file, new SpecBuilder(SpecFixture.Catalog, unit, SpecFixture.Date));
        Assert.All(report.Pieces, p => Assert.NotNull(p.Spec));
        return report;
    }
}
