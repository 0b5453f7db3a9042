using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>Reads one label stock: page and label in plain dimensions.</summary>
internal static class StockReader
{
    public static LabelStock Read(TomlSection section)
    {
        var page = section.Lengths("page", 2);
        var label = section.Lengths("label", 2, page);
        var stock = new LabelStock(
            section.Name.ToLowerInvariant(),
            section.Text("title"),
            page[0],
            page[1],
            label[0],
            label[1],
            section.Whole("rows", 1, 100, 1),
            section.Whole("columns", 1, 100, 1),
            section.Length("left", Length.Zero),
            section.Length("top", Length.Zero),
            section.Length("across", label[0]),
            section.Length("down", label[1]),
            section.Length("corner", Length.Zero),
            section.OptionalWhole("dpi", 100, 1200));
        if (stock.Left + (stock.AcrossPitch * (stock.Columns - 1)) + stock.LabelWidth > stock.PageWidth)
        {
            section.Report("page", null, CatalogWording.LabelsBeyondPage("across"));
        }

        if (stock.Top + (stock.DownPitch * (stock.Rows - 1)) + stock.LabelHeight > stock.PageHeight)
        {
            section.Report("page", null, CatalogWording.LabelsBeyondPage("down"));
        }

        if (stock.Corner * 2 > Length.Min(stock.LabelWidth, stock.LabelHeight))
        {
            section.Report("corner", null, CatalogWording.CornerTooRound);
        }

        if (stock.AcrossPitch < stock.LabelWidth && stock.Columns > 1)
        {
            section.Report("across", null, CatalogWording.LabelsOverlap("label's width"));
        }

        if (stock.DownPitch < stock.LabelHeight && stock.Rows > 1)
        {
            section.Report("down", null, CatalogWording.LabelsOverlap("label's height"));
        }

        return stock;
    }
}
