using Tagend.Orders;
using Xunit;

namespace Tagend.Tests.Orders;

public class ColorsReaderTests
{
    [Theory]
    [InlineData("black:12 red:12", "black:12 red:12")]
    [InlineData("Black : 12, RED: 12", "black:12 red:12")]
    [InlineData("black:8;red:8 / flo-green:8", "black:8 red:8 flo-green:8")]
    [InlineData("black+red", "black red")]
    [InlineData("black red", "black red")]
    [InlineData("black, red,", "black red")]
    [InlineData("noir\nété", "noir été")]
    [InlineData("red2:24", "red2:24")]
    public void TryRead_Spelling_Reads(string text, string expected)
    {
        Assert.True(ColorsReader.TryRead(text, out var colors, out _));
        Assert.Equal(expected, string.Join(' ', colors.Select(c => c.Strands is { } n ? $"{c.Name}:{n}" : c.Name)));
    }

    [Theory]
    [InlineData("", "expected colors such as black:12 red:12, or black red to share the strands equally")]
    [InlineData(" , ", "expected colors such as black:12 red:12, or black red to share the strands equally")]
    [InlineData("black:12 red", "give every color its number of strands, or none of them")]
    [InlineData("black:12, black:12", "\"black\" is named twice")]
    [InlineData(
        "black:11 red:13",
        "\"black:11\": strands are an even number above 0, for a color takes whole loops of two strands")]
    [InlineData(
        "black:0", "\"black:0\": strands are an even number above 0, for a color takes whole loops of two strands")]
    [InlineData(
        "black:", "\"black:\": strands are an even number above 0, for a color takes whole loops of two strands")]
    [InlineData(
        "black:-12", "\"black:-12\": strands are an even number above 0, for a color takes whole loops of two strands")]
    [InlineData(
        "black:1e2", "\"black:1e2\": strands are an even number above 0, for a color takes whole loops of two strands")]
    [InlineData(
        "black:12, flo green:12",
        "\"flo green\": write a color as one word, joined by a hyphen if need be, and its strands as black:12")]
    [InlineData(
        "black 12 red 12",
        "\"12\": a color is letters, digits and hyphens with at least one letter, and its strands follow as in black:12")]
    [InlineData(
        "bl@ck",
        "\"bl@ck\": a color is letters, digits and hyphens with at least one letter, and its strands follow as in black:12")]
    [InlineData(
        ":12", "\"\": a color is letters, digits and hyphens with at least one letter, and its strands follow as in black:12")]
    public void TryRead_AnythingElse_SaysWhatIsWrong(string text, string error)
    {
        Assert.False(ColorsReader.TryRead(text, out _, out var actual));
        Assert.Equal(error, actual);
    }
}
