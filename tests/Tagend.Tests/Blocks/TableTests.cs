using Tagend.Blocks;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class TableTests
{
    private static readonly Table Two = new(
        [new TableColumn("Name", ColumnWidth.Shared()), new TableColumn("in", ColumnWidth.Of(30), Align.Right)],
        [Row("first", "1"), Row("second", "22"), Row("third", "333")],
        Laid.Type);

    private static Paragraph[] Row(params string[] cells) => [.. cells.Select(c => new Paragraph(c, Laid.Type))];

    [Fact]
    public void Cells_StandInTheirColumnsAndAlign()
    {
        var texts = Laid.Texts(Laid.Out(Two, 100));
        Assert.Equal(["Name", "in", "first", "1", "second", "22", "third", "333"], texts.Select(t => t.Text));
        Assert.All(texts.Where((_, i) => i % 2 == 0), t => Assert.Equal(0, t.X));
        Assert.All(texts.Where((_, i) => i % 2 == 1), t => Assert.Equal(100, t.X + Laid.Width(t.Text), 0.01f));
    }

    [Fact]
    public void Part_RepeatsTheHeader()
    {
        var height = Laid.Out(Two with { Rows = [.. Two.Rows.Take(2)] }, 100).Height;
        var split = Two.Split(Laid.Fonts, new Room(100, height));
        Assert.Equal(["Name", "in", "first", "1", "second", "22"], Laid.Texts(split.Here!).Select(t => t.Text));
        Assert.Equal(["Name", "in", "third", "333"], Laid.Lines(split.Rest!, 100));
    }

    [Fact]
    public void Part_WithoutRoomForARow_GoesOverWhole() =>
        Assert.Null(Two.Split(Laid.Fonts, new Room(100, 20)).Here);

    [Fact]
    public void Misfit_SaysHowManyRowsFit() => Assert.Equal(
        ["a table of 3 rows: 1 fit into 40 pt of height"],
        Laid.Misfits(Two, 100, 40));

    [Fact]
    public void Rules_StandUnderTheHeaderAndBetweenRows()
    {
        var rules = Laid.Out(Two, 100).InksAt(0, 0).OfType<LineInk>().ToList();
        Assert.Equal([Two.HeaderRule, Two.RowRule, Two.RowRule], rules.Select(r => r.Width));
    }
}
