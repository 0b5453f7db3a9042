using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Workshop.Printing;

/// <summary>A fact of a fit.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Text">Its value in words.</param>
public sealed record FitFact(string Label, string Text);

/// <summary>Fits in sentences.</summary>
public static class FitWording
{
    /// <summary>What was fitted, and to how many builds.</summary>
    public static string Title(TakeUpFit fit) =>
        $"{fit.Material}, {fit.Strands} strands: {Counted.Of(fit.Points.Count, "build")} logged, {fit.Points.Count(p => !p.Build.IsLeftOut)} in the fit";

    /// <summary>The numbers of a fit, and whether it is used.</summary>
    public static IEnumerable<FitFact> Facts(TakeUpFit fit, ShopCatalog catalog)
    {
        var unit = catalog.Shop.Unit;
        if (fit.Fit is { } found)
        {
            yield return new FitFact("take-up per turn", $"{LengthWriter.Fine(found.PerTurn, unit)} ± {LengthWriter.Error(found.PerTurnError, unit)} (rule {LengthWriter.Fine(catalog.Shop.RuleTakeUpPerTurn, unit)})");
            yield return new FitFact("settle", found.IsSettleFitted ? FitPaper.Settle(found) : $"{FitPaper.Settle(found)}: {NotFitted(found)}");
            if (found.Offset != Length.Zero)
            {
                yield return new FitFact("jig offset", $"{LengthWriter.Fine(found.Offset, unit)} ± {LengthWriter.Error(found.OffsetError, unit)}: {Offset(found.Offset, unit)}");
            }

            yield return new FitFact("scatter", $"one build is off by {LengthWriter.Exact(found.Scatter, unit)} (standard deviation)");
            yield return new FitFact("turns per inch", FormattableString.Invariant($"{found.LeastRate:0.000} to {found.MostRate:0.000}"));
        }

        yield return new FitFact("used by print", Use(fit));
    }

    /// <summary>What the helix says of one turn, as a mean over the turns of the builds that are in the fit.</summary>
    /// <returns>Null where the material is not in the catalog, or no build has a turn.</returns>
    public static Length? HelixPerTurn(TakeUpFit fit, ShopCatalog catalog)
    {
        var turned = fit.Points.Select(p => p.Build).Where(b => !b.IsLeftOut && b.Turns >= 1).ToList();
        if (turned.Count == 0 || !catalog.Materials.TryGetValue(fit.Material, out var material))
        {
            return null;
        }

        var bundle = Bundle.DiameterOf(material.Diameter, fit.Strands, material.Packing ?? StrandMaterial.AssumedPacking);
        return Length.FromInches(turned.Average(b => Helix.TakeUp(bundle, (int)Math.Round(b.Turns), b.Ordered).Inches / Math.Round(b.Turns)));
    }

    /// <summary>How far a build is off what the fit expects of it.</summary>
    /// <param name="unit">The unit of lengths.</param>
    public static string Off(FitPoint point, LengthUnit unit) =>
        $"{LengthWriter.Exact(Length.Abs(point.Difference), unit)} {(point.Difference > Length.Zero ? "longer" : "shorter")} than expected";

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
}
