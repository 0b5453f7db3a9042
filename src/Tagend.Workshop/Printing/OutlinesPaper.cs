using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Problems;
using Tagend.Workshop.Shops;

namespace Tagend.Workshop.Printing;

/// <summary>The test page of a label sheet, as a file.</summary>
public static class OutlinesPaper
{
    /// <summary>Writes the page.</summary>
    /// <param name="name">The name of a sheet of labels in stocks.toml.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="folder">The folder for the file; it is made if need be.</param>
    /// <param name="date">The date in the document.</param>
    /// <exception cref="TagendException">There is no such sheet, or the file cannot be written.</exception>
    public static PrintedPaper Print(string name, ShopCatalog catalog, string folder, DateOnly date)
    {
        var stock = LabelStocks.Named(name, catalog);
        if (stock.LabelsPerPage == 1)
        {
            var sheets = catalog.Stocks.Values.Where(s => s.LabelsPerPage > 1).Select(s => s.Name);
            throw new TagendException(
                $"{stock.Name} ({stock.Title}) has one label per page, so there is no sheet to outline; the sheets are {string.Join(", ", sheets)}")
            {
                Blame = Blame.WrongValue,
            };
        }

        var fonts = Fonts.Of(catalog.Folder);
        var file = new PrintedPaper(
            Path.Combine(folder, $"{stock.Name}-outlines.pdf"),
            $"Tagend outlines of {stock.Name}",
            1,
            new Paper(stock.Name, stock.PageWidth, stock.PageHeight));
        AtomicFiles.Write(
            [new NewFile(file.Path, stream => PdfFile.Write([StockOutlines.Of(stock, catalog.Words, fonts)], fonts, new PdfNote(file.Title, date, catalog.Words.Tag), stream))]);
        return file;
    }
}
