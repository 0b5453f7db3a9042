using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;
using Xunit;

namespace Tagend.PaperTests.Output;

public sealed class PngFileTests
{
    [Theory]
    [InlineData(DotDepth.Gray, 300, "1748 2480 8 118.1")] // A5 is 148 × 210 mm (ISO 216); 300 dpi are 118.11 dots a centimeter
    [InlineData(DotDepth.BlackOrWhite, 203, "1183 1678 1 79.92")]
    public void Picture_ByAnotherReader_HasSizeDepthAndResolution(DotDepth depth, int dotsPerInch, string expected)
    {
        using var sample = new Sample();
        var path = sample.Place("page.png");
        var page = Sample.PageOf(Paper.A5, new Paragraph("61 3/16 in", TypeScale.Post));
        AtomicFiles.Write([new NewFile(path, s => PngFile.Write(page, Sample.Fonts, dotsPerInch, depth, s))]);
        var said = OutsideTool.Run("identify", "-units", "PixelsPerCentimeter", "-format", "%w %h %[png:IHDR.bit-depth-orig] %x", path);
        Assert.Equal("", said.Errors);
        Assert.StartsWith(expected, said.Output, StringComparison.Ordinal);
    }
}
