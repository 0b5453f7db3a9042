using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

public class SideBySideTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(31)]
    [InlineData(32)]
    [InlineData(33)]
    [InlineData(1000)]
    public void Select_LongAndShortLists_KeepsTheirOrder(int count)
    {
        int[] items = [.. Enumerable.Range(0, count)];
        Assert.Equal(items.Select(i => i * i), SideBySide.Select(items, i => i * i));
    }
}
