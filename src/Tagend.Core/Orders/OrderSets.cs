using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>What the rows of a set say together: piece names that must differ, slips that must not.</summary>
internal sealed class OrderSets
{
    private readonly Dictionary<(string Order, string Piece), int> _pieceLines = [];

    public OrderSlips Slips { get; } = new();

    /// <summary>Adds a row of an order; its other cells may be at fault.</summary>
    public void Add(string order, OrderRow row, List<Problem> problems)
    {
        if (row[OrderColumn.Piece] is { } text
            && NameReader.TryReadName(text, out var piece, out _)
            && !_pieceLines.TryAdd((Slips.Once(order), Slips.Once(piece)), row.Line))
        {
            var message = OrderWording.PieceTwice(order, _pieceLines[(order, piece)]);
            problems.Add(row.Problem(OrderColumn.Piece, message));
        }

        Slips.Add(order, row, problems);
    }
}
