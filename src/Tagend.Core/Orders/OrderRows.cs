using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A file that is being read: its records, and how they become rows.</summary>
internal sealed record OrderSource(string File, OrderTable Table, IOrderLayout Layout);

/// <summary>
/// The rows, those that have no problem apart from the broken ones. Held of each is where it stands and what it is called; the rest is read again from
/// its file's bytes when it is asked for, for as values the rows of a season take many times the file's size.
/// </summary>
internal sealed class OrderRows(LengthUnit bareUnit, KnownCells known, OrderSlips slips)
{
    private readonly List<RowName> _names = [];
    private readonly List<RowPlace> _places = [];
    private readonly List<(RowName Name, RowPlace Place)> _broken = [];

    private readonly record struct RowPlace(OrderSource Source, RecordPlace Record, int Part);

    public IReadOnlyList<RowName> Names => _names;

    /// <summary>The rows, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadLines() => new MadeList<OrderLine>(_names.Count, i => LineOf(_names[i], _places[i]));

    /// <summary>The broken ones, as far as they can be read, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadBroken() => new MadeList<OrderLine>(_broken.Count, i => LineOf(_broken[i].Name, _broken[i].Place));

    /// <param name="part">Of the rows of one record, from 0.</param>
    public void Add(OrderLine line, OrderSource source, RecordPlace place, int part)
    {
        _names.Add(NameOf(line, source, place));
        _places.Add(new RowPlace(source, place, part));
    }

    /// <summary>Adds one that is not used, to say what else is wrong with it.</summary>
    /// <returns>What it is called.</returns>
    public RowName AddBroken(OrderLine line, OrderSource source, RecordPlace place, int part)
    {
        var name = NameOf(line, source, place);
        _broken.Add((name, new RowPlace(source, place, part)));
        return name;
    }

    /// <summary>Takes the rows of one file out again.</summary>
    /// <returns>What those without a problem are called.</returns>
    public IReadOnlyList<RowName> Remove(OrderSource source)
    {
        _broken.RemoveAll(b => b.Place.Source == source);
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

    private RowName NameOf(OrderLine line, OrderSource source, RecordPlace place) =>
        new(slips.Once(line.Order), slips.Once(line.Piece), source.File, place.Line);

    private OrderLine LineOf(RowName name, RowPlace at)
    {
        List<Problem> none = [];
        var (source, place, part) = at;
        var (row, notes) = source.Layout.Rows(place.Line, source.Table.CellsAt(place), none)[part];
        return OrderCells.ReadLine(row, source.Layout.Unit ?? bareUnit, known, slips.Of(name.Order, notes), none) with { Piece = name.Piece };
    }
}
