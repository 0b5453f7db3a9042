using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Fit;

namespace Tagend.Commands;

/// <summary>A fit as the plot's points and words.</summary>
internal static class FitPages
{
    /// <param name="fit">With a result.</param>
    public static Page Of(TakeUpFit fit, ShopCatalog catalog, Fonts fonts, Paper paper)
    {
        var unit = catalog.Shop.Unit;
        var found = fit.Fit!;
        var facts = $"{Counted.Of(found.Builds, "build")}: take-up {LengthWriter.Fine(found.PerTurn, unit)} a turn ± {LengthWriter.Fine(found.PerTurnError, unit)}, "
            + $"settle {FitText.Settle(found)}, scatter of a build {LengthWriter.Exact(found.Scatter, unit)}";
        return new FitPlot($"{fit.Material}, {fit.Strands} strands: measured against predicted", facts, unit, fonts)
            .Of([.. fit.Points.Select(Plotted)], paper);
    }

    private static PlottedBuild Plotted(FitPoint point)
    {
        var mark = point.Build.IsLeftOut ? PlotMark.LeftOut : point.IsOutlier ? PlotMark.Outlier : PlotMark.Used;
        return new PlottedBuild(
            point.Predicted, point.Difference, point.Build.Tolerance, mark, mark == PlotMark.Used ? "" : $"build {point.Build.Number}");
    }
}
