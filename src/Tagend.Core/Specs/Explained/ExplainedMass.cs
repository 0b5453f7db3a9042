using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>What the piece weighs, part by part, and its share of arrow mass.</summary>
internal static class ExplainedMass
{
    private const string Source = "definition of tex (g/km); linear densities: materials.toml, threads.toml";

    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        var spec = piece.Spec;
        var strands = PieceMass.Of(spec.LaidUpLength, spec.Bundle.Strands * piece.Material.LinearDensity);
        yield return new ExplainedStep(
            "mass of the strands",
            "Q in mm × strands × tex / 1000000, grams",
            $"{Millimeters(piece, piece.Worked(spec.LaidUpLength))} × {spec.Bundle.Strands} × {ExplainedPiece.Plain(piece.Material.LinearDensity)} tex / 1000000",
            Grams(strands),
            Source);
        var parts = new List<Mass> { strands };
        foreach (var (index, serving) in spec.Servings.Index())
        {
            var thread = ServingWork.Of(serving, spec.Bundle.Diameter).Thread;
            var density = piece.Catalog.Threads[serving.Thread].LinearDensity;
            parts.Add(PieceMass.Of(thread, density));
            yield return new ExplainedStep(
                $"mass of {ExplainedServings.Name(index, serving)}",
                "thread wound in mm × tex / 1000000, grams",
                $"{Millimeters(piece, piece.Thread(thread))} × {ExplainedPiece.Plain(density)} tex / 1000000",
                Grams(parts[^1]),
                Source);
        }

        yield return new ExplainedStep(
            "mass in grams", "strands + servings", string.Join(" + ", parts.Select(Grams)), Grams(spec.Mass), "the parts above");
        yield return new ExplainedStep(
            "mass in grains",
            "grams / 0.06479891",
            $"{Grams(spec.Mass)} / 0.06479891",
            Grains(spec.Mass),
            ExplainedSource.Nist);
        yield return new ExplainedStep(
            "share that counts as arrow mass",
            "a third of the mass",
            $"{Grains(spec.Mass)} / 3",
            Grains(PieceMass.ArrowShare(spec.Mass)),
            ExplainedSource.HickmanAndKlopsteg);
    }

    private static string Millimeters(ExplainedPiece piece, string length) =>
        piece.Spec.Unit == LengthUnit.Inch ? $"{length} × 25.4" : length;

    private static string Grams(Mass mass) => $"{ExplainedPiece.Fixed(mass.Grams, 3)} g";

    private static string Grains(Mass mass) => $"{ExplainedPiece.Fixed(mass.Grains, 2)} gr";
}
