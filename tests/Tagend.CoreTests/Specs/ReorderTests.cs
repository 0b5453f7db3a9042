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
