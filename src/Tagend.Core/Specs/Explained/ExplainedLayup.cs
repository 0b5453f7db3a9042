namespace Tagend.Specs.Explained;

/// <summary>How the strands are laid, and where they are split.</summary>
internal static class ExplainedLayup
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece) => [.. Loops(piece), EndTags(piece), .. Separators(piece)];

    private static IEnumerable<ExplainedStep> Loops(ExplainedPiece piece)
    {
        var layup = piece.Spec.Layup;
        yield return new ExplainedStep(
            "loops", "strands / 2, each loop being two strands", $"{layup.Strands} / 2", $"{layup.Loops} loops", ExplainedSource.Geometry);
        foreach (var (index, color) in layup.Colors.Index())
        {
            yield return new ExplainedStep(
                $"loops of {color.Color}",
                "strands / 2; colors laid first, third, … start at post A, the others at B; half a loop ends at the other post",
                $"{color.Strands} / 2",
                $"{ExplainedPiece.Plain(color.Strands / 2.0)} loops; color {index + 1} starts at post {color.Post} and ends at post {color.EndPost}",
                ExplainedSource.CommonPractice);
        }
    }

    private static ExplainedStep EndTags(ExplainedPiece piece) => new(
        "end tags",
        "colors are tied where they start and end; a post with none gets a dummy tag, so that both end loops are equally thick",
        "",
        string.Join("; ", piece.Spec.EndTags().Select(t =>
            $"{t.Post}{(t.Leg > 0 ? $", leg {t.Leg}" : "")}: {(t.IsDummy ? "a dummy tag" : string.Join(", ", t.Colors))}"))
            + $"; tails of {piece.Given(piece.Spec.Layup.Tail)}",
        ExplainedSource.CommonPractice);

    private static string Sides(Layup layup)
    {
        var (first, second) = layup.Halves();
        return $"{first.Words()} | {second.Words()}";
    }

    private static IEnumerable<ExplainedStep> Separators(ExplainedPiece piece)
    {
        var spec = piece.Spec;
        foreach (var (index, separator) in spec.Separators.Index())
        {
            var name = $"separator {index + 1} ({separator.Name})";
            yield return new ExplainedStep(
                $"{name} from end B",
                "L − place from end A",
                $"{piece.Given(spec.FinishedLength)} − {piece.Given(separator.Position)}",
                $"{piece.Worked(spec.FromB(separator.Position))}; {separator.StrandsEachSide} strands each side, half of all: {Sides(spec.Layup)}",
                ExplainedSource.Geometry);
            yield return new ExplainedStep(
                $"{name} before twisting",
                "j = place × Q / L, from end A, over the pins",
                $"{piece.Given(separator.Position)} × {piece.Worked(spec.LaidUpLength)} / {piece.Given(spec.FinishedLength)}",
                piece.Worked(spec.OnJig(separator.Position)),
                "proportion: twisting shortens the piece evenly");
            yield return new ExplainedStep(
                $"{name} on the jig",
                "j − (Q − P) / 2, from the outside of post A",
                $"{piece.Worked(spec.OnJig(separator.Position))} − ({piece.Worked(spec.LaidUpLength)} − {piece.Worked(spec.Posts.Outside)}) / 2",
                piece.Worked(spec.FromPostA(separator.Position)),
                "geometry: what thick posts and closed end loops take, from both ends alike");
        }
    }
}
