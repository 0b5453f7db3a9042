using Tagend.Bows;
using Tagend.Catalog;
using Tagend.Imports;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Workshop.Checks;

/// <summary>Order files as shops have them: our own columns or the shop's maps, and bows of the shop's book.</summary>
public static class OrderFiles
{
    /// <summary>Reads order files with all that the shop's templates say of them.</summary>
    /// <param name="paths">One or more; an order may have rows in several.</param>
    /// <param name="map">Which map to read them by; null to choose by their headers.</param>
    /// <exception cref="TagendException">A file is not there or cannot be read.</exception>
    public static OrderFile Read(IEnumerable<string> paths, ShopCatalog catalog, MapWish? map = null)
    {
        return OrderReader.Read(paths, catalog.Shop.Unit, FormatOf(catalog, map), catalog.Colors);
    }

    /// <summary>Reads an order file that is in memory.</summary>
    /// <param name="name">The name that messages have.</param>
    /// <param name="bytes">What the file says.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="map">As there.</param>
    public static OrderFile Read(string name, byte[] bytes, ShopCatalog catalog, MapWish? map = null) =>
        OrderReader.Read([(name, bytes)], catalog.Shop.Unit, FormatOf(catalog, map), catalog.Colors);

    private static BookedBows FormatOf(ShopCatalog catalog, MapWish? map)
    {
        var (shop, folder) = (catalog.Shop, catalog.Folder);
        var own = new OwnColumns(shop.Columns, Directory.Exists(Path.Combine(folder, BowBook.Folder)));
        return new BookedBows(
            new MapChoice(problems => MapReader.ReadAll(folder, problems), own, map ?? MapWish.ByHeader),
            problems => BowBook.Read(folder, shop.Unit, catalog.Colors, problems));
    }
}
