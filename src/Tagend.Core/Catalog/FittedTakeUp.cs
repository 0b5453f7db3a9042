using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>What a shop's own builds of one material and strand count say about twisting and stretching.</summary>
/// <remarks>
/// The model is that of every spec, laid-up = finished / (1 + settle) + take-up per turn × turns − offset, with the unknowns
/// from the shop's log by least squares. It is linear in the turns, so it holds near the twist it was learned at. Laid-up
/// lengths are as the jig's tape and the post diameter in shop.toml have them; the offset is what they are off.
/// </remarks>
public sealed record FittedTakeUp
{
    /// <summary>Builds from which on a fit is used.</summary>
    public const int FewestBuilds = 5;

    /// <summary>Share by which a piece's turns per inch may lie outside those of the log.</summary>
    private const double Reach = 0.25;

    /// <summary>The strand material's name in the catalog.</summary>
    public required string Material { get; init; }

    /// <summary>The number of strands of all its builds.</summary>
    public required int Strands { get; init; }

    /// <summary>The number of builds the fit is made of.</summary>
    public required int Builds { get; init; }

    /// <summary>The take-up of one turn.</summary>
    public required Length PerTurn { get; init; }

    /// <summary>Share of its length that a piece gains for good on the stretcher.</summary>
    public required double Settle { get; init; }

    /// <summary>The settle comes from the builds; else it is the catalog's.</summary>
    public required bool IsSettleFitted { get; init; }

    /// <summary>How much longer loops are than the jig says, whatever their length; zero where the builds do not tell.</summary>
    public Length Offset { get; init; }

    /// <summary>How sure settle, take-up and offset are.</summary>
    public required FitVariance Variance { get; init; }

    /// <summary>Standard deviation of a measured length about the fit.</summary>
    public required Length Scatter { get; init; }

    /// <summary>Turns an inch of laid-up length, least of the log.</summary>
    public required double LeastRate { get; init; }

    /// <summary>Turns an inch of laid-up length, most of the log.</summary>
    public required double MostRate { get; init; }

    /// <summary>The standard error of the settle, a share.</summary>
    public double SettleError => Math.Sqrt(Variance.Settle);

    /// <summary>The standard error of the offset.</summary>
    public Length OffsetError => Length.FromInches(Math.Sqrt(Variance.Offset));

    /// <summary>The standard error of the take-up of one turn.</summary>
    public Length PerTurnError => Length.FromInches(Math.Sqrt(Variance.PerTurn));

    /// <summary>Take-up of a piece less the jig's offset, with the standard error of the laid-up length it leads to.</summary>
    public FittedAmount For(int turns, Length finishedLength) => new((PerTurn * turns) - Offset, Error(turns, finishedLength), Builds);

    /// <summary>
    /// Whether it may be used for a piece: builds enough, turns per inch within a quarter of those in the log, a take-up that is
    /// no less than the offset, and a standard error within the tolerance.
    /// </summary>
    public bool Serves(int turns, Length finishedLength, Length tolerance)
    {
        var rate = turns / LaidUpLength(turns, finishedLength).Inches;
        return Builds >= FewestBuilds && PerTurn > Length.Zero && PerTurn * turns >= Offset
            && rate >= LeastRate * (1 - Reach) && rate <= MostRate * (1 + Reach)
            && Error(turns, finishedLength) <= tolerance;
    }

    /// <summary>The laid-up length that turns and a finished length need, as the jig in use has it.</summary>
    public Length LaidUpLength(double turns, Length finishedLength) => (finishedLength / (1 + Settle)) + (PerTurn * turns) - Offset;

    /// <summary>The finished length that a laid-up length and turns lead to.</summary>
    public Length FinishedLength(double turns, Length laidUpLength) => (laidUpLength + Offset - (PerTurn * turns)) * (1 + Settle);

    /// <summary>Standard error of <see cref="LaidUpLength"/>: its slopes in settle, take-up and offset, through their variances.</summary>
    private Length Error(int turns, Length finishedLength)
    {
        var bySettle = -finishedLength.Inches / ((1 + Settle) * (1 + Settle));
        var variance = (bySettle * bySettle * Variance.Settle)
            + (2 * bySettle * turns * Variance.Both)
            + ((double)turns * turns * Variance.PerTurn)
            - (2 * bySettle * Variance.SettleOffset)
            - (2 * turns * Variance.PerTurnOffset)
            + Variance.Offset;
        return Length.FromInches(Math.Sqrt(Math.Max(0, variance)));
    }
}

/// <summary>Variances of a fit and the covariance of its unknowns.</summary>
/// <param name="Settle">Of the settle, a share.</param>
/// <param name="Both">Covariance of settle and take-up per turn, inches.</param>
/// <param name="PerTurn">Of the take-up per turn, square inches.</param>
public sealed record FitVariance(double Settle, double Both, double PerTurn)
{
    /// <summary>Of the offset, square inches.</summary>
    public double Offset { get; init; }

    /// <summary>Covariance of settle and offset, inches.</summary>
    public double SettleOffset { get; init; }

    /// <summary>Covariance of take-up per turn and offset, square inches.</summary>
    public double PerTurnOffset { get; init; }
}

/// <summary>A piece's take-up as the shop's own builds have it.</summary>
/// <param name="Error">Standard error of the laid-up length that follows, settle included.</param>
/// <param name="Builds">How many builds it comes from.</param>
public sealed record FittedAmount(Length Amount, Length Error, int Builds);
