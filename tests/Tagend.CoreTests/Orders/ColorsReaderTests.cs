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
    [InlineData("black:12, flo green:12", "black:12 flo-green:12")]
    [InlineData("Flo Green/Black", "flo-green black")]
    [InlineData("Flo Green/", "flo-green")]
    [InlineData("red and black", "red black")]
    [InlineData("rot und dark blue", "rot dark-blue")]
    [InlineData("red & black", "red black")]
    public void TryRead_Spelling_Reads(string text, string expected)
    {
        Assert.True(ColorsReader.TryRead(text, out var colors, out _));
        Assert.Equal(expected, string.Join(' ', colors.Select(c => c.Strands is { } n ? $"{c.Name}:{n}" : c.Name)));
    }

    [Theory]
    [InlineData("rot Flo Green", "red flo-green")]
    [InlineData("flo green:12 Schwarz:12", "flo-green:12 black:12")]
    [InlineData("green flo", "green flo")]
    [InlineData("schwarz:12 rot:12", "black:12 red:12")]
    [InlineData("black:8 flo green:8 red:8", "black:8 flo-green:8 red:8")]
    [InlineData("neon-green", "flo-green")]
    [InlineData("fluo  green", "flo-green")]
    public void TryRead_ShopsList_MakesOneNameOfAll(string text, string expected)
    {
        var names = new ColorNames(
        [
            new NamedColor("red", ["rot"]), new NamedColor("black", ["schwarz"]), new NamedColor("flo-green", ["neon green", "fluo green"]),
        ]);
        Assert.True(ColorsReader.TryRead(text, out var colors, out _, names));
        Assert.Equal(expected, string.Join(' ', colors.Select(c => c.Strands is { } n ? $"{c.Name}:{n}" : c.Name)));
    }

    [Fact]
    public void TryRead_TwoNamesOfOneColor_AreTheSameTwice()
    {
        Assert.False(ColorsReader.TryRead("rot/red", out _, out var error, new ColorNames([new NamedColor("red", ["rot"])])));
        Assert.Equal("\"red\" is named twice", error);
    }

    [Theory]
    [InlineData("", "expected colors such as black:12 red:12, or black red to share the strands equally")]
    [InlineData(" , ", "expected colors such as black:12 red:12, or black red to share the strands equally")]
    [InlineData("black:12 red", "give every color its number of strands, or none of them")]
    [InlineData("black:12, black:12", "\"black\" is named twice")]
    [InlineData(
        "black:0", "\"black:0\": strands are a whole number above 0")]
    [InlineData(
        "black:", "\"black:\": strands are a whole number above 0")]
    [InlineData(
        "black:-12", "\"black:-12\": strands are a whole number above 0")]
    [InlineData(
        "black:1e2", "\"black:1e2\": strands are a whole number above 0")]
    [InlineData("black 12, flo green:12", "\"black 12\": write a color's strands behind a colon, as in black:12")]
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
