using Tagend.Catalog;
using Tagend.Problems;

namespace Tagend.Workshop.Shops;

/// <summary>Label stocks by the names that a shop gave them.</summary>
public static class LabelStocks
{
    /// <summary>The stock of a name.</summary>
    /// <exception cref="TagendException">It is not in stocks.toml.</exception>
    public static LabelStock Named(string name, ShopCatalog catalog) => catalog.Stocks.TryGetValue(name, out var stock)
        ? stock
        : throw new TagendException($"there is no label stock {name} in stocks.toml; there are {string.Join(", ", catalog.Stocks.Keys)}") { Blame = Blame.UnknownName };

    /// <summary>A stock with the dots of the label printer it is drawn for.</summary>
    /// <param name="name">Its name in stocks.toml.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="dotsPerInch">The printer's resolution; null for what stocks.toml says.</param>
    /// <exception cref="TagendException">It is not in stocks.toml, or is a sheet and no label printer's.</exception>
    public static LabelStock Named(string name, ShopCatalog catalog, int? dotsPerInch)
    {
        var stock = Named(name, catalog);
        return dotsPerInch is null || stock.LabelsPerPage == 1
            ? stock with { DotsPerInch = dotsPerInch ?? stock.DotsPerInch }
            : throw new TagendException(
                $"--dpi is for label printers, and {stock.Name} ({stock.Title}) is a sheet: its codes are drawn for laser and ink "
                + "printers of 300, 600 or 1200 dpi as it is; leave --dpi out, or choose a roll with --bag-labels and --loop-labels");
    }
}
