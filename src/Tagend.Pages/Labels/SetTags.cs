using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Labels;

/// <summary>The bag tags and loop tags of sets.</summary>
public sealed class SetTags : IPageKind
{
    public string Name => "tags";

    public string Title => "tag";

    public bool IsUsual => true;

    public string FromTag => "tag";

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting) => new Batch(catalog, fonts, setting, Name);

    private sealed class Batch(ShopCatalog catalog, Fonts fonts, PageSetting setting, string name) : IPageBatch
    {
        private readonly List<TagLabel> _labels = [];

        public LaidSet Lay(BuildSet set)
        {
            var tags = TagLabels.Of(set, catalog, fonts, setting.BagStock, setting.LoopStock, setting.Use);
            var labels = tags.Labels.Skip(setting.IsOfLoosePieces ? 1 : 0);
            return new LaidSet(tags.Problems, () => _labels.AddRange(
                labels.Select((label, i) => i == 0 ? label with { Bookmark = Bookmark.Of(set) } : label)));
        }

        /// <summary>One document, or for a printer one a stock.</summary>
        public Bound Bind(Lazy<BatchPull> pull)
        {
            var byStock = _labels.GroupBy(l => l.Stock).ToList();
            return new Bound(
                setting.HasOnePaperADocument && byStock.Count > 1
                    ? [.. byStock.Select(g => DocumentOf($"{name}-{g.Key.Name}", g.Key, [.. g]))]
                    : [DocumentOf(name, _labels[0].Stock, _labels)],
                []);
        }

        private Document DocumentOf(string file, LabelStock stock, IReadOnlyCollection<TagLabel> labels) =>
            new(file, new Paper(stock.Name, stock.PageWidth, stock.PageHeight), OnDots(TagLabels.Pages(labels, setting.Use)))
            {
                IsOfLabels = true,
                NextLabels = TagLabels.Next(labels, setting.Use),
            };

        /// <summary>Labels of a printer whose dots are known stay on its dots.</summary>
        private IReadOnlyList<Page> OnDots(IReadOnlyList<Page> pages) =>
            setting.BagStock.DotsPerInch is null && setting.LoopStock.DotsPerInch is null ? setting.Scaled(pages) : pages;
    }
}
