using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Pages.Parts;
using Tagend.Specs;

namespace Tagend.Pages.Pull;

/// <summary>The pull sheet of a batch.</summary>
public sealed class PullSheets : IPageKind
{
    public string Name => "pulls";

    public string Title => "pull sheet";

    public bool IsUsual => true;

    public IPageBatch Begin(ShopCatalog catalog, Fonts fonts, PageSetting setting) => new Batch(catalog, fonts, setting, Name);

    private sealed class Batch(ShopCatalog catalog, Fonts fonts, PageSetting setting, string name) : IPageBatch
    {
        private readonly Dictionary<string, OrderSlip> _slips = [];

        public LaidSet Lay(BuildSet set) => new([], () => _slips[set.Order] = set.Builds[0].Slip);

        public Bound Bind(Lazy<BatchPull> pull)
        {
            var sheet = PullSheet.Compose(pull.Value, _slips, catalog, setting.Paper.Sheet, fonts);
            return new Bound([new Document(name, setting.Paper.Sheet, setting.Scaled(sheet.Pages))], sheet.Problems);
        }
    }
}
