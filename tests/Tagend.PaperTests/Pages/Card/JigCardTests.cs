using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Pages.Card;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Xunit;

namespace Tagend.PaperTests.Pages;

public sealed class JigCardTests
{
    private const string Orders =
        """
        order,piece,kind,finished_length,colors,draw_weight,center_serving,nock_point,peep
        D-7,string,compound-string,60 1/4 in,black:12 red:12,70 lbf,26 1/4 in..31 in t019 red,29 1/2 in,18 in
        """;

    [Theory]
    [InlineData("half letter", 203, "-gray")]
    [InlineData("half letter", 203, "-mono")]
    [InlineData("half letter", 300, "-gray")]
    [InlineData("A5", 300, "-mono")]
    [InlineData("A5", 600, "-gray")]
    public void Code_OnThePrintedCard_IsReadByTwoDecoders(string title, int dotsPerInch, string shades)
    {
        using var sample = new Sample();
        var (pdf, tag) = Print(sample, title);
        var picture = sample.Place("card");
        OutsideTool.Run("pdftoppm", "-r", $"{dotsPerInch}", shades, "-png", "-singlefile", pdf, picture);
        Assert.Equal(tag, OutsideTool.Run("zbarimg", "--quiet", "--raw", picture + ".png").Output.Trim());
        Assert.Equal(tag, OutsideTool.Run("ZXingReader", "-1", "-bytes", picture + ".png").Output.Trim());
    }

    [Fact]
    public void Card_AsPdf_IsSoundAndSaysItsNumbers()
    {
        using var sample = new Sample();
        var (pdf, _) = Print(sample, "half letter");
        Assert.Equal(0, OutsideTool.Run("qpdf", "--check", pdf).ExitCode);
        var text = OutsideTool.Run("pdftotext", "-layout", "-enc", "UTF-8", pdf, "-").Output;
        Assert.Matches(@"D-7\s+string", text);
        Assert.Contains("outside to outside, on the tape", text, StringComparison.Ordinal);
        Assert.Matches(@"2\s+center\s+26 1/4\s+31\s+t019\s+red", text);
        Assert.Matches(@"2\s+center\s+26 1/4\s+31\s+29 1/4\s+34\s+t019\s+red", text);
        Assert.Matches(@"a\s+peep\s+18\s+42 1/4", text);
        Assert.True(text.IndexOf("LAY UP", StringComparison.Ordinal) < text.IndexOf("INSPECT", StringComparison.Ordinal));
        Assert.Contains("Initials", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("poppler", "half letter")]
    [InlineData("mupdf", "A5")]
    public void Card_HasCheckBarsAndPinsAtTrueSize(string renderer, string title)
    {
        const int DotsPerInch = 600;
        using var sample = new Sample();
        var (pdf, _) = Print(sample, title);
        var picture = renderer == "poppler"
            ? Rendering.ByPoppler(sample, pdf, 2, DotsPerInch)
            : Rendering.ByMuPdf(sample, pdf, 2, DotsPerInch);
        var rows = Enumerable.Range(1, picture.Height / 12).Select(n => picture.Across((n * 12) - 1)).ToList();
        CheckBars.AssertAmong(rows.SelectMany(r => r), DotsPerInch);

        // Through the pins' axes: the loop's leg from its outer side to the pin of 1/4 in, then the far side of the pin.
        // A leg has half of 24 strands of 0.0145 in, packed to 0.8: 0.0145 · √(12 / 0.8) = 0.0562 in.
        var expected = (0.25 + 0.0562) * DotsPerInch;
        Assert.Contains(rows, row => row.Zip(row.Skip(1)).Any(d => Math.Abs(d.Second.Middle - d.First.Start - expected) <= 1.5));
        Assert.Contains(rows, row => row.Zip(row.Skip(1)).Any(d => Math.Abs(d.Second.End - d.First.Middle - expected) <= 1.5));
    }

    private static (string Pdf, string Tag) Print(Sample sample, string title)
    {
        var problems = new List<Problem>();
        var catalog = CatalogReader.Read(Sample.Templates, problems)!;
        var csv = sample.Place("orders.csv");
        File.WriteAllText(csv, Orders);
        var file = OrderReader.Read(csv, LengthUnit.Inch, catalog.Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(catalog, LengthUnit.Inch, Sample.Date));
        Assert.Empty(report.Problems);
        var build = report.MakeSets()[0].Builds[0];
        var tag = TagWriter.Write(build.Spec);
        var paper = title == "A5" ? Paper.A5 : Paper.HalfLetter;
        var composed = JigCard.Compose(build, catalog, tag, paper, Sample.Fonts);
        Assert.Empty(composed.Problems);
        return (sample.Pdf(composed.Pages), tag);
    }
}
