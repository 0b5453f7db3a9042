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
    /// <param name="map">Name of the map to read them by; null to choose by their headers.</param>
    /// <exception cref="TagendException">A file is not there or cannot be read.</exception>
    public static OrderFile Read(IEnumerable<string> paths, ShopCatalog catalog, string? map = null)
    {
        var (shop, folder) = (catalog.Shop, catalog.Folder);
        var own = new OwnColumns(shop.Columns, Directory.Exists(Path.Combine(folder, BowBook.Folder)));
        var format = new BookedBows(
            new MapChoice(problems => MapReader.ReadAll(folder, problems), own, map),
            problems => BowBook.Read(folder, shop.Unit, catalog.Colors, problems));
        return OrderReader.Read(paths, shop.Unit, format, catalog.Colors);
    }
}
