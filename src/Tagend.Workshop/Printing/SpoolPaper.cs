using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Labels;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Shops;

namespace Tagend.Workshop.Printing;

/// <summary>The tags of spools, as a file.</summary>
public static class SpoolPaper
{
    private const string FileName = "spools.pdf";

    /// <param name="labels">Name of the label stock; null for that of the shop's loop tags.</param>
    /// <param name="use">Of the first sheet.</param>
    /// <returns>The file, null where the problems keep it from being made.</returns>
    /// <exception cref="TagendException">There is no such stock, or the file cannot be written.</exception>
    public static (PrintedPaper? Paper, IReadOnlyList<Problem> Problems) Print(
        IReadOnlyList<ReceivedSpool> spools, ShopCatalog catalog, string? labels, SheetUse use, string folder, DateOnly date)
    {
        var fonts = Fonts.Of(catalog.Folder);
        var stock = LabelStocks.Named(labels ?? catalog.Shop.LoopStock, catalog);
        var composed = SpoolLabels.Compose(spools, catalog, fonts, stock, use);
        if (composed.Problems.Count > 0)
        {
            return (null, composed.Problems);
        }

        var file = new PrintedPaper(
            Path.Combine(folder, FileName), "Tagend spools", composed.Pages.Count, new Paper(stock.Name, stock.PageWidth, stock.PageHeight));
        AtomicFiles.Write([new NewFile(file.Path, stream => PdfFile.Write(composed.Pages, fonts, new PdfNote(file.Title, date, catalog.Words.Tag), stream))]);
        return (file, []);
    }
}
