using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Pages.Ruler;
using Xunit;

namespace Tagend.PaperTests.Pages;

public sealed class RulerPageTests
{
    private const int DotsPerInch = 600;
    private const double Bar = 150 / 25.4 * DotsPerInch;

    public static TheoryData<string, string, double, double> Printers => new()
    {
        { "poppler", "letter", 150, 150 },
        { "mupdf", "A4", 150, 150 },
        { "poppler", "A4", 149.3, 149.8 },
        { "mupdf", "letter", 146, 154.3 },
    };

    /// <param name="across">What the bar across the feed measured on the printer, in millimeters.</param>
    /// <param name="along">What the bar along the feed measured on the printer, in millimeters.</param>
    [Theory]
    [MemberData(nameof(Printers))]
    public void Bars_DrawnForAPrinter_ComeOutOfItAtTheirLength(string renderer, string title, double across, double along)
    {
        using var sample = new Sample();
        var paper = title == "A4" ? Paper.A4 : Paper.Letter;
        var scale = new PrinterScale("office", Length.FromMillimeters(across), Length.FromMillimeters(along));
        var pdf = sample.Pdf(Assert.Single(RulerPage.Compose(paper, "office", Sample.Words, Sample.Fonts).Pages).Through(scale));
        var picture = renderer == "poppler"
            ? Rendering.ByPoppler(sample, pdf, 1, DotsPerInch)
            : Rendering.ByMuPdf(sample, pdf, 1, DotsPerInch);

        // The printer makes so much of each length in the picture; half a dot at either end.
        Assert.InRange(LongestDown(picture) * along / 150, Bar - 1, Bar + 1);
        Assert.InRange(LongestAcross(picture) * across / 150, Bar - 1, Bar + 1);
        CheckBars.AssertAmong(
            Rows(picture).Select(d => new Dark(d.Middle * across / 150, d.Length * across / 150)), DotsPerInch);
    }

    [Theory]
    [InlineData("letter", "612 x 792 pts (letter)")]
    [InlineData("A4", "595.28 x 841.89 pts (A4)")]
    public void Sheet_DrawnForAPrinter_KeepsItsSizeAndAsksForNoScaling(string title, string size)
    {
        // ISO 216 and ANSI/ASME Y14.1, as pdfinfo names them.
        using var sample = new Sample();
        var scale = new PrinterScale("office", Length.FromMillimeters(149.3), Length.FromMillimeters(149.8));
        var page = Assert.Single(RulerPage.Compose(title == "A4" ? Paper.A4 : Paper.Letter, "office", Sample.Words, Sample.Fonts).Pages);
        var pdf = sample.Pdf(page.Through(scale));
        Assert.Contains(size, OutsideTool.Run("pdfinfo", pdf).Output, StringComparison.Ordinal);
        Assert.Contains("\"/PrintScaling\": \"/None\"", OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", pdf).Output, StringComparison.Ordinal);
    }

    private static double LongestDown(Rendering picture) => Enumerable.Range(1, picture.Width / 25)
        .SelectMany(n => picture.Down((n * 25) - 1))
        .Max(d => d.Length);

    /// <summary>Of the bar across: the longest stretch that is not the rule under the title, which is as wide as the page.</summary>
    private static double LongestAcross(Rendering picture) => Rows(picture)
        .Select(d => d.Length)
        .Where(l => l < 6.5 * DotsPerInch)
        .Max();

    private static IEnumerable<Dark> Rows(Rendering picture) =>
        Enumerable.Range(1, picture.Height / 25).SelectMany(n => picture.Across((n * 25) - 1));
}
