using Tagend.Pages.Parts;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class SheetUseTests
{
    [Theory]
    [InlineData(1, new int[] { }, "0:1 0:2 0:3 0:4 1:1 1:2")]
    [InlineData(3, new int[] { }, "0:3 0:4 1:1 1:2 1:3 1:4")]
    [InlineData(1, new[] { 1, 3 }, "0:2 0:4 1:1 1:2 1:3 1:4")] // spoiled on the first sheet only
    [InlineData(2, new[] { 1, 4 }, "0:2 0:3 1:1 1:2 1:3 1:4")]
    public void Places_OfASheetOfFour_LeaveOutWhatIsUsedAndSpoiled(int first, int[] spoiled, string expected)
    {
        var sheet = Stock.Roll(100, 100, 203) with { Rows = 2, Columns = 2 };
        var places = new SheetUse(first, spoiled.ToHashSet()).PlacesOn(sheet).Take(6);
        Assert.Equal(expected, string.Join(' ', places.Select(p => $"{p.Sheet}:{p.Label}")));
    }

    [Fact]
    public void Places_OnARoll_LeaveOutNone() => Assert.Equal(
        [(0, 1), (1, 1)], new SheetUse(3, new HashSet<int> { 1 }).PlacesOn(Stock.Roll(100, 100, 203)).Take(2));

    [Theory]
    [InlineData(1, new[] { 4 }, null)]
    [InlineData(5, new int[] { }, "no label 5: a sheet of roll (Test roll) has 4")]
    [InlineData(1, new[] { 2, 7 }, "no label 7: a sheet of roll (Test roll) has 4")]
    [InlineData(3, new[] { 3, 4 }, "no label is left on the first sheet of roll (Test roll): put in a new one")]
    public void Misfit_OfASheetOfFour_IsSaid(int first, int[] spoiled, string? expected) => Assert.Equal(
        expected, new SheetUse(first, spoiled.ToHashSet()).MisfitOn(Stock.Roll(100, 100, 203) with { Rows = 2, Columns = 2 }));
}
