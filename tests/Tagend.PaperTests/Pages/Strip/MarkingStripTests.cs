using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Pages.Parts;
using Tagend.Pages.Strip;
using Tagend.Problems;
using Tagend.Specs;
using Xunit;

namespace Tagend.PaperTests.Pages;

public sealed class MarkingStripTests
{
    /// <summary>Of all pages, in inches.</summary>
    private const double Margin = 0.25;

    /// <summary>From the foot of a strip to a height that only lines cross, under the numbers and over the words, in inches.</summary>
    private const double LinesAboveFoot = (104.5 - 28.7) / 72;

    /// <summary>Height of a strip, in inches.</summary>
    private const double StripHeight = 104.5 / 72;

    /// <summary>Under the line of end A, in inches.</summary>
    private const double FootHeight = 12.0 / 72;

    private const string Compound =
        """
        order,piece,kind,finished_length,colors,draw_weight,servings,center_serving,nock_point,peep,speed_nocks
        D-7,string,compound-string,60 1/4 in,black:12 red:12,70 lbf,A 0 in..7 1/2 in; B 0 in..203 mm,26 1/4 in..31 in t019 red,29.03 in,597.3 mm,9 1/2 in; B 9 3/8 in
        """;

    private const string Short =
        """
        order,piece,kind,finished_length,material,strands,servings
        D-8,cable,plain,15.317 in,hmpe-0145,24,A 0 in..4 in; B 0 in..100 mm
        """;

    /// <summary>100 in.</summary>
    private const string Long =
        """
        order,piece,kind,finished_length,servings,center_serving,nock_point,peep
        D-9,string,single-cam-string,100 in,A 0 in..11 in; B 0 in..12 in,27 in..32 in,29 1/2 in,35 in
        """;

    public static TheoryData<string, string, string, StripPositions, int> OnRolls => new()
    {
        { "poppler", "compound", "2 in", StripPositions.Finished, 600 },
        { "mupdf", "compound", "2 in", StripPositions.Finished, 600 },
        { "poppler", "compound", "62 mm", StripPositions.OnJig, 600 },
        { "mupdf", "compound", "62 mm", StripPositions.OnJig, 600 },
        { "poppler", "short", "50 mm", StripPositions.Finished, 1200 },
        { "mupdf", "short", "50 mm", StripPositions.Finished, 1200 },
        { "poppler", "long", "2 in", StripPositions.Finished, 1200 },
    };

    [Theory]
    [MemberData(nameof(OnRolls))]
    public void Marks_OnARoll_AreWithinHalfADotOfTheirPlaces(
        string renderer, string piece, string roll, StripPositions positions, int dotsPerInch)
    {
        using var sample = new Sample();
        var width = LengthOf(roll);
        var build = BuildOf(sample, piece);
        var pdf = Print(sample, build, StripStock.Roll(width), positions);
        var fromFoot = ((width.Inches - StripHeight) / 2) + LinesAboveFoot; // the strip lies in the middle, its foot to the left
        var column = (int)(fromFoot * dotsPerInch);
        var picture = renderer == "poppler"
            ? Rendering.ByPoppler(sample, pdf, 1, dotsPerInch, column)
            : Rendering.ByMuPdf(sample, pdf, 1, dotsPerInch);
        var found = picture.Down(renderer == "poppler" ? 0 : column).Select(d => d.Middle).ToList();
        var expected = PlacesOf(build.Spec, positions).Select(p => (Margin + p.Inches) * dotsPerInch).ToList();
        Assert.Equal(expected.Count, found.Count);
        Assert.All(expected.Zip(found), p => Assert.InRange(p.Second - p.First, -0.5, 0.5));
    }

    [Theory]
    [InlineData("poppler", "letter", "long", 100)]
    [InlineData("poppler", "A4", "long", 100)]
    [InlineData("mupdf", "letter", "long", 100)]
    [InlineData("mupdf", "A4", "compound", 60.25)]
    public void Parts_JoinedByTheirRegisterMarks_AddUpToThePiece(string renderer, string title, string piece, double inches)
    {
        const int DotsPerInch = 600;
        using var sample = new Sample();
        var paper = title == "A4" ? Paper.A4 : Paper.Letter;
        var pdf = Print(sample, BuildOf(sample, piece), StripStock.Sheet(paper), StripPositions.Finished);
        var pages = int.Parse(InfoOf(pdf, "Pages:"), System.Globalization.CultureInfo.InvariantCulture);
        var total = 0.0;
        for (var page = 1; page <= pages; page++)
        {
            var picture = renderer == "poppler"
                ? Rendering.ByPoppler(sample, pdf, page, DotsPerInch)
                : Rendering.ByMuPdf(sample, pdf, page, DotsPerInch);
            total += PartsOf(picture, DotsPerInch).Sum();
        }

        Assert.InRange((total / DotsPerInch * 25.4) - (inches * 25.4), -0.1 * inches / 100, 0.1 * inches / 100);
    }

    [Theory]
    [InlineData("poppler", "letter")]
    [InlineData("poppler", "A4")]
    [InlineData("mupdf", "letter")]
    public void CheckBars_OnASheet_MeasureFourInchesAndHundredMillimeters(string renderer, string title)
    {
        const int DotsPerInch = 600;
        using var sample = new Sample();
        var paper = title == "A4" ? Paper.A4 : Paper.Letter;
        var pdf = Print(sample, BuildOf(sample, "compound"), StripStock.Sheet(paper), StripPositions.Finished);
        var picture = renderer == "poppler"
            ? Rendering.ByPoppler(sample, pdf, 1, DotsPerInch)
            : Rendering.ByMuPdf(sample, pdf, 1, DotsPerInch);
        CheckBars.AssertAmong(
            Enumerable.Range(1, 40).SelectMany(n => picture.Down(picture.Width - (n * DotsPerInch / 32))), DotsPerInch);
    }

