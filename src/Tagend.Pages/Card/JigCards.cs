using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Card;

/// <summary>The jig cards of sets, one a piece.</summary>
public sealed class JigCards : IPageKind
{
    public string Name => "cards";

    public string Title => "jig card";

    public bool IsUsual => true;

    public string FromTag => "card";

    public bool IsOfPieces => true;

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting)
    {
        var paper = catalog.Shop.Cards == CardLayout.FullPage ? setting.Paper.Sheet : setting.Paper.Card;
        var searches = new CardSearches();
        return new PlainBatch(
            setting,
            fonts,
            set => set.Builds.Select(Card),
            (_, pages) => [new Document(Name, paper, pages)]);

        Composed Card(Build build)
        {
            var text = ProvenTag.Of(build.Spec, JigCard.PlaceOf(build.Spec), out var problem);
            return problem is null ? JigCard.Compose(build, catalog, text, paper, fonts, searches) : new Composed([], [problem]);
        }
    }
}
