using Tagend.Output;
using Xunit;

namespace Tagend.PaperTests.Output;

/// <summary>Random pages of every kind of ink: their PDF is sound, and looks to others' renderers like our own picture of them.</summary>
public sealed class PdfInksTests
{
    private const int PagesEach = 6;

    /// <summary>Of 255 shades at 100 dpi, on the average: edges, and how light a color is.</summary>
    private const double MeanTolerance = 1;

    /// <summary>
    /// Share of dots far off: renderers move thin lines, bars and large glyphs to whole dots, and draw the ends of flat ovals with
    /// few corners. A square of 16 points that is missing or too many is more.
    /// </summary>
    private const double FarOffTolerance = 0.002;

    [Theory]
    [InlineData(1, "poppler")]
    [InlineData(2, "poppler")]
    [InlineData(3, "mupdf")]
    [InlineData(4, "ghostscript")]
    public void Pages_OfRandomInks_LookLikeOurPicture(int seed, string renderer)
    {
        using var sample = new Sample();
        var inks = new RandomInks(seed);
        List<Page> pages = [.. Enumerable.Range(0, PagesEach).Select(_ => inks.Page())];
        var pdf = sample.Pdf(pages);
        var check = OutsideTool.Run("qpdf", "--check", pdf);
        Assert.True(check.ExitCode == 0, check.Output + check.Errors);
        foreach (var (i, page) in pages.Index())
        {
            var rendering = renderer switch
            {
                "poppler" => Rendering.ByPoppler(sample, pdf, i + 1, Likeness.DotsPerInch),
                "mupdf" => Rendering.ByMuPdf(sample, pdf, i + 1, Likeness.DotsPerInch),
                _ => Rendering.ByGhostscript(sample, pdf, i + 1, Likeness.DotsPerInch),
            };
            var likeness = Likeness.Of(page, rendering);
            Assert.True(likeness.Mean <= MeanTolerance && likeness.FarOff <= FarOffTolerance, $"page {i + 1}: {likeness}");
        }
    }
}