    [Theory]
    [InlineData("letter", StripPositions.Finished, 6)]
    [InlineData("letter", StripPositions.OnJig, 7)]
    [InlineData("A4", StripPositions.Finished, 6)]
    public void Strip_AsPdf_IsUprightSoundAndUnscaled(string title, StripPositions positions, int parts)
    {
        using var sample = new Sample();
        var paper = title == "A4" ? Paper.A4 : Paper.Letter;
        var pdf = Print(sample, BuildOf(sample, "compound"), StripStock.Sheet(paper), positions);

        // ISO 216 and ANSI/ASME Y14.1, as pdfinfo names them.
        Assert.Contains(title == "A4" ? "595.28 x 841.89 pts (A4)" : "612 x 792 pts (letter)", InfoOf(pdf, "Page size:"), StringComparison.Ordinal);
        Assert.Equal(0, OutsideTool.Run("qpdf", "--check", pdf).ExitCode);
        Assert.Contains("\"/PrintScaling\": \"/None\"", OutsideTool.Run("qpdf", "--json=2", "--json-key=qpdf", pdf).Output, StringComparison.Ordinal);
        var text = OutsideTool.Run("pdftotext", "-enc", "UTF-8", pdf, "-").Output;
        Assert.Contains("actual size", text, StringComparison.Ordinal);
        Assert.Contains("page 2 of 2", text, StringComparison.Ordinal);
        Assert.Contains($"part {parts} of {parts}", text, StringComparison.Ordinal);
        Assert.Contains(positions == StripPositions.OnJig ? "ON THE JIG" : "FINISHED", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Roll_OfAnyPiece_IsAsWideAsAskedAndAsLongAsThePiece()
    {
        using var sample = new Sample();
        var pdf = Print(sample, BuildOf(sample, "compound"), StripStock.Roll(LengthOf("62 mm")), StripPositions.Finished);
        var size = InfoOf(pdf, "Page size:").Split(' ');
        Assert.Equal(62, MillimetersOf(size[0]), 0.01);
        Assert.Equal((60.25 + (2 * Margin)) * 25.4, MillimetersOf(size[2]), 0.01);
    }

    /// <summary>Lengths of a sheet's parts in dots, all from the picture: parts are found by the lines they start with.</summary>
    private static IEnumerable<double> PartsOf(Rendering picture, int dotsPerInch)
    {
        // The piece runs down the upright sheet, the edges of strips toward the right.
        var start = (int)(Margin * dotsPerInch);
        foreach (var part in picture.Across(start).Where(d => d.Length > 1.2 * dotsPerInch))
        {
            var foot = part.Length > StripHeight * dotsPerInch ? part.Start : part.Start - (FootHeight * dotsPerInch);
            var lines = picture.Down((int)(foot + (LinesAboveFoot * dotsPerInch)));
            var arrows = picture.Down((int)(foot + ((StripHeight + (5.0 / 72)) * dotsPerInch)));
            var last = arrows.Where(a => a.Start > part.Length).Select(a => a.Middle).LastOrDefault();
            var end = last == 0 ? lines[^1] : lines.MinBy(l => Math.Abs(l.Middle - last))!;
            yield return end.Middle - lines[0].Middle;
        }
    }

    /// <summary>From the spec alone, in order and each once.</summary>
    private static IEnumerable<Length> PlacesOf(BuildSpec spec, StripPositions positions)
    {
        var finished = spec.Servings.SelectMany(s => new[] { s.From, s.To })
            .Concat(spec.Separators.Select(s => s.Position))
            .Concat(spec.Marks.Select(m => m.Position))
            .Append(Length.Zero)
            .Append(spec.FinishedLength);
        return positions == StripPositions.Finished
            ? finished.Distinct().Order()
            : finished.Where(p => p > Length.Zero && p < spec.FinishedLength)
                .Select(p => (p * (spec.LaidUpLength / spec.FinishedLength)) - ((spec.LaidUpLength - spec.Posts.Outside) / 2))
                .Append(Length.Zero)
                .Append(spec.Posts.Outside)
                .Distinct().Order();
    }

    private static string Print(Sample sample, Build build, StripStock stock, StripPositions positions)
    {
        var composed = MarkingStrip.Compose(build, Catalog(), stock, positions, Sample.Fonts);
        Assert.Empty(composed.Problems);
        return sample.Pdf(composed.Pages);
    }

    private static Build BuildOf(Sample sample, string piece)
    {
        var csv = sample.Place("orders.csv");
        File.WriteAllText(csv, piece switch { "short" => Short, "long" => Long, _ => Compound });
        var file = OrderReader.Read(csv, LengthUnit.Inch, Catalog().Shop.Columns);
        var report = SetBuilder.Build(file, new SpecBuilder(Catalog(), LengthUnit.Inch, Sample.Date));
        Assert.DoesNotContain(report.Problems, p => p.Severity == Severity.Refusal);
        return Assert.Single(Assert.Single(report.MakeSets()).Builds);
    }

    private static ShopCatalog Catalog() => CatalogReader.Read(Sample.Templates, new List<Problem>())!;

    private static Length LengthOf(string text) =>
        LengthReader.TryRead(text, LengthUnit.Inch, out var length) ? length : throw new FormatException(text);

    private static string InfoOf(string pdf, string name) => OutsideTool.Run("pdfinfo", pdf).Output.Split('\n')
        .Single(l => l.StartsWith(name, StringComparison.Ordinal))[name.Length..].Trim();

    private static double MillimetersOf(string points) =>
        double.Parse(points, System.Globalization.CultureInfo.InvariantCulture) / 72 * 25.4;
}
