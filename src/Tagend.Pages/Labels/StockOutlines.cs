using System.Globalization;
using Tagend.Blocks;
using Tagend.Catalog;
using Tagend.Output;

namespace Tagend.Pages.Labels;

/// <summary>A test page of a label sheet: the outline and number of every label, to hold against a real sheet.</summary>
public static class StockOutlines
{
    /// <summary>Thickness of an outline, in points; it lies on the label's edge.</summary>
    private const float Line = 0.5f;

    /// <summary>Around the words, in points.</summary>
    private const float Margin = 9;

    private static readonly TextStyle Words = new(Weight.Regular, 8, Leading: 1.2f);
    private static readonly TextStyle Number = new(Weight.Bold, 20);

    /// <param name="stock">A sheet: more than one label a page.</param>
    /// <returns>The page; words that find no room on a small label are left out.</returns>
    public static Page Of(LabelStock stock, PaperLanguage words, Fonts fonts)
    {
        var labels = Enumerable.Range(0, stock.LabelsPerPage).Select(i => LabelPage.Corner(stock, i));
        return new Page(
            Points.Of(stock.PageWidth),
            Points.Of(stock.PageHeight),
            [.. labels.SelectMany((at, i) => InksOf(stock, words[PaperWord.OutlinesHowTo], fonts, i + 1).Select(ink => ink.Moved(at.X, at.Y)))]);
    }

    private static IEnumerable<Ink> InksOf(LabelStock stock, string howTo, Fonts fonts, int number)
    {
        var (width, height) = (Points.Of(stock.LabelWidth), Points.Of(stock.LabelHeight));
        yield return new BoxInk(
            -Line / 2, -Line / 2, width + Line, height + Line, Line, Radius: Points.Of(stock.Corner) is > 0 and var r ? r + (Line / 2) : 0);
        Block words = number == 1
            ? new Stack([new Paragraph($"1 {stock.Name}", Number with { Size = 12 }), new Paragraph(howTo, Words)], 2)
            : new Paragraph(number.ToString(CultureInfo.InvariantCulture), Number);
        if (words.Place(fonts, new Room(width - (2 * Margin), height - (2 * Margin))) is Placed placed)
        {
            foreach (var ink in placed.InksAt(Margin, Margin))
            {
                yield return ink;
            }
        }
    }
}
