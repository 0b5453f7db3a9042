using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages;

/// <summary>Pages of label stock: one label from a roll, or rows and columns on a sheet, filled row by row.</summary>
internal static class LabelPage
{
    /// <param name="firstLabel">On the first page, from 1; a page has it, or is from a roll.</param>
    public static IEnumerable<Page> Fill(LabelStock stock, IEnumerable<IReadOnlyList<Ink>> labels, int firstLabel)
    {
        var skipped = stock.LabelsPerPage == 1 ? 0 : firstLabel - 1;
        return labels
            .Select((inks, i) => (Number: skipped + i, Inks: inks))
            .GroupBy(l => l.Number / stock.LabelsPerPage)
            .Select(page => Of(stock, page.Select(l => ((l.Number % stock.LabelsPerPage) + 1, l.Inks))));
    }

    /// <param name="labels">The place of each on the page, from 1, and what is on it.</param>
    public static Page Of(LabelStock stock, IEnumerable<(int Number, IReadOnlyList<Ink> Inks)> labels) => new(
        Points.Of(stock.PageWidth),
        Points.Of(stock.PageHeight),
        [.. labels.SelectMany(l => l.Inks.Select(ink => ink.Moved(Left(stock, l.Number - 1), Top(stock, l.Number - 1))))]);

    private static float Left(LabelStock stock, int index) =>
        DotGrid.Of(stock).Nearest(Points.Of(stock.Left + (stock.AcrossPitch * (index % stock.Columns))));

    private static float Top(LabelStock stock, int index) =>
        DotGrid.Of(stock).Nearest(Points.Of(stock.Top + (stock.DownPitch * (index / stock.Columns))));
}
