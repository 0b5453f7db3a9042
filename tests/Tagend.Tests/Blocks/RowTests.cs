using Tagend.Blocks;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class RowTests
{
    private static Paragraph Text(string text) => new(text, Laid.Type);

    [Fact]
    public void Columns_OfEachKind_DivideTheWidth()
    {
        var row = new Row(
            [
                new Column(Text("n"), ColumnWidth.Natural),
                new Column(Text("p"), ColumnWidth.Of(40)),
                new Column(Text("s"), ColumnWidth.Shared(1)),
                new Column(Text("t"), ColumnWidth.Shared(3)),
            ],
            Gap: 5);
        var natural = Laid.Width("n");
        var share = (200 - 15 - 40 - natural) / 4;
        Assert.Equal(
            [0, natural + 5, natural + 50, natural + 55 + share],
            Laid.Out(row, 200).Children.Select(c => c.X),
            (a, b) => Math.Abs(a - b) < 0.01f);
    }

    [Fact]
    public void Columns_NaturalAndTooWide_LetTheWidestWrap()
    {
        var row = new Row([new Column(Text("short"), ColumnWidth.Natural), new Column(Text("much longer text"), ColumnWidth.Natural)], Gap: 4);
        var texts = Laid.Texts(Laid.Out(row, Laid.Width("short") + 4 + Laid.Width("much longer") + 0.5f));
        Assert.Equal(["short", "much longer", "text"], texts.Select(t => t.Text));
    }

    [Fact]
    public void Columns_FixedAndTooWide_AreAMisfit() => Assert.Equal(
        ["columns take 120 pt of width and have 100 pt"],
        Laid.Misfits(new Row([new Column(Text("a"), ColumnWidth.Of(120))]), 100, 100));

    [Fact]
    public void Misfits_OfAllColumns_AreTold() =>
        Assert.Equal(2, Laid.Misfits(Row.Equal([Text("a b c d"), Text("e f g h")], 0), 20, 10).Count);

    [Fact]
    public void Baselines_OfDifferentSizes_Meet()
    {
        var row = new Row(
            [new Column(Text("small"), ColumnWidth.Natural), new Column(new Paragraph("LARGE", Laid.Type with { Size = 30 }), ColumnWidth.Natural)],
            Level: Level.Baseline);
        var texts = Laid.Texts(Laid.Out(row, 300));
        Assert.Equal(texts[0].Baseline, texts[1].Baseline, 0.001f);
    }

    [Fact]
    public void Boxes_OfEqualLevel_AreEquallyHigh()
    {
        var row = Row.Equal([new Box(Text("one"), 3, 0.5f), new Box(Text("one two three four five"), 3, 0.5f)], 6);
        var boxes = Laid.Out(row, 120).InksAt(0, 0).OfType<BoxInk>().ToList();
        Assert.Equal(boxes[1].Height, boxes[0].Height);
        Assert.True(boxes[1].Height > 2 * Laid.Type.LineHeight);
    }
}
