using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>What the rows of a set say together: piece names that must differ, slips that must not.</summary>
internal sealed class OrderSets
{
    private static readonly string[] SlipColumns = [OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due];

    private readonly Dictionary<(string Order, string Piece), int> _pieceLines = [];
    private readonly Dictionary<(string Order, string Column), OrderRow> _slips = [];

    /// <summary>Adds a row of an order; its other cells may be at fault.</summary>
    public void Add(string order, OrderRow row, List<Problem> problems)
    {
        if (row[OrderColumn.Piece] is { } text
            && NameReader.TryReadName(text, out var piece, out _)
            && !_pieceLines.TryAdd((order, piece), row.Line))
        {
            var message = OrderWording.PieceTwice(order, _pieceLines[(order, piece)]);
            problems.Add(row.Problem(OrderColumn.Piece, message));
        }

        foreach (var column in SlipColumns.Where(c => row[c] is not null))
        {
            if (!_slips.TryAdd((order, column), row)
                && _slips[(order, column)] is var first
                && !OneLine(row[column]).Equals(OneLine(first[column]), StringComparison.OrdinalIgnoreCase))
            {
                var message = OrderWording.Disagrees(order, first.Line, OneLine(first[column]));
                problems.Add(row.Problem(column, message));
            }
        }
    }

    /// <summary>A piece's slip: its own notes, and what any row of the set says of customer, bow and due date.</summary>
    public OrderSlip SlipOf(string order, string notes)
    {
        string Of(string column) => OneLine(_slips.GetValueOrDefault((order, column))?[column]);

        return new OrderSlip(Of(OrderColumn.Customer), Of(OrderColumn.Bow), Of(OrderColumn.Due), notes);
    }

    /// <summary>The same string where it is one line already: a season's orders hold each text once.</summary>
    private static string OneLine(string? text)
    {
        var line = string.Join(' ', (text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line == text ? text : line;
    }
}
