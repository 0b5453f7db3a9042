using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>
/// The rows of a file that have no problem. Held of each is where it stands and what it is called; the rest is read again from
/// the file's bytes when it is asked for, for as values the rows of a season take many times the file's size.
/// </summary>
internal sealed class OrderRows(OrderTable table, OrderHeader header, LengthUnit bareUnit, OrderSlips slips)
{
    private readonly List<RowName> _names = [];
    private readonly List<RecordPlace> _places = [];

    public IReadOnlyList<RowName> Names => _names;

    /// <summary>The rows, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadLines() => new MadeList<OrderLine>(_names.Count, LineAt);

    public void Add(OrderLine line, RecordPlace place)
    {
        _names.Add(new RowName(slips.Once(line.Order), slips.Once(line.Piece), place.Line));
        _places.Add(place);
    }

    private OrderLine LineAt(int index)
    {
        List<Problem> none = [];
        var place = _places[index];
        var row = header.Row(place.Line, table.CellsAt(place), none, out var notes);
        return OrderCells.ReadLine(row, bareUnit, slips.Of(_names[index].Order, notes), none)!;
    }
}
