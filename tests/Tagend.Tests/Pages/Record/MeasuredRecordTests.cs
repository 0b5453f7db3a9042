using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Record;
using Tagend.Specs;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public class MeasuredRecordTests
{
    public static TheoryData<string, string, LengthUnit> Records => new MatrixTheoryData<string, string, LengthUnit>(
        ["en", "de", "es", "fr"], ["letter", "A4"], [LengthUnit.Inch, LengthUnit.Millimeter]);

    [Theory]
    [MemberData(nameof(Records))]
    public void Record_OfASet_IsOneLegiblePageThatIsNoCertificate(string language, string paperName, LengthUnit unit)
    {
        var (paper, words) = (paperName == "A4" ? Paper.A4 : Paper.Letter, SheetFixture.Language(language));
        var composed = MeasuredRecord.Compose(Set(0.125), SheetFixture.Catalog, words, unit, paper, TestFonts.Shipped);
        Assert.Empty(composed.Problems);
        var page = Assert.Single(composed.Pages);
        Assert.Equal((Points.Of(paper.Width), Points.Of(paper.Height)), (page.Width, page.Height));
        var texts = page.Inks.OfType<TextInk>().Where(t => t.Text.Trim().Length > 0).ToList();
        Assert.All(texts, t => Assert.True(
            t.Style.Size >= 8.5f && t.X >= 36 && t.X + SheetFixture.WidthOf(t) <= page.Width - 36 && t.Baseline > 36 && t.Baseline < page.Height - 24, t.Text));
        var boxes = texts.Select(SheetFixture.BoxOf).ToList();
        Assert.All(boxes.Index(), b => Assert.DoesNotContain(boxes.Take(b.Index), other => other.IntersectsWith(b.Item)));
        var text = SheetFixture.TextOf(composed.Pages);
        Assert.All(
            new[] { PaperWord.RecordNoCertificate, PaperWord.RecordAskFirst, PaperWord.RecordIn, PaperWord.RecordMissing },
            word => Assert.Contains(words[word], text, StringComparison.Ordinal));
        Assert.Contains("H88", text, StringComparison.Ordinal);
        Assert.Contains("Jo Sample", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.125, "OUT OF TOLERANCE: too long by 1/8 in", "DIFFERED BY 1/8 in")]
    [InlineData(-0.0626, "OUT OF TOLERANCE: too short by 0.063 in", "DIFFERED BY 0.063 in")]
    [InlineData(0.0625, "+ 1/16 in in tolerance", "differed by 1/16 in, within the 1/16 in allowed")]
    [InlineData(0, "0 in tolerance", "measured the same")]
    public void Record_OfACableThatIsOff_SaysItPlainly(double off, string result, string pair)
    {
        var text = SheetFixture.TextOf(MeasuredRecord.Compose(
            Set(off), SheetFixture.Catalog, SheetFixture.Language("en"), LengthUnit.Inch, Paper.Letter, TestFonts.Shipped).Pages).Replace('\u00A0', ' ');
        Assert.Contains(result, text, StringComparison.Ordinal);
        Assert.Contains(pair, text, StringComparison.Ordinal);
    }

    /// <summary>A string, two twin cables of which the second is off, and a yoke that was not measured.</summary>
    private static BuildSet Set(double off)
    {
        var set = SheetFixture.Compound(4);
        Build[] builds = [.. set.Builds];
        builds[1] = Cable(builds[1], "cable 1");
        builds[2] = Cable(builds[2], "cable 2");
        builds = [Measured(builds[0], 0), Measured(builds[1], 0), Measured(builds[2], off), builds[3]];
        return set with { Builds = [.. builds] };

        Build Cable(Build build, string name) => build with { Spec = builds[1].Spec with { Piece = name, Kind = "twin-cam-cable" } };
    }

    private static Build Measured(Build build, double off) => build with
    {
        Measured = new Measurement(
            build.Spec.FinishedLength + Length.FromInches(off), 45.5, Force.FromPounds(300), 22.5, ["H88-4", "H88-5", "T0210"], build.Spec.Date, "AB"),
    };
}
