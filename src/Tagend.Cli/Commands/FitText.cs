using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Measures;
using Tagend.Workshop;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary>Fits as plain lines on the terminal.</summary>
internal static class FitText
{
    public static void Write(TextWriter output, IEnumerable<TakeUpFit> fits, ShopCatalog catalog)
    {
        var unit = catalog.Shop.Unit;
        foreach (var fit in fits)
        {
            output.WriteLine($"{fit.Material}, {fit.Strands} strands: {Counted.Of(fit.Points.Count, "build")} logged, {fit.Points.Count(p => !p.Build.IsLeftOut)} in the fit");
            if (fit.Fit is { } found)
            {
                Line("take-up per turn", $"{LengthWriter.Fine(found.PerTurn, unit)} ± {LengthWriter.Fine(found.PerTurnError, unit)} (rule {LengthWriter.Fine(catalog.Shop.RuleTakeUpPerTurn, unit)})");
                Line("settle", found.IsSettleFitted ? FitPaper.Settle(found) : $"{FitPaper.Settle(found)}: {NotFitted(found)}");
                if (found.Offset != Length.Zero)
                {
                    Line("jig offset", $"{LengthWriter.Fine(found.Offset, unit)} ± {LengthWriter.Fine(found.OffsetError, unit)}: {Offset(found.Offset, unit)}");
                }

                Line("scatter", $"one build is off by {LengthWriter.Exact(found.Scatter, unit)} (standard deviation)");
                Line("turns per inch", FormattableString.Invariant($"{found.LeastRate:0.000} to {found.MostRate:0.000}"));
            }

            Line("used by print", Use(fit));
            foreach (var point in fit.Points.Where(p => p.IsOutlier || p.Build.IsLeftOut))
            {
                Line(point.Build.IsLeftOut ? "left out" : "outlier", Say(point, unit));
            }

            output.WriteLine();
        }

        void Line(string label, string text) => output.WriteLine($"  {label,-18}{text}");
    }

    /// <summary>What the offset can come from. Thicker posts take a half turn around each: π/2 − 1 of what they are thicker.</summary>
    private static string Offset(Length offset, LengthUnit unit)
    {
        var (longer, thicker) = offset > Length.Zero ? ("longer", "thicker") : ("shorter", "thinner");
        return $"loops come out {longer} than the jig says at every length, as they would with posts {LengthWriter.Exact(Length.Abs(offset) / ((Math.PI / 2) - 1), unit)} "
            + $"{thicker} than in shop.toml or with a tape that is off; post settings allow for it";
    }

    private static string NotFitted(FittedTakeUp fit) => fit.Builds < TakeUpFit.FewestForSettle
        ? $"fitted from {TakeUpFit.FewestForSettle} builds on"
        : "cannot be told from take-up, because turns per inch hardly differ or it came out of range; take-up includes its error";

    private static string Use(TakeUpFit fit) => fit.Fit switch
    {
        null => $"not yet: {FittedTakeUp.FewestBuilds} builds are needed",
        { Builds: < FittedTakeUp.FewestBuilds } => $"not yet: {fit.Fit.Builds} of {FittedTakeUp.FewestBuilds} builds",
        _ when fit.Fit.PerTurn <= Length.Zero => "no: the take-up makes no sense; look at the builds",
        _ => "yes, for pieces at about that twist whose error is within the tolerance",
    };

    private static string Say(FitPoint point, LengthUnit unit)
    {
        var (build, off) = (point.Build, point.Difference);
        var by = $"{LengthWriter.Exact(Length.Abs(off), unit)} {(off > Length.Zero ? "longer" : "shorter")} than expected";
        return $"build {build.Number}, {build.Order}/{build.Piece}: {by}; "
            + (build.IsLeftOut ? $"back in with --take-in {build.Number}" : $"still in; out with --leave-out {build.Number}");
    }
}
