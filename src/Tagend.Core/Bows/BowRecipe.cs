using Tagend.Orders;

namespace Tagend.Bows;

/// <summary>A bow that the shop has made pieces for: what an order of it need not say again. From bows/NAME.toml.</summary>
/// <param name="Name">Of its file, without the ending.</param>
/// <param name="Bow">As its owners call it, and as orders name it.</param>
/// <param name="Also">Other names of it.</param>
/// <param name="Pieces">By name, in the file's order; each with its cells as an order would have them, by column.</param>
public sealed record BowRecipe(
    string Name, string Bow, IReadOnlyList<string> Also, IReadOnlyList<BowPiece> Pieces)
{
    /// <summary>What a bow holds for a piece: everything but what is the order's own.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        .. OrderColumn.All.Except(
        [
            OrderColumn.Order, OrderColumn.Piece, OrderColumn.Revision, OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.Notes,
            OrderColumn.Language, OrderColumn.Units,
        ]),
    ];
}

/// <summary>A piece of a bow.</summary>
/// <param name="Cells">As an order would have them, by column; none is empty.</param>
public sealed record BowPiece(string Name, IReadOnlyDictionary<string, string> Cells);
