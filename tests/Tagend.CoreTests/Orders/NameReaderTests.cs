using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class NameReaderTests
{
    [Theory]
    [InlineData("1001", "1001")]
    [InlineData(" so-17.b ", "SO-17.B")]
    [InlineData("#1055", "1055")]
    [InlineData(" # so 7", "SO 7")]
    [InlineData("ä 7", "Ä 7")]
    [InlineData("a\u00A0 7", "A 7")]
    [InlineData("123456789012345678901234", "123456789012345678901234")]
    public void TryReadOrder_Name_IsInCapitals(string text, string expected)
    {
        Assert.True(NameReader.TryReadOrder(text, out var name, out _));
        Assert.Equal(expected, name);
    }

    [Theory]
    [InlineData("Buss", "buss")]
    [InlineData("HMPE-0145", "hmpe-0145")]
    [InlineData("cable_2", "cable_2")]
    public void TryReadName_Name_IsInLowerCase(string text, string expected)
    {
        Assert.True(NameReader.TryReadName(text, out var name, out _));
        Assert.Equal(expected, name);
    }

    [Theory]
    [InlineData("", "expected a name of letters and digits")]
    [InlineData("  ", "expected a name of letters and digits")]
    [InlineData("..", "a name starts and ends with a letter or a digit")]
    [InlineData("17-", "a name starts and ends with a letter or a digit")]
    [InlineData("10/17", "a name has letters, digits, spaces, hyphens, points and underscores only, not /")]
    [InlineData("10\\17", "a name has letters, digits, spaces, hyphens, points and underscores only, not \\")]
    [InlineData("a\u0007b", "a name has letters, digits, spaces, hyphens, points and underscores only, not character U+0007")]
    [InlineData("a😀", "a name has letters, digits, spaces, hyphens, points and underscores only, not character U+D83D")]
    [InlineData("1234567890123456789012345", "a name has at most 24 characters")]
    public void TryReadOrder_AnythingElse_SaysWhatIsWrong(string text, string error)
    {
        Assert.False(NameReader.TryReadOrder(text, out _, out var actual));
        Assert.Equal(error, actual);
    }
}
