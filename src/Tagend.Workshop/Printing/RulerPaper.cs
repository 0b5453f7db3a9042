using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages.Ruler;
using Tagend.Problems;

namespace Tagend.Workshop.Printing;

/// <summary>The page to measure a printer by, as a file.</summary>
public static class RulerPaper
{
    private const string FileName = "ruler.pdf";

    /// <summary>Writes the page.</summary>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="paper">The paper to print on.</param>
    /// <param name="scale">The printer whose correction is to be seen; null for a page to measure by.</param>
    /// <param name="folder">The folder for the file; it is made if need be.</param>
    /// <param name="date">The date in the document.</param>
    /// <returns>The file; null where the problems keep it from being made.</returns>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public static (PrintedPaper? Paper, IReadOnlyList<Problem> Problems) Print(
        ShopCatalog catalog, Paper paper, PrinterScale? scale, string folder, DateOnly date)
    {
        var fonts = Fonts.Of(catalog.Folder);
        var composed = RulerPage.Compose(paper, scale?.Printer, catalog.Words, fonts);
        if (composed.Problems.Count > 0)
        {
            return (null, composed.Problems);
        }

        IReadOnlyList<Page> pages = scale is null ? composed.Pages : [.. composed.Pages.Select(p => p.Through(scale))];
        var file = new PrintedPaper(Path.Combine(folder, FileName), "Tagend ruler", pages.Count, paper);
        AtomicFiles.Write([new NewFile(file.Path, stream => PdfFile.Write(pages, fonts, new PdfNote(file.Title, date, catalog.Words.Tag), stream))]);
        return (file, []);
    }
}
