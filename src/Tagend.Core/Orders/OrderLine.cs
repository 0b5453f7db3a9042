using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A color as ordered: <c>black:12</c>, or a name that shares the strands equally.</summary>
public sealed record OrderedColor(string Name, int? Strands);

/// <summary>What is printed for people and goes into no tag.</summary>
public sealed record OrderSlip(string Customer, string Bow, string Due, string Notes)
{
    public static OrderSlip Blank { get; } = new("", "", "", "");

    /// <summary>Of the customer's sheet, as the files of words are named; empty for the shop's own.</summary>
    public string Language { get; init; } = "";

    /// <summary>Of the customer's sheet; null for those of all other papers.</summary>
    public LengthUnit? Units { get; init; }

    /// <summary>What is packed with this piece, one entry after the other.</summary>
    public ValueList<string> Accessories { get; init; } = [];
}

/// <summary>One row of an order file, each cell read; null where the cell is empty or its column absent.</summary>
/// <remarks>Order numbers are in capitals and all other names in lower case, so that no two differ by case alone.</remarks>
public sealed record OrderLine
{
    /// <summary>The row as written, to name a cell in a message.</summary>
    public required OrderRow Row { get; init; }

    public required string Order { get; init; }

    public required string Piece { get; init; }

    public string? Kind { get; init; }

    /// <summary>Of issue, from 1; the first where there is none.</summary>
    public int? Revision { get; init; }

    /// <summary>Over measuring pins, outside to outside.</summary>
    public Length? FinishedLength { get; init; }

    /// <summary>The bow's nominal length, where a recurve or longbow is ordered by it.</summary>
    public Length? BowLength { get; init; }

    /// <summary>The column that gives the length: finished or bow length.</summary>
    public string LengthColumn => FinishedLength is null ? OrderColumn.BowLength : OrderColumn.FinishedLength;

    public string? Material { get; init; }

    public int? Strands { get; init; }

    public ValueList<OrderedColor>? Colors { get; init; }

    public Force? DrawWeight { get; init; }

    public ValueList<OrderedServing>? Servings { get; init; }

    public OrderedServing? CenterServing { get; init; }

    public Position? NockPoint { get; init; }

    public Position? Peep { get; init; }

    public ValueList<Position>? SpeedNocks { get; init; }

    /// <summary>Width of the arrow nock's throat.</summary>
    public Length? NockGroove { get; init; }

    public double? TurnsPerInch { get; init; }

    public required OrderSlip Slip { get; init; }
}

/// <summary>What a row is called in messages: what is held of every row, however many there are.</summary>
/// <param name="File">Where it stands; one record of a file may hold several rows.</param>
public readonly record struct RowName(string Order, string Piece, string File, int Line);

/// <summary>What files of orders hold: the rows that could be read, and all problems of the others.</summary>
/// <param name="Rows">Those without a problem, in the order of files and rows.</param>
/// <param name="Lines">The same, each read again from its file's bytes whenever it is asked for.</param>
/// <param name="BrokenRows">The others, as far as they name their order and piece; they could not be read or may not be used.</param>
/// <param name="BrokenOrders">Orders with a row that could not be read: their sets are not printed.</param>
public sealed record OrderFile(
    IReadOnlyList<RowName> Rows,
    IReadOnlyList<OrderLine> Lines,
    IReadOnlyList<RowName> BrokenRows,
    IReadOnlySet<string> BrokenOrders,
    IReadOnlyList<Problem> Problems)
{
    /// <summary>Names of the files, in the order they were read.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Which of the files it is, from 0; after all of them one that is none of them.</summary>
    public int Position(string file) => Files.TakeWhile(f => f != file).Count();

    /// <summary>What whoever runs the program should know of how files were read: no mistakes.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}
