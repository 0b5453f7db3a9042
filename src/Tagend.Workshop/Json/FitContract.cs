using System.Text.Json.Serialization;
using Tagend.Catalog;
using Tagend.Fits;

namespace Tagend.Workshop.Json;

/// <summary>The fit of a material and strand count, and the builds it rests on.</summary>
/// <remarks>Of two builds on there is a result; before that its properties are left out.</remarks>
internal sealed record FitContract
{
    internal FitContract(TakeUpFit fit)
    {
        (Material, Strands, Points) = (fit.Material, fit.Strands, [.. fit.Points.Select(FitPointContract.Of)]);
        if (fit.Fit is { } found)
        {
            (Builds, Enough) = (found.Builds, found.Builds >= FittedTakeUp.FewestBuilds);
            (TakeUpPerTurn, TakeUpPerTurnError) = (LengthContract.Of(found.PerTurn), LengthContract.Of(found.PerTurnError));
            (Settle, SettleError, SettleFitted) = (found.Settle, found.SettleError, found.IsSettleFitted);
            (JigOffset, JigOffsetError) = (LengthContract.Of(found.Offset), LengthContract.Of(found.OffsetError));
            Scatter = LengthContract.Of(found.Scatter);
        }
    }

    public string Material { get; }

    public int Strands { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Builds { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? Enough { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LengthContract? TakeUpPerTurn { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LengthContract? TakeUpPerTurnError { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Settle { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? SettleError { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public bool? SettleFitted { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LengthContract? JigOffset { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LengthContract? JigOffsetError { get; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LengthContract? Scatter { get; }

    public IReadOnlyList<FitPointContract> Points { get; }
}

/// <summary>A build, and what the fit expects of it.</summary>
internal sealed record FitPointContract(
    long Build, string Order, string Piece, LengthContract Predicted, LengthContract Measured, bool Outlier, bool LeftOut)
{
    internal static FitPointContract Of(FitPoint point) => new(
        point.Build.Number,
        point.Build.Order,
        point.Build.Piece,
        LengthContract.Of(point.Predicted),
        LengthContract.Of(point.Build.Measured),
        point.IsOutlier,
        point.Build.IsLeftOut);
}
