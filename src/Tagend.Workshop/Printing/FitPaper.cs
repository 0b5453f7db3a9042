using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Output;
using Tagend.Pages.Fit;
using Tagend.Problems;

namespace Tagend.Workshop.Printing;

/// <summary>Fits drawn: measured against predicted lengths, a page a material and strand count.</summary>
public static class FitPaper
{
    private const int PictureDpi = 200;

    /// <summary>Whether a file of that name is a PNG picture, and not a PDF.</summary>
    public static bool IsPicture(string path) => path.EndsWith(".png", StringComparison.OrdinalIgnoreCase);

    /// <summary>Draws fits into a file.</summary>
    /// <param name="fits">Those without a result are passed over.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="path">A PDF, or a picture, which holds one fit.</param>
    /// <param name="date">The date in the document.</param>
    /// <returns>The number of fits that were drawn.</returns>
    /// <exception cref="TagendException">There is nothing to draw, too much for a picture, or the file cannot be written.</exception>
    public static int Draw(IEnumerable<TakeUpFit> fits, ShopCatalog catalog, string path, DateOnly date)
    {
        var drawn = fits.Where(f => f.Fit is not null).ToList();
        if (drawn.Count == 0)
        {
            throw new TagendException($"{path}: there is nothing to plot before two builds of a material and strand count are logged");
        }

        if (IsPicture(path) && drawn.Count > 1)
        {
            throw new TagendException(
                $"{path}: there are {drawn.Count} fits, and a PNG holds one: choose with --material and --strands, or name a .pdf");
        }

        var fonts = Fonts.Of(catalog.Folder);
        List<Page> pages = [.. drawn.Select(f => PageOf(f, catalog, fonts))];
        AtomicFiles.Write([new NewFile(path, stream =>
        {
            if (IsPicture(path))
            {
                PngFile.Write(pages[0], fonts, PictureDpi, DotDepth.Gray, stream);
            }
            else
            {
                PdfFile.Write(pages, fonts, new PdfNote("Tagend fit", date, catalog.Words.Tag), stream);
            }
        })]);
        return pages.Count;
    }

    /// <summary>Draws a fit as a PNG picture.</summary>
    /// <param name="fit">One with a result.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="output">Gets the picture.</param>
    /// <exception cref="TagendException">The fonts cannot be read.</exception>
    public static void WritePicture(TakeUpFit fit, ShopCatalog catalog, Stream output)
    {
        var fonts = Fonts.Of(catalog.Folder);
        PngFile.Write(PageOf(fit, catalog, fonts), fonts, PictureDpi, DotDepth.Gray, output);
    }

    /// <summary>The settle of a fit, a fraction of the laid-up length, with its standard error or where else it comes from.</summary>
    public static string Settle(FittedTakeUp fit) => fit.IsSettleFitted
        ? FormattableString.Invariant($"{fit.Settle:0.00000} ± {fit.SettleError:0.00000}")
        : FormattableString.Invariant($"{fit.Settle:0.######} (materials.toml)");

    /// <param name="fit">With a result.</param>
    private static Page PageOf(TakeUpFit fit, ShopCatalog catalog, Fonts fonts) =>
        new FitPlot(fit.Fit!, catalog.Shop.Unit, catalog.Words, fonts).Of([.. fit.Points.Select(Plotted)], catalog.Shop.Paper.Card);

    private static PlottedBuild Plotted(FitPoint point)
    {
        var mark = point.Build.IsLeftOut ? PlotMark.LeftOut : point.IsOutlier ? PlotMark.Outlier : PlotMark.Used;
        return new PlottedBuild(
            point.Predicted, point.Difference, point.Build.Tolerance, mark, point.Build.Number);
    }
}
