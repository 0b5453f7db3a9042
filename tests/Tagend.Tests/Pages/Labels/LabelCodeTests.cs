using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Qr.Encode;
using Xunit;

namespace Tagend.Tests.Pages;

public sealed class LabelCodeTests
{
    /// <summary>ISO/IEC 18004:2015, table 7: a full symbol 10-M, and within 9-L: 57 and 53 modules a side, 65 and 61 with quiet zones.</summary>
    private static readonly string Text = new('A', 311);

    // Dots of height, and what they hold: sides in modules times dots a module.
    [Theory]
    [InlineData(6 * 65, 203, "M 6")]
    [InlineData((5 * 65) - 1, 203, "M 4")]
    [InlineData(4 * 65, 203, "M 4")]
    [InlineData((4 * 65) - 1, 203, "L 4")]
    [InlineData(4 * 61, 203, "L 4")]
    [InlineData((4 * 61) - 1, 203, "M 3")]
    [InlineData(3 * 65, 203, "M 3")]
    [InlineData((3 * 65) - 1, 203, "L 3")]
    [InlineData(3 * 61, 203, "L 3")]
    [InlineData((3 * 61) - 1, 203, "none")]
    [InlineData(9 * 65, 203, "M 6")]
    [InlineData(4 * 65, 300, "M 4")]
    [InlineData((8 * 65) - 1, 600, "L 8")] // a finer printer makes no smaller modules
    [InlineData((6 * 61) - 1, 600, "none")]
    public void Of_ALabelOfDots_GivesUpRecoveryThenDotsThenTheCode(int height, int dotsPerInch, string expected)
    {
        var code = LabelCode.Of(Text, Stock.Roll(width: 3000, height, dotsPerInch));
        Assert.Equal(expected, code is null ? "none" : $"{code.Recovery} {code.Dots}");
    }

    /// <summary>ISO/IEC 18004:2015, table 7: a symbol 10-M holds 311 alphanumeric characters.</summary>
    [Fact]
    public void QrSymbol_OfTheLongestTagOfADemoPiece_IsVersion10AtMost() => Assert.InRange(QrSymbol.Of(Text)!.Version, 1, 10);

    [Theory]
    [InlineData(5 * 65, "M 5")]
    [InlineData((5 * 65) - 1, "L 5")]
    [InlineData((5 * 61) - 1, "none")]
    public void Of_ASheet_IsOf300DotsAnInchAndNoFewerThanFiveAModule(int height, string expected)
    {
        var code = LabelCode.Of(Text, Stock.Roll(3000, height, 300) with { DotsPerInch = null });
        Assert.Equal(expected, code is null ? "none" : $"{code.Recovery} {code.Dots}");
    }

    // The code may take 0.52 of the width, and 0.46 for more than four dots a module.
    [Theory]
    [InlineData(707, "M 5")]
    [InlineData(706, "M 4")]
    [InlineData(501, "M 4")]
    [InlineData(499, "L 4")]
    [InlineData(468, "M 3")]
    public void Of_ANarrowLabel_LeavesNearlyHalfOfItToTheWords(int width, string expected)
    {
        var code = LabelCode.Of(Text, Stock.Roll(width, 3000, 203))!;
        Assert.Equal(expected, $"{code.Recovery} {code.Dots}");
    }

    /// <summary>Printer guidance of the symbology's inventor: 8 dot/mm are 203 dpi, 12 dot/mm 305 dpi.</summary>
    [Theory]
    [InlineData(305, 4, 0.33)]
    [InlineData(305, 5, 0.42)]
    [InlineData(305, 6, 0.50)]
    [InlineData(203, 4, 0.50)]
    [InlineData(203, 5, 0.63)]
    [InlineData(203, 6, 0.75)]
    public void Module_OfWholeDots_IsAsLargeAsTheGuidanceSays(int dotsPerInch, int dots, double millimeters)
    {
        var code = new LabelCode(QrSymbol.Of("A")!, QrRecovery.M, dots, new DotGrid(dotsPerInch));
        Assert.Equal(millimeters, code.Module / Points.PerInch * 25.4, 0.005);
    }
}
