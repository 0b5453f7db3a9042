using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Output;
using Tagend.Pages.Parts;

namespace Tagend.Pages.Labels;

/// <summary>Pages of label stock: one label from a roll, or rows and columns on a sheet, filled row by row.</summary>
internal static class LabelPage
{
    public static IEnumerable<Page> Fill(LabelStock stock, IEnumerable<TagLabel> labels, SheetUse use) => labels
        .Zip(use.PlacesOn(stock))
        .GroupBy(l => l.Second.Sheet)
        .Select(page => Of(stock, [.. page.Select(l => (l.Second.Label, l.First))]));

    /// <param name="labels">The place of each on the page, from 1, and what is on it.</param>
    public static Page Of(LabelStock stock, IReadOnlyList<(int Number, TagLabel Label)> labels) => new(
        Side(stock, stock.PageWidth),
        Side(stock, stock.PageHeight),
        [.. labels.SelectMany(l => l.Label.Inks.Select(ink => Moved(ink, stock, l.Number - 1)))])
    {
        Bookmarks = [.. labels.Select(l => l.Label.Bookmark).OfType<string>()],
    };

    /// <summary>Top left of a label on its page, unrounded, in points.</summary>
    /// <param name="index">Of the label, from 0, row by row.</param>
    public static (float X, float Y) Corner(LabelStock stock, int index) => (
        Points.Of(stock.Left + (stock.AcrossPitch * (index % stock.Columns))),
        Points.Of(stock.Top + (stock.DownPitch * (index / stock.Columns))));

    /// <summary>A sheet is as large as its paper, a label of a roll as its whole dots.</summary>
    private static float Side(LabelStock stock, Length side) =>
        stock.LabelsPerPage == 1 ? DotGrid.Of(stock).WholeSide(side) : Points.Of(side);

    /// <summary>To the dots nearest to its label's place.</summary>
    private static Ink Moved(Ink ink, LabelStock stock, int index)
    {
        var (grid, corner) = (DotGrid.Of(stock), Corner(stock, index));
        return ink.Moved(grid.Nearest(corner.X), grid.Nearest(corner.Y));
    }
}
