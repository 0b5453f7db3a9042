using SkiaSharp;
using Xunit;

namespace Tagend.PaperTests.Cli;

public sealed class LabelTests
{
    [Theory]
    [InlineData(203, "812 406 1 79.92")]
    [InlineData(300, "1200 600 1 118.1")]
    [InlineData(600, "2400 1200 1 236.2")]
    public void Print_Dpi_AlsoWritesAOneBitPngALabel(int dotsPerInch, string expected)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--order", "1001", "--only", "tags", "--dpi", $"{dotsPerInch}", "--out", folder.Path);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal(
            ["tags.pdf", .. Enumerable.Range(1, 4).Select(n => $"tags-{dotsPerInch}dpi-0{n}.png")],
            Directory.GetFiles(folder.Path).Select(f => Path.GetFileName(f)!).OrderByDescending(n => n == "tags.pdf").ThenBy(n => n, StringComparer.Ordinal));
        var identified = OutsideTool.Run(
            "identify", "-units", "PixelsPerCentimeter", "-format", "%w %h %[png:IHDR.bit-depth-orig] %x", folder[$"tags-{dotsPerInch}dpi-01.png"]);
        Assert.StartsWith(expected, identified.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--dpi", "204", 2, "--dpi \"204\": expected one of 203, 300, 600")]
    [InlineData("--skip-labels", "3,x", 2, "--skip-labels \"x\": expected whole numbers from 1 to 200, such as 3,7")]
    [InlineData("--skip-labels", "11", 3, "tags: no label 11: a sheet of letter-2x5 (Letter sheet, 10 labels of 4 × 2 in) has 10")]
    [InlineData("--dpi", "203", 5, "--dpi is for label printers, and letter-2x5 (Letter sheet, 10 labels of 4 × 2 in) is a sheet")]
    public void Print_LabelOptionThatIsWrong_IsRefusedInWords(string option, string value, int exitCode, string message)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--only", "tags", "--bag-labels", "letter-2x5", "--loop-labels", "letter-2x5",
            "--out", folder["out"], option, value);
        Assert.Equal(exitCode, said.ExitCode);
        Assert.Contains(message, said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void Print_SkippedLabels_StayEmpty()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--order", "1001", "--only", "tags", "--bag-labels", "letter-2x5", "--loop-labels", "letter-2x5",
            "--first-label", "2", "--skip-labels", "3,5", "--out", folder.Path);
        OutsideTool.Run("pdftoppm", "-r", "50", "-gray", "-png", "-singlefile", folder["tags.pdf"], folder["page"]);
        using var page = SKBitmap.Decode(folder["page.png"]);
        var used = Enumerable.Range(1, 10).Where(n => IsUsed((n - 1) % 2, (n - 1) / 2));
        Assert.Equal([2, 4, 6, 7], used); // a bag's and three loops'

        // letter-2x5: 4 × 2 in, from 0.16 in and 0.5 in, pitch 4.19 in and 2 in; a dot is 0.02 in
        bool IsUsed(int column, int row)
        {
            var places = from x in Enumerable.Range(12 + (209 * column), 190) from y in Enumerable.Range(30 + (100 * row), 90) select (x, y);
            return places.Any(p => page.GetPixel(p.x, p.y).Red < 128);
        }
    }

    /// <summary>letter-2x5: 0.15625 in from the left, labels of 4 in every 4.1875 in; 1/2 in from the top, every 2 in.</summary>
    [Fact]
    public void Outlines_OfASheet_LieOnTheLabelsEdgesWithinHalfADot()
    {
        const int DotsPerInch = 600;
        using var folder = TagendProgram.NewFolder();
        Assert.Equal(0, TagendProgram.Run("outlines", "letter-2x5", "--out", folder.Path).ExitCode);
        OutsideTool.Run(
            "pdftoppm", "-r", $"{DotsPerInch}", "-gray", "-png", "-singlefile", folder["letter-2x5-outlines.pdf"], folder["page"]);
        using var page = SKBitmap.Decode(folder["page.png"]);
        var across = Lines(Enumerable.Range(0, page.Width).Select(x => page.GetPixel(x, (int)(1.9 * DotsPerInch)).Red));
        AssertNear([0.15625, 4.15625, 4.34375, 8.34375], across);
        var down = Lines(Enumerable.Range(0, page.Height).Select(y => page.GetPixel((int)(3.5 * DotsPerInch), y).Red));
        AssertNear([0.5, 2.5, 4.5, 6.5, 8.5, 10.5], down.Where(d => !IsInTheWords(d)));

        static bool IsInTheWords(double dot) => dot is > 0.55 * DotsPerInch and < 2.4 * DotsPerInch;

        static void AssertNear(double[] inches, IEnumerable<double> dots)
        {
            var found = dots.ToList();
            Assert.Equal(inches.Length, found.Count);
            Assert.All(inches.Zip(found), p => Assert.Equal(p.First * DotsPerInch, p.Second, 0.5));
        }

        // Middles of dark runs, by how dark their dots are, in dots.
        static List<double> Lines(IEnumerable<byte> shades)
        {
            var lines = new List<double>();
            var (ink, moment) = (0.0, 0.0);
            foreach (var (i, shade) in shades.Append((byte)255).Index())
            {
                if (shade == 255 && ink > 0)
                {
                    lines.Add((moment / ink) + 0.5);
                    (ink, moment) = (0, 0);
                }

                ink += 255 - shade;
                moment += (255 - shade) * (double)i;
            }

            return lines;
        }
    }

    [Fact]
    public void Outlines_OfARoll_AreRefusedInWords()
    {
        var said = TagendProgram.Run("outlines", "roll-4x2");
        Assert.Equal(5, said.ExitCode);
        Assert.Equal(
            "tagend: roll-4x2 (Roll, 4 × 2 in) has one label per page, so there is no sheet to outline; the sheets are letter-2x5, a4-2x7\n",
            said.Errors);
    }
}
