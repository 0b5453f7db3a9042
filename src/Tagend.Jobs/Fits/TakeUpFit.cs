using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Fits;

/// <summary>A build beside what the fit makes of it.</summary>
/// <param name="Predicted">The finished length that the fit expects of the posts and turns of this build.</param>
/// <param name="IsOutlier">Whether it is far off the others (see <see cref="TakeUpFit"/>). It is used all the same until the shop leaves it out.</param>
public sealed record FitPoint(BuildPoint Build, Length Predicted, bool IsOutlier)
{
    /// <summary>How much longer the piece was measured than the fit expects; below zero where it is shorter.</summary>
    public Length Difference => Build.Measured - Predicted;
}

/// <summary>The builds of one material and strand count, and what least squares finds in them.</summary>
/// <remarks>
/// A spec has laid-up = finished / (1 + s) + u·turns − k, s the settle, u the take-up per turn and k the jig's offset; so
/// finished − laid-up = s·laid-up − (1 + s)·u·turns + (1 + s)·k, linear in laid-up length and turns, which were set and are
/// known, with the error in the measured length. Settle and take-up are told apart only by builds at different twist, take-up
/// and offset only by builds of different length: where the turns per inch hardly differ, or where s would come out below 0 or
/// above 0.05, s is the catalog's; where the lengths hardly differ, or k is less than three of its standard errors, there is
/// no offset. What is not told apart is within the take-up at that twist and length.
/// An outlier is a build off by more than 3.5 robust standard deviations (modified z-score: Iglewicz and Hoaglin, How to
/// Detect and Handle Outliers, 1993) of the fit without it, and by more than its own tolerance.
/// </remarks>
/// <param name="Material">The strand material's name in the catalog.</param>
/// <param name="Strands">The number of strands.</param>
/// <param name="Fit">Null where fewer than two builds are left in, or none of them has a turn.</param>
/// <param name="Points">All builds, those left out too, in the order of logging.</param>
public sealed record TakeUpFit(string Material, int Strands, FittedTakeUp? Fit, IReadOnlyList<FitPoint> Points)
{
    /// <summary>Builds from which on settle is fitted too.</summary>
    public const int FewestForSettle = 10;

    /// <summary>Relative standard deviation of turns per inch from which on settle is fitted too.</summary>
    public const double LeastSpread = 0.1;

    /// <summary>Relative standard deviation of lengths from which on the jig's offset is fitted too.</summary>
    public const double LeastLengthSpread = 0.05;

    /// <summary>Builds from which on the jig's offset is fitted too.</summary>
    public const int FewestForOffset = 8;

    /// <summary>Standard errors that an offset is at least; 3 is passed by chance once in some hundred logs without one.</summary>
    private const double LeastOffset = 3;

    /// <summary>Inches: what posts of 3 in do that are taken for pins is 1.57 in (see PostSetting).</summary>
    private const double GreatestOffset = 1.6;

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

    /// <summary>Fits the builds of one material and strand count.</summary>
    /// <param name="builds">One at least.</param>
    /// <param name="catalogSettle">The settle of materials.toml, a fraction of the laid-up length; it stands where the builds do not tell settle from take-up.</param>
    public static TakeUpFit Of(IReadOnlyList<BuildPoint> builds, double catalogSettle)
    {
        var first = builds[0];
        var used = builds.Where(b => !b.IsLeftOut).ToList();
        if (used.Count < 2 || used.All(b => b.Turns == 0))
        {
            return new TakeUpFit(first.Material, first.Strands, null, [.. builds.Select(b => new FitPoint(b, b.Ordered, false))]);
        }

        var (solved, unknowns) = Solve(used, catalogSettle);
        var settle = unknowns.Settle ? solved.Found[0] : catalogSettle;
        var perTurn = -solved.Found[unknowns.Settle ? 1 : 0] / (1 + settle);
        var offset = unknowns.Offset ? solved.Found[^1] / (1 + settle) : 0;
        var fit = new FittedTakeUp
        {
            Material = first.Material,
            Strands = first.Strands,
            Builds = used.Count,
            PerTurn = Length.FromInches(perTurn),
            Settle = settle,
            IsSettleFitted = unknowns.Settle,
            Offset = Length.FromInches(offset),
            Variance = Propagated(solved, unknowns, settle, perTurn, offset),
            Scatter = Length.FromInches(solved.Scatter),
            LeastRate = used.Min(b => b.Rate),
            MostRate = used.Max(b => b.Rate),
        };
        var outliers = Outliers(used, fit, solved.Leverages);
        return new TakeUpFit(
            first.Material,
            first.Strands,
            fit,
            [.. builds.Select(b => new FitPoint(b, fit.FinishedLength(b.Turns, b.LaidUpLength), outliers.Contains(b.Number)))]);
    }

