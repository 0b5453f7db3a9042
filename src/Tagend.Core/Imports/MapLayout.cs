using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>The records of one file, read by a map.</summary>
internal sealed class MapLayout : IOrderLayout
{
    private readonly string _file;
    private readonly SourceMap _map;
    private readonly IReadOnlyList<string> _titles;
    private readonly int[] _carried;
    private readonly MappedCell? _order;

    // By order, the cells that its rows below may leave empty.
    private readonly Dictionary<string, string[]> _above = [];
    private readonly Dictionary<string, int> _leftOut = [];
    private readonly Dictionary<string, int> _at;
    private readonly List<string> _pieces;
    private int _kept;

    // Rows are read again on any thread; only the first time they are counted.
    private int _lastLine;

    private MapLayout(string file, SourceMap map, IReadOnlyList<string> titles)
    {
        (_file, _map, _titles, _pieces, NumbersRepeats) = (file, map, titles, map.Pieces(), map.HasPieceCell());
        _at = map.Named().ToDictionary(h => h, h => Headers.IndexOf(titles, h));
        _carried = [.. map.Carried.Select(h => Headers.IndexOf(titles, h))];
        _order = map.Cells.FirstOrDefault(c => c.Targets.Contains(new MapTarget(null, OrderColumn.Order)));
    }

    public bool NumbersRepeats { get; }

    public LengthUnit? Unit => _map.Unit;

    /// <summary>The layout of a file that has all headers of the map; null, with problems added, where it cannot be read by it.</summary>
    public static MapLayout? TryRead(string file, OrderRecord header, SourceMap map, List<Problem> problems)
    {
        var before = problems.Count;
        var titles = header.Cells.Reverse().SkipWhile(t => t.Length == 0).Reverse().ToList();
        var plain = titles.Select(Headers.Plain).ToList();
        foreach (var needed in map.Needed().Where(n => plain.Count(t => t == Headers.Plain(n)) > 1))
        {
            problems.Add(new Problem(new Place(file, header.Line, needed), null, OrderWording.ColumnTwice));
        }

        if (problems.Count > before)
        {
            return null;
        }

        var known = map.Needed().Concat(map.Never).Select(Headers.Plain).ToHashSet();
        foreach (var title in titles.Where(t => t.Length > 0 && !known.Contains(Headers.Plain(t))))
        {
            problems.Add(new Problem(
                new Place(file, header.Line, title), null, ImportWording.NotInMap(map.Name), Severity.Warning));
        }

        return new MapLayout(file, map, titles);
    }

    public Problem? Fault(OrderRecord record) => record.Fault(_file, _titles.Count);

    public string? OrderOf(OrderRecord record) =>
        _order is not null && NameReader.TryReadOrder(_order.Template.Fill(h => CellOf(record.Cells, h)), out var order, out _)
            ? order
            : null;

    public IReadOnlyList<LaidRow> Rows(int line, IReadOnlyList<string> written, List<Problem> problems)
    {
        var cells = Carry(written);
        var rule = _map.LeaveOut.FirstOrDefault(r => r.Has(CellOf(cells, r.Header)));
        if (line > _lastLine)
        {
            _lastLine = line;
            Count(rule?.Why);
        }

        return rule is null ? new MappedRecord(_map, _pieces, _file, line, header => CellOf(cells, header), problems).Rows() : [];
    }

    public string? Remark(string file) => ImportWording.ReadBy(file, _map.Name, _kept, [.. _leftOut.Select(l => (l.Key, l.Value))]);

    private void Count(string? leftOutWhy)
    {
        if (leftOutWhy is null)
        {
            _kept++;
        }
        else
        {
            _leftOut[leftOutWhy] = _leftOut.GetValueOrDefault(leftOutWhy) + 1;
        }
    }

    /// <summary>A cell by its header; empty where it holds a text that means nothing.</summary>
    private string CellOf(IReadOnlyList<string> cells, string header)
    {
        var at = _at[header];
        return at >= 0 && at < cells.Count && !_map.Blank.Contains(cells[at], StringComparer.OrdinalIgnoreCase) ? cells[at] : "";
    }

    /// <summary>The cells with those of the order's first row where they are empty and the map says that this means the same.</summary>
    private IReadOnlyList<string> Carry(IReadOnlyList<string> written)
    {
        if (_carried.Length == 0 || _order?.Template.Fill(h => CellOf(written, h)) is not { Length: > 0 } order)
        {
            return written;
        }

        if (!_above.TryGetValue(order, out var above))
        {
            _above[order] = above = [.. _carried.Select(i => written[i])];
        }

        var cells = written.ToArray();
        for (var i = 0; i < _carried.Length; i++)
        {
            ref var cell = ref cells[_carried[i]];
            cell = cell.Length == 0 ? above[i] : cell;
        }

        return cells;
    }
}
