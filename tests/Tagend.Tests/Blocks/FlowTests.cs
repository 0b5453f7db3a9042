using Tagend.Blocks;
using Xunit;

namespace Tagend.Tests.Blocks;

public sealed class FlowTests
{
    private static readonly float Line = Laid.Type.LineHeight;

    private static FlowItem Text(string text, bool keep = false) => new(new Paragraph(text, Laid.Type), 0, keep);

    private static string[][] Pages(IReadOnlyList<FlowItem> items, float height, float? first = null) =>
    [
        .. Flow.Pour(items, Laid.Fonts, page => new Room(100, page == 0 ? first ?? height : height)).Pages
            .Select(p => Laid.Texts(p).Select(t => t.Text).ToArray()),
    ];

    [Fact]
    public void Blocks_ThatDoNotFit_GoToTheNextPage() =>
        Assert.Equal([["a", "b"], ["c"]], Pages([Text("a"), Text("b"), Text("c")], 2 * Line));

    [Fact]
    public void FirstPage_MayHaveLessRoom() =>
        Assert.Equal([["a"], ["b", "c"]], Pages([Text("a"), Text("b"), Text("c")], 2 * Line, Line));

    [Fact]
    public void Heading_DoesNotEndAPage() =>
        Assert.Equal([["a"], ["heading", "b"]], Pages([Text("a"), Text("heading", keep: true), Text("b")], 2 * Line));

    [Fact]
    public void Paragraph_GoesOverByLines() =>
        Assert.Equal([["a", "b", "c"], ["d", "e"]], Pages([Text("a\nb\nc\nd\ne")], 3.5f * Line));

    [Theory]
    [InlineData("b\nc\nd", 3, "a", "b c d")] // a last line alone is a widow: the whole goes over
    [InlineData("b\nc\nd\ne", 3, "a b c", "d e")] // or two lines do
    [InlineData("b\nc\nd\ne", 2, "a", "b c", "d e")] // a first line alone is an orphan
    public void Paragraph_AtAPagesFoot_LeavesNoLineAlone(string text, int lines, params string[] pages) => Assert.Equal(
        pages,
        Pages([Text("a"), Text(text)], (lines * Line) + 1).Select(p => string.Join(' ', p)));

    [Fact]
    public void Before_IsLeftOutAtTheHeadOfAPage()
    {
        var flowed = Flow.Pour([Text("a"), Text("b") with { Before = 5 }], Laid.Fonts, _ => new Room(100, Line + 3));
        Assert.All(flowed.Pages, p => Assert.Equal(0, p.Children[0].Y));
        Assert.Equal(2, flowed.Pages.Count);
    }

    [Fact]
    public void Block_LargerThanAPage_IsAReason()
    {
        var flowed = Flow.Pour([new FlowItem(new Spacer(50))], Laid.Fonts, _ => new Room(100, 40));
        Assert.Empty(flowed.Pages);
        Assert.Equal(["a gap of 50 pt has 40 pt of room"], flowed.Reasons);
    }

    [Fact]
    public void Blocks_KeptTogetherBeyondAPage_AreAReason() => Assert.Equal(
        ["blocks that keep together take more than a page of 20 pt"],
        Flow.Pour([Text("a", keep: true), Text("b")], Laid.Fonts, _ => new Room(100, 20)).Reasons);

    [Fact]
    public void Block_ThatCannotBePlacedBehindItsHeading_GivesItsOwnReason() => Assert.Equal(
        ["a gap of 50 pt has 40 pt of room"],
        Flow.Pour([Text("a", keep: true), new FlowItem(new Spacer(50))], Laid.Fonts, _ => new Room(100, 40)).Reasons);
}
