using CsvHelper;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>One pass over the records of an order file.</summary>
internal sealed class OrderReading(string file, LengthUnit bareUnit)
{
    private readonly List<OrderLine> _lines = [];
    private readonly List<BrokenRow> _brokenRows = [];
    private readonly HashSet<string> _brokenOrders = [];
    private readonly OrderSets _sets = new();
    private bool _rowsMayBeLost;
    private string? _orderAbove;

    public List<Problem> Problems { get; } = [];

    public void ReadAll(IEnumerable<OrderRecord> records, IReadOnlyDictionary<string, string> columnAliases)
    {
        OrderHeader? header = null;
        var headerLine = 0;
        var rows = 0;
        foreach (var record in records.Where(r => !r.IsEmpty && !r.NamesSeparator))
        {
            if (header is not null)
            {
                rows++;
                ReadRow(header, record);
            }
            else if (TryReadHeader(record, columnAliases, out header))
            {
                headerLine = record.Line;
            }
            else
            {
                return;
            }
        }

        if (header is null)
        {
            Problems.Add(new Problem(new Place(file), null, OrderWording.EmptyFile));
        }
        else if (rows == 0)
        {
            Problems.Add(new Problem(new Place(file, headerLine), null, OrderWording.HeaderOnly));
        }
    }

    public OrderFile Result()
    {
        if (_rowsMayBeLost)
        {
            _brokenOrders.UnionWith(_lines.Select(l => l.Order));
            _brokenRows.AddRange(_lines.Select(l => new BrokenRow(l.Order, l.Piece, l.Row.Line)));
            _lines.Clear();
        }

        return new OrderFile(
            [.. _lines.Select(l => l with { Slip = _sets.SlipOf(l.Order, l.Slip.Notes) })],
            [.. _brokenRows.OrderBy(r => r.Line)],
            _brokenOrders,
            [.. Problems.OrderBy(p => p.At.Line)]);
    }

    private bool TryReadHeader(
        OrderRecord record, IReadOnlyDictionary<string, string> columnAliases, out OrderHeader? header)
    {
        header = null;
        if (record.Quoting == CsvMalformedReason.UnterminatedQuote)
        {
            Problems.Add(new Problem(new Place(file, record.QuoteLine), null, OrderWording.OpenQuote));
            return false;
        }

        return OrderHeader.TryRead(file, record, columnAliases, Problems, out header);
    }

    private void ReadRow(OrderHeader header, OrderRecord record)
    {
        // A row that names no order is most likely of the set above it, which would be printed without it.
        var own = header.OrderOf(record);
        var order = own ?? _orderAbove;
        _orderAbove = order;
        var before = Problems.Count;
        if (header.Fault(record) is { } fault)
        {
            Problems.Add(fault);
            if (record.SpansLines)
            {
                _rowsMayBeLost = true;
                Problems.Add(new Problem(new Place(file, record.Line), null, OrderWording.RowsMayBeLost));
            }
        }
        else
        {
            var row = header.Row(record, Problems, out var notes);
            var line = OrderCells.ReadLine(row, bareUnit, notes, Problems);
            if (own is not null)
            {
                _sets.Add(own, row, Problems);
            }

            if (line is not null && Problems.Count == before)
            {
                _lines.Add(line);
            }
            else if (line is not null)
            {
                _brokenRows.Add(new BrokenRow(line.Order, line.Piece, line.Row.Line));
            }
        }

        if (Problems.Count > before && order is not null)
        {
            _brokenOrders.Add(order);
        }
    }
}
