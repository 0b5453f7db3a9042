using Tagend.Output;
using Xunit;

namespace Tagend.Tests.Output;

public sealed class PdfFileTests
{
    [Fact]
    public void Write_OfACharacterWithoutPicture_IsABug()
    {
        var page = new Page(100, 100, [new TextInk(0, 20, "漢", new TextStyle(Weight.Regular, 8))]);
        using var stream = new MemoryStream();
        Assert.Throws<InvalidOperationException>(() =>
            PdfFile.Write([page], TestFonts.Shipped, new PdfNote("A sample", new DateOnly(2026, 3, 2)), stream));
    }

    [Fact]
    public void Points_OfAnInchAndAMillimeter_Are72AndTheirShare()
    {
        Assert.Equal(72, Points.Of(Tagend.Measures.Length.FromInches(1)));
        Assert.Equal(72f / 25.4f, Points.Of(Tagend.Measures.Length.FromMillimeters(1)), 0.00001f);
    }
}
