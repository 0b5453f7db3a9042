using Tagend.Measures;
using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class KnownCellsTests
{
    [Fact]
    public void TryGet_SameTextElsewhere_IsNotTheSameCell()
    {
        var cells = new KnownCells(ColorNames.None);
        cells.Keep(OrderColumn.NockPoint, LengthUnit.Inch, "29", "in");
        Assert.True(cells.TryGet(OrderColumn.NockPoint, LengthUnit.Inch, "29", out var value));
        Assert.Equal("in", value);
        Assert.False(cells.TryGet(OrderColumn.NockPoint, LengthUnit.Millimeter, "29", out _));
        Assert.False(cells.TryGet(OrderColumn.Peep, LengthUnit.Inch, "29", out _));
    }

    [Fact]
    public void Keep_EveryCellAnother_EndsAtItsLimit()
    {
        var cells = new KnownCells(ColorNames.None);
        for (var i = 0; i < 5000; i++)
        {
            cells.Keep(OrderColumn.NockPoint, LengthUnit.Inch, $"{i}", i);
        }

        Assert.True(cells.TryGet(OrderColumn.NockPoint, LengthUnit.Inch, "4095", out _));
        Assert.False(cells.TryGet(OrderColumn.NockPoint, LengthUnit.Inch, "4096", out _));
    }
}
