using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>What the piece weighs, part by part, and its share of arrow mass.</summary>
internal static class ExplainedMass
{
    private const string Source = "definition of tex (g/km); linear densities: materials.toml, threads.toml";

    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        var spec = piece.Spec;
        if (spec.Mass is not { } mass || piece.Material.LinearDensity is not { } tex)
        {
            yield break;
        }

        var strands = PieceMass.Of(spec.LaidUpLength, spec.Bundle.Strands * tex);
        yield return new ExplainedStep(
            "mass of the strands",
            "Q in mm × strands × tex / 1000000, grams",
            $"{Millimeters(piece, piece.Worked(spec.LaidUpLength))} × {spec.Bundle.Strands} × {ExplainedPiece.Plain(tex)} tex / 1000000",
            Grams(strands),
            Source);
        var parts = new List<Mass> { strands };
        foreach (var (index, use) in ThreadUse.Of(spec).Index())
        {
            var (thread, density) = (use.Wound, piece.Catalog.Threads[use.Thread].LinearDensity!.Value);
            parts.Add(PieceMass.Of(thread, density));
            yield return new ExplainedStep(
                $"mass of thread {index + 1} ({use.Thread})",
                "thread wound in mm × tex / 1000000, grams",
                $"{Millimeters(piece, piece.Thread(thread))} × {ExplainedPiece.Plain(density)} tex / 1000000",
                Grams(parts[^1]),
                Source);
        }

        yield return new ExplainedStep(
            "mass in grams", "strands + threads", string.Join(" + ", parts.Select(Grams)), Grams(mass), "the parts above");
        yield return new ExplainedStep(
            "mass in grains",
            "grams / 0.06479891",
            $"{Grams(mass)} / 0.06479891",
            Grains(mass),
            ExplainedSource.Nist);
        yield return new ExplainedStep(
            "share that counts as arrow mass",
            "a third of the mass",
            $"{Grains(mass)} / 3",
            Grains(PieceMass.ArrowShare(mass)),
            ExplainedSource.HickmanAndKlopsteg);
    }

    private static string Millimeters(ExplainedPiece piece, string length) =>
        piece.Spec.Unit == LengthUnit.Inch ? $"{length} × 25.4" : length;

    private static string Grams(Mass mass) => $"{ExplainedPiece.Fixed(mass.Grams, 3)} g";

    private static string Grains(Mass mass) => $"{ExplainedPiece.Fixed(mass.Grains, 2)} gr";
}
