using System.Collections.Frozen;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A color as ordered: <c>black:12</c>, or a name that shares the strands equally.</summary>
/// <param name="Name">One word in lower case.</param>
/// <param name="Strands">1 or more; null where the strands are shared equally.</param>
public sealed record OrderedColor(string Name, int? Strands);

/// <summary>What is printed for people and goes into no tag. A text is empty where nothing is said.</summary>
/// <param name="Customer">Who it is for.</param>
/// <param name="Bow">The customer's bow.</param>
/// <param name="Due">The day as it was written.</param>
/// <param name="Notes">Of this piece, on several lines perhaps.</param>
public sealed record OrderSlip(string Customer, string Bow, string Due, string Notes)
{
    /// <summary>A slip with nothing on it.</summary>
    public static OrderSlip Blank { get; } = new("", "", "", "");

    /// <summary>The language of the customer's sheet, as the files of words are named; empty for the shop's own.</summary>
    public string Language { get; init; } = "";

    /// <summary>The unit of the customer's sheet; null for that of all other papers.</summary>
    public LengthUnit? Units { get; init; }

    /// <summary>What is packed with this piece, one entry after the other.</summary>
    public ValueList<string> Accessories { get; init; } = [];
}

/// <summary>One row of an order file, each cell read; null where the cell is empty, its column absent, or it could not be read.</summary>
/// <remarks>Order numbers are in capitals and all other names in lower case, so that no two differ by case alone.</remarks>
public sealed record OrderLine
{
    /// <summary>The row as written, to name a cell in a message.</summary>
    public required OrderRow Row { get; init; }

    /// <summary>Columns of which nothing is known, for what they say or lack is told as a problem.</summary>
    public IReadOnlySet<string> Unread { get; init; } = FrozenSet<string>.Empty;

    /// <summary>The set's number, in capitals; empty where it could not be read.</summary>
    public required string Order { get; init; }

    /// <summary>The piece's name, in lower case; empty where it could not be read.</summary>
    public required string Piece { get; init; }

    /// <summary>The plan's name or one of its other names.</summary>
    public string? Kind { get; init; }

    /// <summary>The number of the issue, from 1; the first where there is none.</summary>
    public int? Revision { get; init; }

    /// <summary>Over measuring pins, outside to outside.</summary>
    public Length? FinishedLength { get; init; }

    /// <summary>The bow's nominal length, where a recurve or longbow is ordered by it.</summary>
    public Length? BowLength { get; init; }

    /// <summary>The column that gives the length: finished or bow length.</summary>
    public string LengthColumn => FinishedLength is null ? OrderColumn.BowLength : OrderColumn.FinishedLength;

    /// <summary>The strand material's name.</summary>
    public string? Material { get; init; }

    /// <summary>The total of strands: even, 2 to 998.</summary>
    public int? Strands { get; init; }

    /// <summary>The colors in the order they are laid; all of them with strands, or none.</summary>
    public ValueList<OrderedColor>? Colors { get; init; }

    /// <summary>Peak draw weight, above 0.</summary>
    public Force? DrawWeight { get; init; }

    /// <summary>The servings without the center serving.</summary>
    public ValueList<OrderedServing>? Servings { get; init; }

    /// <summary>The serving the arrow is nocked on.</summary>
    public OrderedServing? CenterServing { get; init; }

    /// <summary>The nock point's place.</summary>
    public Position? NockPoint { get; init; }

    /// <summary>The peep separator's place.</summary>
    public Position? Peep { get; init; }

    /// <summary>The speed nocks' places, one or more.</summary>
    public ValueList<Position>? SpeedNocks { get; init; }

    /// <summary>Width of the arrow nock's throat.</summary>
    public Length? NockGroove { get; init; }

    /// <summary>Turns an inch of finished length, 0 to 5.</summary>
    public double? TurnsPerInch { get; init; }

    /// <summary>What is printed for people.</summary>
    public required OrderSlip Slip { get; init; }

    /// <summary>The same row, as a piece that is called so in its set.</summary>
    internal OrderLine Named(string piece) => piece == Piece ? this : this with { Piece = piece }; // a copy is large, and a season has many
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
    /// <summary>The rows that are broken, as far as they could be read, each read again whenever it is asked for: for what else can be told of them.</summary>
    public IReadOnlyList<OrderLine> BrokenLines { get; init; } = [];

    /// <summary>Names of the files, in the order they were read.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Which of the files it is, from 0; after all of them one that is none of them.</summary>
    public int Position(string file) => Files.TakeWhile(f => f != file).Count();

    /// <summary>What whoever runs the program should know of how files were read: no mistakes.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];
}
