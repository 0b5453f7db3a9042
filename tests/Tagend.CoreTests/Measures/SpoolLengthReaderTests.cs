using Tagend.Measures;
using Xunit;

namespace Tagend.Tests.Measures;

public class SpoolLengthReaderTests
{
    [Theory]
    [InlineData("1000 yd", 914_400)] // 1 yd = 0.9144 m, exact: NIST SP 811
    [InlineData(" 12.5 Yards ", 11_430)]
    [InlineData("1 yard", 914)]
    [InlineData("900 m", 900_000)]
    [InlineData("100 ft", 30_480)]
    [InlineData("0 m", 0)]
    [InlineData("100000 m", 100_000_000)]
    public void TryRead_LengthOfASpool_IsReadExactly(string text, double millimeters)
    {
        Assert.True(SpoolLengthReader.TryRead(text, out var length));
        Assert.Equal(Length.FromMillimeters(millimeters), length);
    }

    [Theory]
    [InlineData("")]
    [InlineData("yd")]
    [InlineData("1000")]
    [InlineData("1,000 yd")]
    [InlineData("-5 m")]
    [InlineData("100000.001 m")]
    [InlineData("3' 2\" yd")]
    public void TryRead_AnythingElse_IsRefused(string text) => Assert.False(SpoolLengthReader.TryRead(text, out _));
}
