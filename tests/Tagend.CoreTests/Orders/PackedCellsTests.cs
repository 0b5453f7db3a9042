using System.Globalization;
using CsCheck;
using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class PackedCellsTests
{
    [Fact]
    public void At_AnyRecords_GivesTheirCellsAgain() =>
        Gen.String[Gen.Char['a', 'e'], 0, 3].Array[0, 30].Array[0, 40].Sample(records =>
        {
            var packed = new PackedCells();
            var places = records.Select(packed.Add).ToList();
            packed.Close();
            Assert.Equal(records, places.Select(packed.At));
        });

    /// <summary>A text's number takes one byte below 2^7, two below 2^14, and then three: at these limits and just past them.</summary>
    [Fact]
    public void At_MoreTextsThanTwoBytesNumber_GivesEachAgain()
    {
        var packed = new PackedCells();
        var texts = Enumerable.Range(0, (1 << 14) + 2).Select(i => i.ToString(CultureInfo.InvariantCulture)).ToList();
        var places = texts.Select(t => packed.Add([t])).ToList();
        packed.Close();
        Assert.All([0, 127, 128, 129, (1 << 14) - 1, 1 << 14, (1 << 14) + 1], i => Assert.Equal([texts[i]], packed.At(places[i])));
        Assert.Equal((3, 4), (places[129] - places[128], places[^1] - places[^2]));
    }

    [Fact]
    public void At_ARecordOfManyCells_GivesAllOfThem()
    {
        var packed = new PackedCells();
        string[] cells = [.. Enumerable.Range(0, 250).Select(i => $"{i % 7}")];
        var place = packed.Add(cells);
        Assert.Equal(cells, packed.At(place));
    }
}
