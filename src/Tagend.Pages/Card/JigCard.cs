using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Qr.Encode;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The card to set the bench by: front and back of a card, or one side of a sheet.</summary>
public static class JigCard
{
    /// <summary>On all sides of a card, in points: a quarter inch, which cheap printers leave white.</summary>
    private const float CardMargin = 18;

    private const float SheetMargin = 30;

    /// <summary>A paper as wide as this has room for all on one side.</summary>
    private static readonly Length NarrowestSheet = Length.FromInches(7);

    /// <summary>The card of a piece, as messages name it.</summary>
    public static Place PlaceOf(BuildSpec spec) => new($"jig card {spec.Order} {spec.Piece}");

    /// <param name="tagText">What the QR code says.</param>
    /// <param name="paper">A card or a sheet.</param>
    /// <returns>
    /// Front and back of a card; one page of a sheet, or both of its sides where one does not hold it all; or the problems
    /// of what does not fit.
    /// </returns>
    public static Composed Compose(Build build, ShopCatalog catalog, string tagText, Paper paper, Fonts fonts) =>
        Compose(build, catalog, tagText, paper, fonts, new CardSearches());

    /// <param name="searches">Of the batch the card belongs to.</param>
    internal static Composed Compose(Build build, ShopCatalog catalog, string tagText, Paper paper, Fonts fonts, CardSearches searches)
    {
        var spec = build.Spec;
        var at = PlaceOf(spec);
        if (QrSymbol.Of(tagText) is not { } symbol)
        {
            return new Composed([], [new Problem(at, null, $"the tag text of {tagText.Length} characters is more than a QR code holds")]);
        }

        var card = new CardSides(build, catalog, symbol, fonts);
        var margin = paper.Width >= NarrowestSheet ? SheetMargin : CardMargin;
        Placement[] sides = paper.Width >= NarrowestSheet && Lay(CardStyle.Sheet, card.Sheet) is Placed whole
            ? [whole]
            : Lay(CardStyle.Front, card.Front) is Placed front
                ? [front, Lay(CardStyle.Back, card.Back)]
                : [Lay(CardStyle.FullFront, card.Front), Lay(CardStyle.FullBack, card.Back)];

        var reasons = sides.OfType<Misfit>().SelectMany(m => m.Reasons).Distinct().ToList();
        return reasons.Count > 0
            ? new Composed([], [.. reasons.Select(r => new Problem(at, null, $"{r}; on {paper.Title}"))])
            : new Composed([.. sides.OfType<Placed>()
                .Select(s => new Page(Points.Of(paper.Width), Points.Of(paper.Height), s.Inks))], []);

        Placement Lay(IReadOnlyList<CardStyle> styles, Func<CardStyle, Block> content)
        {
            var room = new Room(Points.Of(paper.Width) - (2 * margin), Points.Of(paper.Height) - (2 * margin), Fill: true);
            var laid = searches.Of(spec.Kind, styles).Roomiest(style => content(style).Place(fonts, room), placement => placement is Placed);
            return laid is Placed placed ? new Placed(room.Width, room.Height, placed.InksAt(margin, margin), []) : laid;
        }
    }
}
