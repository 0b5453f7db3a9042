using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>From the finished length to the laid-up length: turns, take-up by each model, settle.</summary>
internal static class ExplainedTwist
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece) =>
        [FinishedLength(piece), Turns(piece), Rule(piece), .. Helical(piece), .. Used(piece), Settle(piece), LaidUp(piece)];

    private static ExplainedStep FinishedLength(ExplainedPiece piece)
    {
        var result = $"{piece.Given(piece.Spec.FinishedLength)}, ± {piece.Given(piece.Spec.Tolerance)}";
        return piece.Line.BowLength is { } bow
            ? new ExplainedStep(
                "finished length",
                "L = bow length − allowance",
                $"{piece.Given(bow)} − {piece.Given(AmoStringLength.Allowance)}",
                result,
                ExplainedSource.Amo)
            : new ExplainedStep(
                "finished length",
                $"L: outside to outside over pins of {piece.Given(piece.Shop.PinDiameter)}, under {ExplainedPiece.Given(Stretch.MeasuringLoad)}",
                "",
                result,
                $"{ExplainedSource.Order}; measured as in {ExplainedSource.Amo}");
    }

    private static ExplainedStep Turns(ExplainedPiece piece)
    {
        var spec = piece.Spec;
        var rate = piece.Line.TurnsPerInch ?? piece.TurnsPerInch;
        var length = spec.Unit == LengthUnit.Inch ? piece.Given(spec.FinishedLength) : $"{piece.Given(spec.FinishedLength)} / 25.4 mm";
        return new ExplainedStep(
            "turns",
            "T = turns per inch × L",
            $"{ExplainedPiece.Plain(rate)} turns per inch × {length}",
            $"{ExplainedPiece.Fixed(rate * spec.FinishedLength.Inches, 4)}, to whole turns: {spec.Twist.Turns}",
            piece.Line.TurnsPerInch is null ? ExplainedSource.Practice(piece.TurnsPerInch == Shop.CommonTurnsPerInch) : ExplainedSource.Order);
    }

    private static ExplainedStep Rule(ExplainedPiece piece) => new(
        "take-up by rule",
        "U = take-up per turn × T",
        $"{piece.Given(piece.RulePerTurn)} × {piece.Spec.Twist.Turns}",
        piece.Worked(piece.Spec.Twist.TakeUp.Rule),
        ExplainedSource.Practice(piece.RulePerTurn == Shop.CommonTakeUpPerTurn));

    private static IEnumerable<ExplainedStep> Helical(ExplainedPiece piece)
    {
        var (spec, material) = (piece.Spec, piece.Material);
        var (diameter, turns, finished) = (spec.Bundle.Diameter, spec.Twist.Turns, spec.FinishedLength);
        var packing = material.Packing ?? StrandMaterial.AssumedPacking;
        var angle = Helix.SurfaceAngle(diameter, turns, finished);
        var contraction = ExplainedPiece.Fixed(Helix.Contraction(angle), 7);
        yield return new ExplainedStep(
            "bundle diameter",
            "D = strand diameter × √(strands / packing)",
            $"{piece.Given(material.Diameter)} × √({spec.Bundle.Strands} / {ExplainedPiece.Plain(packing)})",
            piece.Thickness(diameter),
            material.Packing is null
                ? $"{ExplainedSource.Geometry}; the packing is an assumption, for this material's was not measured"
                : $"{ExplainedSource.Geometry}; the packing is the shop's own value (materials.toml)");
        yield return new ExplainedStep(
            "surface angle",
            "α = arctan(π × D × T / L)",
            $"arctan(π × {piece.Thickness(diameter)} × {turns} / {piece.Given(finished)})",
            ExplainedPiece.Degrees(angle),
            ExplainedSource.Hearle);
        yield return new ExplainedStep(
            "contraction",
            "c = (1 + 1 / cos α) / 2",
            $"(1 + 1 / cos({ExplainedPiece.Degrees(angle)})) / 2",
            $"{contraction}, untwisted length over twisted",
            ExplainedSource.Hearle);
        yield return new ExplainedStep(
            "take-up by helix",
            "U = L × (c − 1)",
            $"{piece.Given(finished)} × ({contraction} − 1)",
            piece.Worked(spec.Twist.TakeUp.Helix),
            ExplainedSource.Hearle);
    }

    private static IEnumerable<ExplainedStep> Used(ExplainedPiece piece)
    {
        var takeUp = piece.Spec.Twist.TakeUp;
        yield return new ExplainedStep(
            "models compared",
            "rule − helix",
            $"{piece.Worked(takeUp.Rule)} − {piece.Worked(takeUp.Helix)}",
            $"{piece.Worked(takeUp.Rule - takeUp.Helix)}, {(piece.Spec.ModelsDisagree ? "more than" : "within")} the tolerance of "
                + $"{piece.Given(piece.Spec.Tolerance)}; which is nearer on a real string, only measuring finished ones can say",
            "the two models above");
        if (piece.Fit is { } fit && takeUp.Fitted is { } fitted)
        {
            var hasOffset = fit.Offset != Length.Zero;
            yield return new ExplainedStep(
                "take-up fitted",
                hasOffset ? "U = take-up per turn of the builds × T − what the jig reads too short" : "U = take-up per turn of the builds × T",
                $"{piece.PerTurn(fit.PerTurn)} × {piece.Spec.Twist.Turns}{(hasOffset ? $" − {piece.Worked(fit.Offset)}" : "")}",
                $"{piece.Worked(fitted.Amount)}; {fitted.Builds} builds, standard error of the laid-up length {piece.Worked(fitted.Error)}",
                ExplainedSource.Builds);
        }

        yield return new ExplainedStep(
            "take-up used",
            takeUp.Used == TakeUpModel.Fitted ? "U fitted, for there are builds enough" : "U as take_up in shop.toml chooses",
            "",
            $"{piece.Worked(takeUp.Amount)}, {Word(takeUp.Used)}",
            takeUp.Used == TakeUpModel.Fitted ? ExplainedSource.Builds : ExplainedSource.ShopValue);
    }

    private static string Word(TakeUpModel model) => model switch
    {
        TakeUpModel.Rule => "by rule",
        TakeUpModel.Helix => "by helix",
        TakeUpModel.Fitted => "fitted",
        _ => throw new InvalidOperationException($"no word for {model}"),
    };

    private static ExplainedStep Settle(ExplainedPiece piece)
    {
        var share = piece.Fit is { IsSettleFitted: true } fit ? ExplainedPiece.Fixed(fit.Settle, 9) : ExplainedPiece.Plain(piece.Material.Settle);
        return new ExplainedStep(
            "settle",
            "S = L × s / (1 + s), s the share gained for good on the stretcher",
            $"{piece.Given(piece.Spec.FinishedLength)} × {share} / (1 + {share})",
            piece.Worked(piece.Spec.Settle),
            piece.Fit is { IsSettleFitted: true } ? ExplainedSource.Builds
                : piece.Material.Settle == 0 ? "an assumption: it was not measured, so none"
                : "the shop's own value (materials.toml)");
    }

    private static ExplainedStep LaidUp(ExplainedPiece piece) => new(
        "laid-up length",
        "Q = L − S + U",
        $"{piece.Given(piece.Spec.FinishedLength)} − {piece.Worked(piece.Spec.Settle)} + {piece.Worked(piece.Spec.Twist.TakeUp.Amount)}",
        $"{piece.Worked(piece.Spec.LaidUpLength)}, over the pins before twisting, end loops closed",
        ExplainedSource.Geometry);
}
