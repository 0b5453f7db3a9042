using Tagend.Measures;

namespace Tagend.Specs.Explained;

/// <summary>How an arrow nock sits over each thread on hand, where its groove is given.</summary>
internal static class ExplainedNock
{
    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece)
    {
        if (piece.Spec.NockFit is not { } fit)
        {
            yield break;
        }

        var (wanted, bundle, threads) = (piece.Shop.WantedNockClearance, piece.Spec.Bundle.Diameter, piece.Catalog.Threads.Values);
        foreach (var thread in threads)
        {
            var made = NockFit.Of(fit.Groove, thread.Name, thread.Diameter, bundle);
            yield return new ExplainedStep(
                $"nock clearance over {thread.Name}",
                "groove − (D + 2 × d)",
                $"{piece.Given(fit.Groove)} − ({piece.Thickness(bundle)} + 2 × {piece.Given(thread.Diameter)})",
                $"{piece.Thickness(made.Clearance)}, {piece.Thickness(Length.Abs(made.Clearance - wanted))} off the {piece.Given(wanted)} wanted",
                "geometry; the groove is as ordered");
        }

        var best = NockFit.Best(fit.Groove, wanted, bundle, threads);
        yield return new ExplainedStep(
            "thread of the center serving",
            $"as ordered or planned; the thread nearest to the wanted clearance is {best.Name}",
            "",
            $"{fit.Thread}: {piece.Thickness(fit.Clearance)} beside the serving",
            piece.Line.CenterServing?.Thread is null ? "an assumption as to the wanted clearance, unless the shop wrote its own (shop.toml)" : ExplainedSource.Order);
    }
}
