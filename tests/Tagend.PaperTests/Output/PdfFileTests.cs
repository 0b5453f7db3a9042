using Tagend.Blocks;
using Tagend.Catalog;
using Xunit;

namespace Tagend.PaperTests.Output;

public sealed class PdfFileTests
{
    private static readonly Block Text = new Stack(
    [
        new Paragraph("First line", TypeScale.SheetTitle),
        new Paragraph("Second line: 61 3/16 in ⚠", TypeScale.Body),
        new Paragraph("Third 1234567890", TypeScale.BodyBold with { Tracking = 0.3f }),
    ]);

    // ISO 216 (A4 210 × 297 mm, A5 148 × 210 mm) and ANSI/ASME Y14.1 (letter 8.5 × 11 in), in points of 1/72 in.
    public static TheoryData<string, double, double> Sizes => new()
    {
        { "letter", 612, 792 },
        { "half letter", 396, 612 },
        { "A4", 210 / 25.4 * 72, 297 / 25.4 * 72 },
        { "A5", 148 / 25.4 * 72, 210 / 25.4 * 72 },
    };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Size_OfEachPaper_IsExact(string title, double width, double height)
    {
        using var sample = new Sample();
        var paper = new[] { Paper.Letter, Paper.HalfLetter, Paper.A4, Paper.A5 }.Single(p => p.Title == title);
        var info = OutsideTool.Run("pdfinfo", sample.Pdf(Sample.PageOf(paper, Text))).Output;
        var size = info.Split('\n').Single(l => l.StartsWith("Page size:", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(width, double.Parse(size[2], System.Globalization.CultureInfo.InvariantCulture), 0.006);
        Assert.Equal(height, double.Parse(size[4], System.Globalization.CultureInfo.InvariantCulture), 0.006);
    }

    [Fact]
    public void Structure_OfManyPages_IsSound()
    {
        using var sample = new Sample();
        var page = Sample.PageOf(Paper.HalfLetter, Text);
        var check = OutsideTool.Run("qpdf", "--check", sample.Pdf([.. Enumerable.Repeat(page, 200)]));
        Assert.True(check.ExitCode == 0, check.Output + check.Errors);
        Assert.Contains("No syntax or stream encoding errors found", check.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("WARNING", check.Output + check.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Info_SaysTitleAuthorDateAndPages()
    {
        using var sample = new Sample();
        var page = Sample.PageOf(Paper.HalfLetter, Text);
        var info = OutsideTool.Run("pdfinfo", "-rawdates", sample.Pdf(page, page)).Output;
        Assert.Matches("Title: +A sample\n", info);
        Assert.Matches("Author: +Tagend\n", info);
        Assert.Matches("CreationDate: +D:20260302000000", info);
        Assert.Matches("Pages: +2\n", info);
    }

    [Fact]
    public void Catalog_AsksForNoScalingAndNamesTheLanguage()
    {
        using var sample = new Sample();
        var path = sample.Pdf(Sample.PageOf(Paper.A5, Text));
        var json = OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", path).Output;
        Assert.Contains("\"/PrintScaling\": \"/None\"", json, StringComparison.Ordinal);
        Assert.Contains("\"/DisplayDocTitle\": true", json, StringComparison.Ordinal);
        Assert.Contains("\"/Lang\": \"u:en-US\"", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Texts_ComeOutInOrderWithoutStraySpaces()
    {
        using var sample = new Sample();
        var text = OutsideTool.Run("pdftotext", "-enc", "UTF-8", sample.Pdf(Sample.PageOf(Paper.A5, Text)), "-").Output;
        Assert.Equal(
            ["First line", "Second line: 61 3/16 in ⚠", "Third 1234567890"],
            text.Split(['\n', '\f'], StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void Fonts_AreEmbeddedAndCut()
    {
        using var sample = new Sample();
        var path = sample.Pdf(Sample.PageOf(Paper.A5, Text));
        var fonts = OutsideTool.Run("pdffonts", path).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];
        Assert.Equal(2, fonts.Length);
        Assert.All(fonts, f => Assert.Matches(@"[A-Z]{6}\+Inter-.* yes yes yes", f));
        Assert.InRange(new FileInfo(path).Length, 1, 30_000);
    }

    [Fact]
    public void Bytes_OfTheSamePages_AreTheSame()
    {
        using var one = new Sample();
        using var other = new Sample();
        var page = Sample.PageOf(Paper.A5, Text);
        Assert.Equal(File.ReadAllBytes(one.Pdf(page)), File.ReadAllBytes(other.Pdf(page)));
    }

    [Fact]
    public void Dates_AreInUniversalTimeWhereverItIsMade()
    {
        using var sample = new Sample();
        var pdf = sample.Pdf(Sample.PageOf(Paper.A5, Text));
        var json = OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", pdf).Output;
        Assert.Equal(2, json.Split("\"u:D:20260302000000Z\"").Length - 1);
        Assert.Contains("<xmp:CreateDate>2026-03-02T00:00:00Z</xmp:CreateDate>", File.ReadAllText(pdf), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Résumé (1) / ⚠")]
    [InlineData("plain (text) /)")]
    public void Bookmarks_InAnyLetters_LeadToTheirPages(string title)
    {
        using var sample = new Sample();
        var page = Sample.PageOf(Paper.A5, Text);
        var outline = OutsideTool.Run("mutool", "show", sample.Pdf(page with { Bookmarks = ["first"] }, page, page with { Bookmarks = [title] }), "outline").Output;
        Assert.Matches("\"first\".*#page=1", outline);
        Assert.Contains($"\"{title}\"\t#page=3", outline, StringComparison.Ordinal);
    }
}
