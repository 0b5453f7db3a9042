using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Fits;

/// <summary>A build beside what the fit makes of it.</summary>
/// <param name="Predicted">The finished length that the fit expects of the posts and turns of this build.</param>
/// <param name="IsOutlier">Far off the others: see <see cref="TakeUpFit"/>. Only said; left out it is by choice.</param>
public sealed record FitPoint(BuildPoint Build, Length Predicted, bool IsOutlier)
{
    public Length Difference => Build.Measured - Predicted;
}

/// <summary>The builds of one material and strand count, and what least squares finds in them.</summary>
/// <remarks>
/// A spec has laid-up = finished / (1 + s) + u·turns, s the settle and u the take-up a turn; so
/// finished − laid-up = s·laid-up − (1 + s)·u·turns, a straight line in laid-up length and turns, which were set and are
/// known, with the error in the measured length. Two unknowns are told apart only by builds at different twist: where the
/// turns an inch hardly differ, or where s would come out below 0 or above 0.05, s is the catalog's and u alone is fitted;
/// at that twist u then takes in what s is off.
/// An outlier is a build off by more than 3.5 robust standard deviations (modified z-score: Iglewicz and Hoaglin, How to
/// Detect and Handle Outliers, 1993) of the fit without it, and by more than its own tolerance.
/// </remarks>
/// <param name="Fit">Null where fewer than two builds are left in.</param>
/// <param name="Points">All builds, those left out too.</param>
public sealed record TakeUpFit(string Material, int Strands, FittedTakeUp? Fit, IReadOnlyList<FitPoint> Points)
{
    /// <summary>Builds from which on settle is fitted too.</summary>
    public const int FewestForSettle = 10;

    /// <summary>Relative standard deviation of turns an inch from which on settle is fitted too.</summary>
    public const double LeastSpread = 0.1;

    /// <summary>As in materials.toml.</summary>
    private const double GreatestSettle = 0.05;

    private const double OutlierScore = 3.5;

    /// <summary>Normal quartile: median absolute deviation over standard deviation.</summary>
    private const double Quartile = 0.6745;

    /// <summary>A fit for each material and strand count of the log.</summary>
    public static IReadOnlyList<TakeUpFit> All(IEnumerable<BuildPoint> builds, ShopCatalog catalog) =>
    [
        .. builds.GroupBy(b => (b.Material, b.Strands)).OrderBy(g => g.Key.Material, StringComparer.Ordinal).ThenBy(g => g.Key.Strands)
            .Select(g => Of([.. g], catalog.Materials.GetValueOrDefault(g.Key.Material)?.Settle ?? 0)),
    ];

    /// <param name="builds">One at least, of one material and strand count.</param>
    /// <param name="catalogSettle">Used where the builds do not tell settle from take-up.</param>
    public static TakeUpFit Of(IReadOnlyList<BuildPoint> builds, double catalogSettle)
    {
        var first = builds[0];
        var used = builds.Where(b => !b.IsLeftOut).ToList();
        if (used.Count < 2 || used.All(b => b.Turns == 0))
        {
            return new TakeUpFit(first.Material, first.Strands, null, [.. builds.Select(b => new FitPoint(b, b.Ordered, false))]);
        }

        var (both, isSettleFitted) = Solve(used, catalogSettle);
        var (settle, slope) = (isSettleFitted ? both.A : catalogSettle, both.B);
        var perTurn = -slope / (1 + settle);
        var fit = new FittedTakeUp
        {
            Material = first.Material,
            Strands = first.Strands,
            Builds = used.Count,
            PerTurn = Length.FromInches(perTurn),
            Settle = settle,
            IsSettleFitted = isSettleFitted,
            Variance = Propagated(both, perTurn, settle),
            Scatter = Length.FromInches(both.Scatter),
            LeastRate = used.Min(b => b.Rate),
            MostRate = used.Max(b => b.Rate),
        };
        var outliers = Outliers(used, fit, both.Leverages);
        return new TakeUpFit(
            first.Material,
            first.Strands,
            fit,
            [.. builds.Select(b => new FitPoint(b, fit.FinishedLength(b.Turns, b.LaidUpLength), outliers.Contains(b.Number)))]);
    }

    private static (LeastSquaresFit Fit, bool IsSettleFitted) Solve(List<BuildPoint> used, double catalogSettle)
    {
        if (used.Count >= FewestForSettle && Spread([.. used.Select(b => b.Rate)]) >= LeastSpread)
        {
            var both = LeastSquares.Two([.. used.Select(b => (b.LaidUpLength.Inches, b.Turns, (b.Measured - b.LaidUpLength).Inches))]);
            if (both.A is >= 0 and <= GreatestSettle)
            {
                return (both, true);
            }
        }

        return (LeastSquares.One([.. used.Select(b => (0.0, b.Turns, (b.Measured - (b.LaidUpLength * (1 + catalogSettle))).Inches))]), false);
    }

    /// <summary>From the unknowns s and −(1 + s)·u to s and u, by the slopes of u in both.</summary>
    private static FitVariance Propagated(LeastSquaresFit fit, double perTurn, double settle)
    {
        var (bySettle, bySlope) = (-perTurn / (1 + settle), -1 / (1 + settle));
        return new FitVariance(
            fit.VarianceA,
            (bySettle * fit.VarianceA) + (bySlope * fit.Covariance),
            (bySettle * bySettle * fit.VarianceA) + (2 * bySettle * bySlope * fit.Covariance) + (bySlope * bySlope * fit.VarianceB));
    }

    private static HashSet<long> Outliers(List<BuildPoint> used, FittedTakeUp fit, IReadOnlyList<double> leverages)
    {
        if (used.Count < FittedTakeUp.FewestBuilds)
        {
            return [];
        }

        // A residual over 1 − leverage is the difference to the fit without this build.
        var off = used.Zip(leverages, (b, leverage) =>
            (b.Measured - fit.FinishedLength(b.Turns, b.LaidUpLength)).Inches / (1 - leverage)).ToList();
        var middle = Median(off);
        var deviation = Median([.. off.Select(d => Math.Abs(d - middle))]) / Quartile;
        return
        [
            .. used.Zip(off)
                .Where(p => Math.Abs(p.Second - middle) > Math.Max(OutlierScore * deviation, p.First.Tolerance.Inches))
                .Select(p => p.First.Number),
        ];
    }

    private static double Spread(List<double> rates)
    {
        var mean = rates.Average();
        return Math.Sqrt(rates.Average(r => (r - mean) * (r - mean))) / mean;
    }

    private static double Median(List<double> numbers)
    {
        numbers = [.. numbers.Order()];
        return (numbers[(numbers.Count - 1) / 2] + numbers[numbers.Count / 2]) / 2;
    }
}
