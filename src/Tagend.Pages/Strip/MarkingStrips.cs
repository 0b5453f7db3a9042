using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Strip;

/// <summary>The marking strips of sets, one a piece.</summary>
public sealed class MarkingStrips : IPageKind
{
    public string Name => "strips";

    public string Title => "marking strip";

    public bool IsUsual => false;

    public bool IsMeasuredBy => true;

    public string? FromTag => "strip";

    public bool IsOfPieces => true;

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting) => new PlainBatch(
        setting with { Draft = setting.HasOnePaperADocument ? null : setting.Draft },
        fonts,
        set => set.Builds.Select(b => MarkingStrip.Compose(b, catalog, setting.StripStock, setting.Positions, fonts)),
        (_, pages) => Bind(pages, setting))
    {
        HasBookmarks = false,
    };

    /// <summary>One document, or for a printer and a roll, whose pages are as long as their pieces, one a page.</summary>
    private IEnumerable<Document> Bind(IReadOnlyList<Page> pages, PageSetting setting) =>
        setting.HasOnePaperADocument && setting.StripStock.IsRoll
            ? pages.Select((page, i) => new Document($"{Name}-{i + 1:00}", RollFor(page, setting.StripStock), [page]))
            : [new Document(Name, setting.Paper.Sheet, pages)];

    private static Paper RollFor(Page page, StripStock stock) =>
        new("roll", stock.Across, Length.FromInches(page.Height / Points.PerInch));
}
