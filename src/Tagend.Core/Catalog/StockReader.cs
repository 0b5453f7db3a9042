using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>Reads one label stock: page and label in plain dimensions.</summary>
internal static class StockReader
{
    public static LabelStock Read(TomlSection section)
    {
        var page = section.Lengths("page", 2, LengthRange.LabelPage);
        var label = section.Lengths("label", 2, LengthRange.LabelPage, page);
        var stock = new LabelStock
        {
            Name = section.Name.ToLowerInvariant(),
            Title = section.Text("title"),
            PageWidth = page[0],
            PageHeight = page[1],
            LabelWidth = label[0],
            LabelHeight = label[1],
            Rows = section.Whole("rows", 1, 100, 1),
            Columns = section.Whole("columns", 1, 100, 1),
            Left = section.Length("left", Length.Zero),
            Top = section.Length("top", Length.Zero),
            AcrossPitch = section.Length("across", label[0]),
            DownPitch = section.Length("down", label[1]),
            Corner = section.Length("corner", Length.Zero),
            DotsPerInch = section.OptionalWhole("dpi", 100, 1200),
        };
        if (!section.IsSound)
        {
            return stock;
        }

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
