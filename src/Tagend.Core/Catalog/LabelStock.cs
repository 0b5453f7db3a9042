using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>Labels in plain dimensions: one a page from a roll, or rows and columns on a sheet. From stocks.toml.</summary>
/// <param name="Name">As the command line names it.</param>
/// <param name="PageWidth">Of the sheet; of the label on a roll.</param>
/// <param name="LabelWidth">Of one label.</param>
/// <param name="Left">Left edge of the sheet to the first label.</param>
/// <param name="Top">Top edge of the sheet to the first label.</param>
/// <param name="AcrossPitch">Left edge to left edge of neighbors.</param>
/// <param name="DownPitch">Top edge to top edge of neighbors.</param>
/// <param name="Corner">Radius of a label's corners; zero for square ones.</param>
/// <param name="DotsPerInch">Of the label printer; null for sheets that a laser or ink printer takes.</param>
public sealed record LabelStock(
    string Name,
    string Title,
    Length PageWidth,
    Length PageHeight,
    Length LabelWidth,
    Length LabelHeight,
    int Rows,
    int Columns,
    Length Left,
    Length Top,
    Length AcrossPitch,
    Length DownPitch,
    Length Corner,
    int? DotsPerInch)
{
    public int LabelsPerPage => Rows * Columns;
}
