namespace Tagend.Specs.Explained;

/// <summary>The stretcher: load and time, what the piece should read, and how hard it is pulled.</summary>
internal static class ExplainedStretch
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        var (spec, material) = (piece.Spec, piece.Material);
        var load = spec.Stretch.Load;
        yield return new ExplainedStep(
            "stretch",
            "load and time of the material",
            "",
            $"{ExplainedPiece.Given(load)} for {spec.Stretch.Minutes} minutes",
            "common practice, unless the material's data sheet says otherwise (materials.toml)");
        if (spec.Stretch.Reading is { } reading && material is { LinearDensity: { } tex, Density: { } density, Modulus: { } modulus })
        {
            var section = ExplainedPiece.Fixed(spec.Bundle.Strands * Stretch.FibreSection(tex, density), 5);
            var above = ExplainedPiece.Fixed(load.Newtons - Stretch.MeasuringLoad.Newtons, 3);
            yield return new ExplainedStep(
                "fibre section",
                "X = strands × tex / density / 1000",
                $"{spec.Bundle.Strands} × {ExplainedPiece.Plain(tex)} tex / {ExplainedPiece.Plain(density)} g/cm³ / 1000",
                $"{section} mm²",
                ExplainedSource.FibreSection);
            yield return new ExplainedStep(
                "load above the measuring load",
                "F = (load − measuring load) × 4.4482216, newtons to a pound-force",
                $"({ExplainedPiece.Given(load)} − {ExplainedPiece.Given(Stretch.MeasuringLoad)}) × 4.4482216 N",
                $"{above} N",
                $"{ExplainedSource.Amo}; {ExplainedSource.Nist}");
            yield return new ExplainedStep(
                "reading under load",
                "L × (1 + F / (modulus × X)), the modulus in N/mm² being 1000 times that in GPa",
                $"{piece.Given(spec.FinishedLength)} × (1 + {above} N / (1000 × {ExplainedPiece.Plain(modulus)} GPa × {section} mm²))",
                piece.Worked(reading),
                ExplainedSource.Hooke);
        }

        var breaking = ExplainedPiece.Fixed(spec.Strength.Breaking.Pounds, 3);
        yield return new ExplainedStep(
            "breaking load",
            "B = strands × strand strength × share a finished piece carries",
            $"{spec.Bundle.Strands} × {ExplainedPiece.Given(material.Strength)} × {ExplainedPiece.Plain(piece.Shop.TerminationEfficiency)}",
            $"{breaking} lbf",
            "strand strength: materials.toml; share: "
                + (piece.Shop.TerminationEfficiency == Strength.PublishedEfficiency ? ExplainedSource.NaglerAndFord : ExplainedSource.ShopValue));
        yield return new ExplainedStep(
            "stretch load over breaking load",
            $"load / B, at most {ExplainedPiece.Plain(material.StretchLimit * 100)} %",
            $"{ExplainedPiece.Given(load)} / {breaking} lbf",
            $"{ExplainedPiece.Fixed(spec.StretchShare * 100, 2)} %",
            "an assumption as to the limit, unless the shop wrote its own (materials.toml)");
    }
}
