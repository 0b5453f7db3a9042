using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Specs.Explained;

/// <summary>One worked step of a spec, for a reader with a pocket calculator.</summary>
/// <param name="Formula">In plain symbols, or the rule in words.</param>
/// <param name="Numbers">The right side of the formula with its numbers put in; empty where the formula is words.</param>
/// <param name="Result">Starts with the number that <paramref name="Numbers"/> give, as far as its digits go.</param>
/// <param name="Source">Where formula and constants come from: a publication, common practice, the shop, an assumption.</param>
public sealed record ExplainedStep(string Name, string Formula, string Numbers, string Result, string Source);

/// <summary>Shows how the numbers of a spec came about. Every result is the spec's own.</summary>
public static class Explanation
{
    /// <param name="line">What the spec was made of.</param>
    /// <param name="catalog">What it was made with.</param>
    /// <returns>In the order in which a later step uses an earlier one.</returns>
    public static ValueList<ExplainedStep> Of(BuildSpec spec, OrderLine line, ShopCatalog catalog)
    {
        var piece = new ExplainedPiece(spec, line, catalog);
        return
        [
            .. ExplainedTwist.Of(piece),
            .. ExplainedPosts.Of(piece),
            .. ExplainedLayup.Of(piece),
            .. ExplainedStretch.Of(piece),
            .. ExplainedServings.Of(piece),
            .. ExplainedNock.Of(piece),
            .. ExplainedStrength.Of(piece),
            .. ExplainedMass.Of(piece),
            .. ExplainedStock.Of(piece),
        ];
    }
}
