using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Qr.Encode;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The card to set the bench by: one page a piece, on half letter or A5.</summary>
public static class JigCard
{
    /// <summary>On all sides, in points: a quarter inch, which cheap printers leave white.</summary>
    private const float Margin = 18;

    /// <param name="tagText">What the QR code says.</param>
    /// <param name="paper">Half letter or A5.</param>
    /// <returns>One page, or the problems of what does not fit.</returns>
    public static Composed Compose(Build build, ShopCatalog catalog, string tagText, Paper paper, Fonts fonts)
    {
        var spec = build.Spec;
        var (width, height) = (Points.Of(paper.Width), Points.Of(paper.Height));
        var at = new Place($"jig card {spec.Order} {spec.Piece}");
        if (QrSymbol.Of(tagText) is not { } symbol)
        {
            return new Composed([], [new Problem(at, null, $"the tag text of {tagText.Length} characters is more than a QR code holds")]);
        }

        var room = new Room(width - (2 * Margin), height - (2 * Margin), Fill: true);
        var laid = StyleSearch.Roomiest(
            CardStyle.FromRoomyToTight, style => Content(build, catalog, symbol, fonts, style).Place(fonts, room), placement => placement is Placed);
        return laid switch
        {
            Placed placed => new Composed([new Page(width, height, [.. placed.InksAt(Margin, Margin)])], []),
            var misfit => new Composed([], [.. ((Misfit)misfit).Reasons.Select(r => new Problem(at, null, $"{r}; on {paper.Title}"))]),
        };
    }

    private static Stack Content(Build build, ShopCatalog catalog, QrSymbol symbol, Fonts fonts, CardStyle style)
    {
        var spec = build.Spec;
        var write = new CardWriter(spec.Unit, catalog.Words);
        var words = catalog.Words;
        var plan = catalog.Plans.GetValueOrDefault(spec.Kind);
        var material = catalog.Materials.GetValueOrDefault(spec.Bundle.Material)?.Title ?? spec.Bundle.Material;
        return new Stack(
            [
                CardHeader.Of(build, words.Kind(plan?.Title ?? spec.Kind), symbol, style, write),
                CardPosts.Of(spec, style, write),
                new PieceDrawing(spec, write.Ends(plan), write).Of(style),
                .. style.HasEnds ? [CardEnds.Of(spec, plan?.EndLoopA ?? Length.Zero, plan?.EndLoopB ?? Length.Zero, write)] : (IEnumerable<Block>)[],
                CardLayup.Of(spec, words.Term(material), style, write),
                .. CardPlaces.Of(spec, fonts, style, write),
                .. CardFoot.Of(style, write),
            ],
            style.Gap);
    }
}
