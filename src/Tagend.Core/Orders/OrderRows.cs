using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>A file that is being read, and how its records become rows.</summary>
internal sealed record OrderSource(string File, IOrderLayout Layout);

/// <summary>Which row of a file it is.</summary>
/// <param name="Line">Where its record starts.</param>
/// <param name="Cells">Of its record, as they are kept.</param>
/// <param name="Part">Of the rows of one record, from 0.</param>
internal readonly record struct RowPlace(OrderSource Source, int Line, int Cells, int Part);

/// <summary>
/// The rows, those that have no problem apart from the broken ones. Held of each is what it is called and which cells its record has; it is read
/// again from these when it is asked for, for as values the rows of a season take many times the file's size.
/// </summary>
internal sealed class OrderRows(LengthUnit bareUnit, KnownCells known, OrderSlips slips)
{
    private readonly PackedCells _cells = new();
    private readonly List<Row> _good = [];
    private readonly List<Row> _broken = [];

    private readonly record struct Row(string Order, string Piece, RowPlace Place)
    {
        public RowName Name => new(Order, Piece, Place.Source.File, Place.Line);
    }

    /// <summary>What the rows without a problem are called.</summary>
    public IReadOnlyList<RowName> Names => new MadeList<RowName>(_good.Count, i => _good[i].Name);

    /// <summary>Keeps the cells of a record, to read its rows again.</summary>
    public int Keep(IReadOnlyList<string> cells) => _cells.Add(cells);

    /// <summary>Makes room for as many times the rows that are kept.</summary>
    public void MakeRoom(double times)
    {
        _cells.MakeRoom(times);
        _good.EnsureCapacity((int)(_good.Count * times));
    }

    /// <summary>Ends the reading: nothing more is added.</summary>
    public void Close()
    {
        _cells.Close();
        _good.TrimExcess();
    }

    /// <summary>The rows, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadLines() => new MadeList<OrderLine>(_good.Count, i => LineOf(_good[i]));

    /// <summary>The broken ones, as far as they can be read, each read anew whenever it is asked for.</summary>
    public IReadOnlyList<OrderLine> ReadBroken() => new MadeList<OrderLine>(_broken.Count, i => LineOf(_broken[i]));

    public void Add(OrderLine line, RowPlace place) => _good.Add(RowOf(line, place));

    /// <summary>Adds one that is not used, to say what else is wrong with it.</summary>
    /// <returns>What it is called.</returns>
    public RowName AddBroken(OrderLine line, RowPlace place)
    {
        _broken.Add(RowOf(line, place));
        return _broken[^1].Name;
    }

    /// <summary>Takes the rows of one file out again.</summary>
    /// <returns>What those without a problem are called.</returns>
    public IReadOnlyList<RowName> Remove(OrderSource source)
    {
        _broken.RemoveAll(r => r.Place.Source == source);
        List<RowName> names = [.. _good.Where(r => r.Place.Source == source).Select(r => r.Name)];
        _good.RemoveAll(r => r.Place.Source == source);
        return names;
    }

    private Row RowOf(OrderLine line, RowPlace place) => new(slips.Once(line.Order), slips.Once(line.Piece), place);

    private OrderLine LineOf(Row row)
    {
        List<Problem> none = [];
        var (source, line, cells, part) = row.Place;
        var (read, notes) = source.Layout.Rows(line, _cells.At(cells), none)[part];
        return OrderCells.ReadLine(read, source.Layout.Unit ?? bareUnit, known, slips.Of(row.Order, notes), none).Named(row.Piece);
    }
}
