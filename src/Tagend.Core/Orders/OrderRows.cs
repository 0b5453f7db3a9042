using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A file that is being read: its records, and how they become rows.</summary>
internal sealed record OrderSource(string File, OrderTable Table, IOrderLayout Layout);

/// <summary>
/// The rows that have no problem. Held of each is where it stands and what it is called; the rest is read again from
/// its file's bytes when it is asked for, for as values the rows of a season take many times the file's size.
/// </summary>
internal sealed class OrderRows(LengthUnit bareUnit, KnownCells known, OrderSlips slips)
{
    private readonly List<RowName> _names = [];
    private readonly List<RowPlace> _places = [];

    private readonly record struct RowPlace(OrderSource Source, RecordPlace Record, int Part);

    public IReadOnlyList<RowName> Names => _names;

    /// <summary>The rows, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadLines() => new MadeList<OrderLine>(_names.Count, LineAt);

    /// <param name="part">Of the rows of one record, from 0.</param>
    public void Add(OrderLine line, OrderSource source, RecordPlace place, int part)
    {
        _names.Add(new RowName(slips.Once(line.Order), slips.Once(line.Piece), source.File, place.Line));
        _places.Add(new RowPlace(source, place, part));
    }

    /// <summary>Takes the rows of one file out again.</summary>
    /// <returns>What they are called.</returns>
    public IReadOnlyList<RowName> Remove(OrderSource source)
    {
        var first = _places.FindIndex(p => p.Source == source);
        if (first < 0)
        {
            return [];
        }

        // They are the last ones: files are read one after the other.
        var names = _names[first..];
        _names.RemoveRange(first, names.Count);
        _places.RemoveRange(first, names.Count);
        return names;
    }

    private OrderLine LineAt(int index)
    {
        List<Problem> none = [];
        var (source, place, part) = _places[index];
        var (row, notes) = source.Layout.Rows(place.Line, source.Table.CellsAt(place), none)[part];
        return OrderCells.ReadLine(row, source.Layout.Unit ?? bareUnit, known, slips.Of(_names[index].Order, notes), none)! with { Piece = _names[index].Piece };
    }
}
