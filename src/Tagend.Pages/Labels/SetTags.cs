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
        private readonly LabelBatch _labels = new(name, [setting.BagStock, setting.LoopStock], setting, fonts);

        public LaidSet Lay(BuildSet set)
        {
            var tags = TagLabels.Of(set, catalog, fonts, setting.BagStock, setting.LoopStock, setting.Use);
            var labels = tags.Labels.Skip(setting.IsOfLoosePieces ? 1 : 0);
            return new LaidSet(tags.Problems, () => _labels.Keep(
                labels.Select((label, i) => i == 0 ? label with { Bookmark = Bookmark.Of(set) } : label)));
        }

        public Bound Bind(Lazy<BatchPull> pull) => new(_labels.Documents(), []);
    }
}
