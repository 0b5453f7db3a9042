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
        var page = Plot(Build(50, -0.3, PlotMark.LeftOut, "build 3"), Build(66, 0.2, PlotMark.Outlier, "build 7"), Build(55, 0, PlotMark.Used));
        foreach (var label in new[] { "build 3", "build 7" })
        {
            var ink = page.Inks.OfType<TextInk>().Single(t => t.Text == label);
            Assert.InRange(ink.X, 0, page.Width - TestFonts.Shipped.WidthOf(label, ink.Style));
        }
    }

    private static Page Plot(params PlottedBuild[] builds) =>
        new FitPlot("hmpe-0145, 24 strands", "3 builds", LengthUnit.Inch, TestFonts.Shipped).Of(builds, Paper.HalfLetter);

    /// <summary>Without the key's, which is the last.</summary>
    private static IEnumerable<OvalInk> Dots(Page page) => page.Inks.OfType<OvalInk>().SkipLast(1);

    private static PlottedBuild Build(double predicted, double difference, PlotMark mark, string label = "") =>
        new(Length.FromInches(predicted), Length.FromInches(difference), Length.FromInches(0.0625), mark, label);
}
