using Tagend.Catalog;
using Tagend.Measures;

namespace Tagend.Texts;

/// <summary>Which templates a run used, and what the shop has not given in them.</summary>
internal static class TemplatesNote
{
    public static IEnumerable<string> Of(ShopCatalog catalog)
    {
        yield return $"templates: {catalog.Folder}";
        if (catalog.Shop.Jig.PostDiameter is null)
        {
            yield return "post diameter not given: settings are for posts as thick as the pins, "
                + $"{LengthWriter.Setting(catalog.Shop.PinDiameter, catalog.Shop.Unit)}; measure yours and give post_diameter in shop.toml";
        }
    }
}
