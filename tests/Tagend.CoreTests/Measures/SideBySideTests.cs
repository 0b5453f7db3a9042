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

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(255)]
    [InlineData(256)]
    [InlineData(257)]
    [InlineData(1000)]
    public void Ahead_LongAndShortLists_KeepsTheirOrder(int count) =>
        Assert.Equal(Enumerable.Range(0, count), SideBySide.Ahead(Enumerable.Range(0, count)));

    [Theory]
    [InlineData(0)]
    [InlineData(300)]
    [InlineData(600)]
    public void Ahead_OfWhatThrows_ThrowsTheSameOnce(int before)
    {
        var seen = 0;
        var thrown = Assert.Throws<InvalidDataException>(() =>
        {
            foreach (var _ in SideBySide.Ahead(Failing()))
            {
                seen++;
            }
        });
        Assert.Equal("here", thrown.Message);
        Assert.Equal(before / 256 * 256, seen);

        IEnumerable<int> Failing()
        {
            for (var i = 0; i < before; i++)
            {
                yield return i;
            }

            throw new InvalidDataException("here");
        }
    }

    [Fact]
    public void Ahead_CallerThatLeaves_WaitsForWhatIsBeingFetched()
    {
        var isFetching = 0;
        Assert.Equal(3, SideBySide.Ahead(Slow()).Skip(2).First());
        Assert.Equal(0, isFetching);

        IEnumerable<int> Slow()
        {
            for (var i = 1; ; i++)
            {
                Interlocked.Increment(ref isFetching);
                Thread.SpinWait(2_000);
                Interlocked.Decrement(ref isFetching);
                yield return i;
            }
        }
    }
}
