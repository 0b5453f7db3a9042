using Tagend.Measures;

namespace Tagend.Catalog;

/// <summary>Labels in plain dimensions: one a page from a roll, or rows and columns on a sheet. From stocks.toml.</summary>
public sealed record LabelStock
{
    /// <summary>As the command line names it.</summary>
    public required string Name { get; init; }

    /// <summary>As pages and messages name it.</summary>
    public required string Title { get; init; }

    /// <summary>Width of the sheet; of the label on a roll.</summary>
    public required Length PageWidth { get; init; }

    /// <summary>Height of the sheet; of the label on a roll.</summary>
    public required Length PageHeight { get; init; }

    /// <summary>Width of one label.</summary>
    public required Length LabelWidth { get; init; }

    /// <summary>Height of one label.</summary>
    public required Length LabelHeight { get; init; }

    /// <summary>Rows of labels on a sheet; 1 on a roll.</summary>
    public required int Rows { get; init; }

    /// <summary>Columns of labels on a sheet; 1 on a roll.</summary>
    public required int Columns { get; init; }

    /// <summary>From the left edge of the sheet to the first label.</summary>
    public required Length Left { get; init; }

    /// <summary>From the top edge of the sheet to the first label.</summary>
    public required Length Top { get; init; }

    /// <summary>From the left edge of a label to that of its neighbor.</summary>
    public required Length AcrossPitch { get; init; }

    /// <summary>From the top edge of a label to that of its neighbor.</summary>
    public required Length DownPitch { get; init; }

    /// <summary>Radius of a label's corners; zero for square ones.</summary>
    public required Length Corner { get; init; }

    /// <summary>Dots an inch of the label printer; null for sheets that a laser or ink printer takes.</summary>
    public required int? DotsPerInch { get; init; }

    /// <summary>Labels on a page; 1 from a roll.</summary>
    public int LabelsPerPage => Rows * Columns;
}
