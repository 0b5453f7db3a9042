using Tagend.Blocks;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class StackTests
{
    private static Paragraph Text(string text) => new(text, Laid.Type);

    [Fact]
    public void Blocks_StandUnderEachOtherWithTheGap()
    {
        var placed = Laid.Out(new Stack([Text("a"), new Spacer(7), Text("b")], 3), 100);
        Assert.Equal([0, 12.5f + 3, 12.5f + 3 + 7 + 3], placed.Children.Select(c => c.Y));
        Assert.Equal(38, placed.Height);
    }

    [Fact]
    public void Grow_TakesWhatIsLeftByShare()
    {
        var stack = new Stack([new Grow(new Box(Text("a"), 0, 1)), Text("b"), new Grow(new Box(Text("c"), 0, 1), 3)]);
        var placed = Laid.Out(stack, 100, 212.5f);
        Assert.Equal([50, 150], placed.InksAt(0, 0).OfType<BoxInk>().Select(b => b.Height));
        Assert.Equal(212.5f, placed.Height);
    }

    [Fact]
    public void Misfits_SayWhichBlockLacksHowMuch() => Assert.Equal(
        ["\"b\" takes 12.5 pt of height at a width of 100 pt, and has 7.5 pt"],
        Laid.Misfits(new Stack([Text("a"), Text("b")]), 100, 20));
}
