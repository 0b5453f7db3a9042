namespace Tagend.Specs.Explained;

/// <summary>What is pulled from each spool for the piece.</summary>
internal static class ExplainedStock
{
    private const string Shares = "common practice: tails and dummy tag; the waste is an assumption (shop.toml)";

    public static IEnumerable<ExplainedStep> Of(ExplainedPiece piece) =>
    [
        OneLoop(piece),
        .. piece.Spec.Layup.Colors.Index().Select(c => Strand(piece, c.Item, isFirst: c.Index == 0)),
        .. ThreadUse.Of(piece.Spec).GroupBy(u => (u.Thread, u.Color)).Select(spool => Thread(piece, spool.Key, [.. spool])),
    ];

    private static ExplainedStep OneLoop(ExplainedPiece piece) => new(
        "one loop around the posts",
        "o = 2 × centers + π × post",
        $"2 × {piece.Worked(piece.Spec.Posts.Centers)} + π × {piece.Given(piece.Spec.Posts.PostDiameter)}",
        piece.Worked(Stock.OfLoop(piece.Spec.Posts)),
        ExplainedSource.Geometry);

    private static ExplainedStep Strand(ExplainedPiece piece, ColorShare color, bool isFirst)
    {
        var (spec, shop) = (piece.Spec, piece.Shop);
        var dummies = isFirst ? spec.EndTags().Count(tag => tag.IsDummy) : 0;
        return new ExplainedStep(
            $"strand material of {color.Color} to pull",
            $"(o × loops + 2 × tail{(dummies > 0 ? " + dummy tags" : "")}) × (1 + waste)",
            $"({piece.Worked(Stock.OfLoop(spec.Posts))} × {ExplainedPiece.Plain(color.Strands / 2.0)} + 2 × {piece.Given(spec.Layup.Tail)}"
                + $"{(dummies > 0 ? $" + {dummies} × {piece.Given(shop.DummyTag)}" : "")}) × (1 + {ExplainedPiece.Plain(shop.Waste)})",
            piece.Thread(Need(piece, StockKind.Strand, spec.Bundle.Material, color.Color)),
            Shares);
    }

    private static ExplainedStep Thread(ExplainedPiece piece, (string Name, string Color) spool, List<ThreadUse> uses)
    {
        var wound = uses.Select(u => piece.Thread(u.Wound));
        return new ExplainedStep(
            $"thread {spool.Name} {spool.Color}".TrimEnd() + " to pull",
            "(wound + a tail for each stretch) × (1 + waste)",
            $"({string.Join(" + ", wound)} + {uses.Count} × {piece.Given(piece.Shop.ThreadTail)}) × (1 + {ExplainedPiece.Plain(piece.Shop.Waste)})",
            piece.Thread(Need(piece, StockKind.Thread, spool.Name, spool.Color)),
            Shares);
    }

    private static Measures.Length Need(ExplainedPiece piece, StockKind kind, string name, string color) =>
        Stock.Of(piece.Spec, piece.Shop).Single(need => need.Kind == kind && need.Name == name && need.Color == color).Length;
}
