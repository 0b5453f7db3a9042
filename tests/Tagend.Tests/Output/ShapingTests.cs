using System.Text;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class ShapingTests
{
    private static readonly Weight[] Weights = Enum.GetValues<Weight>();

    [Fact]
    public void WidthOf_EachFigure_IsTheSame() => Assert.All(Weights, weight =>
        Assert.Single("0123456789".Select(c => TestFonts.Shipped.WidthOf(c.ToString(), new TextStyle(weight, 10))).Distinct()));

    [Fact]
    public void WidthOf_NumbersOfAsManyFigures_IsTheSame()
    {
        var style = new TextStyle(Weight.Regular, 9);
        Assert.Equal(TestFonts.Shipped.WidthOf("111.7 7/11", style), TestFonts.Shipped.WidthOf("608.4 3/16", style));
    }

    [Theory] // hb-shape 6.0.0 --features=-calt,-liga,-clig Inter-Regular.ttf, of 2048 units an em
    [InlineData("AV", 1413 + 1413 - 140)]
    [InlineData("To", 1322 + 1228 - 160)]
    public void WidthOf_APairThatIsKerned_IsHarfBuzzs(string pair, int units) =>
        Assert.Equal(units, TestFonts.Shipped.WidthOf(pair, new TextStyle(Weight.Regular, 2048)));

    [Fact]
    public void Shape_EveryCharacterThatCanBeDrawn_IsOneGlyph() => Assert.All(Weights, weight =>
    {
        for (var c = 0x20; c < 0x10000; c++)
        {
            if (Rune.TryCreate(c, out var rune) && TestFonts.Shipped.FirstMissing(rune.ToString(), weight) is null)
            {
                Assert.Single(TestFonts.Shipped[weight].Shape(rune.ToString()).Glyphs);
            }
        }
    });

    [Theory] // where letters, figures and signs could join or change by what stands beside them
    [InlineData("fi ff ffl -> 3x4 10:30 1/2 (A) é Æ ß –1 “7”")]
    [InlineData("Łódź Çağlar Žižka Ångström")]
    public void Shape_ACharacterAmongOthers_IsTheGlyphItIsAlone(string text)
    {
        var face = TestFonts.Shipped[Weight.Bold];
        var alone = text.EnumerateRunes().SelectMany(r => face.Shape(r.ToString()).Glyphs);
        Assert.Equal(alone, face.Shape(text).Glyphs);
    }

    [Fact]
    public void Shape_Places_RunFromTheStartToTheWidth()
    {
        var text = TestFonts.Shipped[Weight.SemiBold].Shape("AV 60 3/8");
        Assert.Equal(0, text.Places[0]);
        Assert.Equal(text.Width, text.Places[^1] + text.Advances[^1]);
        Assert.True(text.Places[1] < text.Advances[0]);
    }

    [Theory]
    [InlineData(8.1f, 8.125f)]
    [InlineData(8.05f, 8)]
    public void Size_OfAStyle_IsInEighthsOfAPoint(float size, float expected)
    {
        Assert.Equal(expected, new TextStyle(Weight.Regular, size).Size);
        Assert.Equal(expected, (new TextStyle(Weight.Regular, 20) with { Size = size }).Size);
    }
}
