using System.Text;
using Tagend.Output;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class FontsTests
{
    [Theory]
    [InlineData("61 3/16 in ⅜ × ± ° ⚠ µ é ñ ü ß – — “ ” ’ …", null)]
    [InlineData("漢", 0x6F22)]
    [InlineData("ab\tc", 0x09)]
    public void FirstMissing_OfAText_IsTheFirstWithoutPicture(string text, int? expected) =>
        Assert.All(Enum.GetValues<Weight>(), w => Assert.Equal(expected, TestFonts.Shipped.FirstMissing(text, w)?.Value));

    [Fact]
    public void WidthOf_WithTracking_AddsItToEachCharacter()
    {
        var style = new TextStyle(Weight.Bold, 10);
        var plain = TestFonts.Shipped.WidthOf("jig card", style);
        Assert.Equal(plain + (8 * 0.5f), TestFonts.Shipped.WidthOf("jig card", style with { Tracking = 0.5f }), 0.001f);
        Assert.Equal(plain * 2, TestFonts.Shipped.WidthOf("jig card", style with { Size = 20 }), 0.001f);
    }

    [Fact]
    public void Load_WithoutTheFiles_SaysWhichAndWhatToDo()
    {
        var folder = Directory.CreateTempSubdirectory("tagend-fonts-").FullName;
        var thrown = Assert.Throws<TagendException>(() => Fonts.Load(folder));
        Assert.Equal(
            $"{Path.Combine(folder, "Inter-Regular.ttf")}: the font cannot be read; put back templates/fonts as it was shipped",
            thrown.Message);
        File.WriteAllBytes(Path.Combine(folder, "Inter-Regular.ttf"), Encoding.ASCII.GetBytes("no font"));
        Assert.EndsWith(
            "Inter-Regular.ttf: is no font; put back templates/fonts as it was shipped",
            Assert.Throws<TagendException>(() => Fonts.Load(folder)).Message,
            StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }
}
