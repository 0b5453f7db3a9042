using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Fit;
using Tagend.Tests.Output;
using Xunit;

namespace Tagend.Tests.Pages;

public class FitPlotTests
{
    [Theory]
    [InlineData(50.2, 65.8)]
    [InlineData(60, 60)]
    [InlineData(-0.31, 0.31)]
    [InlineData(1270, 1668)]
    public void Covering_AnyNumbers_HoldsThemBetweenWholeTicks(double least, double most)
    {
        var axis = PlotAxis.Covering(least, most, 66, 588, leastSpan: 0.02);
        var ticks = axis.Ticks.ToList();
        Assert.InRange(ticks.Count, 4, 12);
        Assert.Equal((axis.Least, axis.Most), (ticks[0], ticks[^1]));
        Assert.True(axis.Least < least && axis.Most > most);
        Assert.Equal(66, axis.At(axis.Least), 0.01);
        Assert.Equal(588, axis.At(axis.Most), 0.01);
    }

    [Fact]
    public void Of_BuildOnTheTolerance_IsDrawnOnItsLine()
    {
        var page = Plot(Build(60, 0.0625, PlotMark.Used));
        var line = page.Inks.OfType<LineInk>().First(l => l.Dash > 0);
        Assert.Equal(line.Y1, Assert.Single(Dots(page)).CenterY, 0.01);
    }

    [Fact]
    public void Of_BuildsInOrder_StandAcrossByLengthAndUpByDifference()
    {
        var dots = Dots(Plot(Build(50, -0.02, PlotMark.Used), Build(55, 0.01, PlotMark.Used), Build(60, 0.03, PlotMark.Used))).ToList();
        Assert.Equal(dots.OrderBy(d => d.CenterX), dots);
        Assert.Equal(dots.OrderByDescending(d => d.CenterY), dots);
        Assert.Equal(dots[1].CenterX - dots[0].CenterX, dots[2].CenterX - dots[1].CenterX, 0.01);
    }

    [Fact]
    public void Of_OutlierAndLeftOut_AreNamedWithinThePage()
    {
        var page = Plot(Build(50, -0.3, PlotMark.LeftOut, 3), Build(66, 0.2, PlotMark.Outlier, 7), Build(55, 0, PlotMark.Used));
        foreach (var label in new[] { "build 3", "build 7" })
        {
            var ink = page.Inks.OfType<TextInk>().Single(t => t.Text == label);
            Assert.InRange(ink.X, 0, page.Width - TestFonts.Shipped.WidthOf(label, ink.Style));
        }
    }

    [Theory]
    [InlineData("en", "hmpe-0145, 24 strands: measured against predicted", "take-up 0.0163 in per turn ± 0.0003 in, settle 0 (materials.toml)", "build 7")]
    [InlineData("de", "hmpe-0145, 24 Stränge: gemessen und vorhergesagt", "Verkürzung 0,0163 Zoll je Drehung ± 0,0003 Zoll, Setzen 0 (materials.toml)", "Stück 7")]
    [InlineData("fr", "hmpe-0145, 24 brins : mesuré et prévu", "retrait 0,0163 po par tour ± 0,0003 po", "pièce 7")]
    [InlineData("es", "hmpe-0145, 24 hilos: medido y previsto", "acortamiento 0,0163 in por vuelta ± 0,0003 in", "pieza 7")]
    public void Of_BenchOfALanguage_IsInItsWordsWithinThePage(string language, string title, string facts, string outlier)
    {
        var page = Plot(language, Build(50, -0.02, PlotMark.Used), Build(66, 0.2, PlotMark.Outlier, 7));
        var texts = page.Inks.OfType<TextInk>().ToList();
        Assert.Contains(texts, t => t.Text == title);
        Assert.Contains(texts, t => t.Text.Contains(facts, StringComparison.Ordinal));
        Assert.Contains(texts, t => t.Text == outlier);
        Assert.All(texts, t => Assert.True(t.X >= 0 && t.X + TestFonts.Shipped.WidthOf(t.Text, t.Style) <= page.Width - 12, t.Text));
    }

    private static Page Plot(params PlottedBuild[] builds) => Plot("en", builds);

    private static Page Plot(string language, params PlottedBuild[] builds) =>
        new FitPlot(Fit, LengthUnit.Inch, PaperLanguageReader.Read(TestFiles.Templates, language, [])!, TestFonts.Shipped).Of(builds, Paper.HalfLetter);

    private static FittedTakeUp Fit { get; } = new()
    {
        Material = "hmpe-0145",
        Strands = 24,
        Builds = 12,
        PerTurn = Length.FromInches(0.0163),
        Settle = 0,
        IsSettleFitted = false,
        Variance = new FitVariance(1e-7, 0, 9e-8),
        Scatter = Length.FromInches(0.02),
        LeastRate = 0.4,
        MostRate = 0.9,
    };

    /// <summary>Without the key's, which is the last.</summary>
    private static IEnumerable<OvalInk> Dots(Page page) => page.Inks.OfType<OvalInk>().SkipLast(1);

    private static PlottedBuild Build(double predicted, double difference, PlotMark mark, long number = 1) =>
        new(Length.FromInches(predicted), Length.FromInches(difference), Length.FromInches(0.0625), mark, number);
}
