using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Problems;

public class ShownTextTests
{
    [Theory]
    [InlineData("Zoë × 60¼ 漢 \U0001F3F9", "Zoë × 60¼ 漢 \U0001F3F9")]
    [InlineData("\u001B[2J\a\b\u007F\u009B", "\\u001B[2J\\u0007\\u0008\\u007F\\u009B")] // ESC, BEL, backspace, DEL, CSI
    [InlineData("\u202Etxt.\u2066\u200B", "\\u202Etxt.\\u2066\\u200B")] // directions, a space of no width
    [InlineData("a\nb\u2028", "a\\u000Ab\\u2028")]
    [InlineData("\U000E0041", "\\uE0041")] // a tag character
    public void Of_Text_HasNumbersInPlaceOfWhatCannotBeSeen(string text, string shown)
    {
        Assert.Equal(shown, ShownText.Of(text));
        Assert.Equal(text == shown, ShownText.IsShown(text));
    }

    [Fact]
    public void Of_WhatIsKept_StaysAsItIs() => Assert.Equal("a\nb\\u001B", ShownText.Of("a\nb\u001B", "\n"));
}