    /// <summary>The most unknowns that the builds tell apart and that make sense.</summary>
    private static (LeastSquaresFit Fit, Unknowns Unknowns) Solve(List<BuildPoint> used, double catalogSettle)
    {
        var settle = used.Count >= FewestForSettle && Spread([.. used.Select(b => b.Rate)]) >= LeastSpread;
        var offset = used.Count >= FewestForOffset && Spread([.. used.Select(b => b.LaidUpLength.Inches)]) >= LeastLengthSpread;
        foreach (var unknowns in new[] { new Unknowns(true, true), new Unknowns(true, false), new Unknowns(false, true) })
        {
            if ((unknowns.Settle && !settle) || (unknowns.Offset && !offset))
            {
                continue;
            }

            var fit = Solved(used, unknowns, catalogSettle);
            if ((!unknowns.Settle || fit.Found[0] is >= 0 and <= GreatestSettle) && (!unknowns.Offset || IsOffset(fit)))
            {
                return (fit, unknowns);
            }
        }

        return (Solved(used, new Unknowns(false, false), catalogSettle), new Unknowns(false, false));
    }

    private static bool IsOffset(LeastSquaresFit fit)
    {
        var last = fit.Found.Length - 1;
        return Math.Abs(fit.Found[last]) >= LeastOffset * Math.Sqrt(fit.Variances[last, last]) && Math.Abs(fit.Found[last]) <= GreatestOffset;
    }

    /// <summary>In the order settle, take-up, offset; those that are not unknown are left out.</summary>
    private static LeastSquaresFit Solved(List<BuildPoint> used, Unknowns unknowns, double catalogSettle)
    {
        var known = unknowns.Settle ? 0 : catalogSettle;
        return LeastSquares.Solve(
            [.. used.Select(b => (double[])[.. unknowns.Settle ? [b.LaidUpLength.Inches] : Array.Empty<double>(), b.Turns, .. unknowns.Offset ? [1.0] : Array.Empty<double>()])],
            [.. used.Select(b => (b.Measured - (b.LaidUpLength * (1 + known))).Inches)]);
    }

    /// <summary>From the unknowns s, −(1 + s)·u and (1 + s)·k to s, u and k, by the slopes of u and k in them.</summary>
    private static FitVariance Propagated(LeastSquaresFit fit, Unknowns unknowns, double settle, double perTurn, double offset)
    {
        // Each of s, u and k as a row of slopes in what was solved.
        double[] Row(double bySettle, double byTurns, double byOne) =>
            [.. unknowns.Settle ? [bySettle] : Array.Empty<double>(), byTurns, .. unknowns.Offset ? [byOne] : Array.Empty<double>()];
        var s = Row(1, 0, 0);
        var u = Row(-perTurn / (1 + settle), -1 / (1 + settle), 0);
        var k = Row(-offset / (1 + settle), 0, 1 / (1 + settle));
        return new FitVariance(Between(s, s), Between(s, u), Between(u, u))
        {
            Offset = Between(k, k),
            SettleOffset = Between(s, k),
            PerTurnOffset = Between(u, k),
        };

        double Between(double[] a, double[] b) => LeastSquares.Form(fit.Variances, a, b);
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

    /// <summary>What is unknown beside the take-up per turn.</summary>
    private readonly record struct Unknowns(bool Settle, bool Offset);
}
