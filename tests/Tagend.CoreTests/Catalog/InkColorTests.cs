using Tagend.Catalog;
using Xunit;

namespace Tagend.Tests.Catalog;

public sealed class InkColorTests
{
    // WCAG 2.x, contrast ratio, with the examples that its understanding documents and public checkers give.
    [Theory]
    [InlineData("#000000", 21)]
    [InlineData("#ffffff", 1)]
    [InlineData("#777777", 4.48)]
    [InlineData("#767676", 4.54)]
    [InlineData("#ff0000", 4.00)]
    [InlineData("#0000ff", 8.59)]
    public void Contrast_WithWhite_IsAsPublished(string text, double contrast)
    {
        Assert.True(InkColor.TryRead(text, out var color));
        Assert.Equal(contrast, color.ContrastWithWhite, 0.005);
    }

    [Theory]
    [InlineData("#1A4F8C", "#1a4f8c")]
    [InlineData("#1a4f8c", "#1a4f8c")]
    public void TryRead_AColor_GivesIt(string text, string expected)
    {
        Assert.True(InkColor.TryRead(text, out var color));
        Assert.Equal(expected, color.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("blue")]
    [InlineData("#fff")]
    [InlineData("1a4f8c#")]
    [InlineData("#1a4f8g")]
    public void TryRead_AnythingElse_IsRefused(string text) => Assert.False(InkColor.TryRead(text, out _));

    [Theory]
    [InlineData("#77bbff")]
    [InlineData("#ffff00")]
    [InlineData("#777777")]
    public void Darkened_OfAPaleColor_CanJustBeRead(string text)
    {
        InkColor.TryRead(text, out var color);

        Assert.InRange(color.Darkened().ContrastWithWhite, InkColor.LeastContrast, InkColor.LeastContrast + 0.2);
    }
}
