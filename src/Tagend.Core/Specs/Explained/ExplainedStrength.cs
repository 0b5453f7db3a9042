namespace Tagend.Specs.Explained;

/// <summary>Breaking load against the floor.</summary>
internal static class ExplainedStrength
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        var strength = piece.Spec.Strength;
        if (strength is not { Floor: { } floor, Ratio: { } ratio } || piece.Spec.DrawWeight is not { } drawWeight)
        {
            yield return new ExplainedStep(
                "strength floor",
                "4 × draw weight",
                "",
                piece.Spec.DrawWeight is null
                    ? "none, for no draw weight is ordered"
                    : $"none, for it is a rule for strings (strength_floor in plans/{piece.Plan.Name}.toml)",
                ExplainedSource.Bowyer);
            yield break;
        }

        yield return new ExplainedStep(
            "strength floor",
            "4 × draw weight",
            $"{ExplainedPiece.Plain(Strength.SafetyFactor)} × {ExplainedPiece.Given(drawWeight)}",
            $"{ExplainedPiece.Fixed(floor.Pounds, 3)} lbf",
            ExplainedSource.Bowyer);
        yield return new ExplainedStep(
            "breaking load over floor",
            "B / floor, at least 1",
            $"{ExplainedPiece.Fixed(strength.Breaking.Pounds, 3)} lbf / {ExplainedPiece.Fixed(floor.Pounds, 3)} lbf",
            ExplainedPiece.Fixed(ratio, 3),
            ExplainedSource.Bowyer);
    }
}
