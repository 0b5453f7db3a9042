using System.Diagnostics.CodeAnalysis;
using CsvHelper;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>One pass over the records of an order file.</summary>
internal sealed class OrderReading(string file, LengthUnit bareUnit)
{
    private readonly List<BrokenRow> _brokenRows = [];
    private readonly HashSet<string> _brokenOrders = [];
    private readonly OrderSets _sets = new();
    private bool _rowsMayBeLost;
    private string? _orderAbove;
    private OrderRows? _rows;

    public List<Problem> Problems { get; } = [];

    public void ReadAll(OrderTable table, IReadOnlyDictionary<string, string> columnAliases)
    {
        OrderHeader? header = null;
        var headerLine = 0;
        var count = 0;
        foreach (var record in table.Records().Where(r => !r.IsEmpty && !r.NamesSeparator))
        {
            if (header is not null)
            {
                count++;
                ReadRow(header, _rows!, record);
            }
            else if (TryReadHeader(record, columnAliases, out header))
            {
                headerLine = record.Line;
                _rows = new OrderRows(table, header, bareUnit, _sets.Slips);
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
        else if (count == 0)
        {
            Problems.Add(new Problem(new Place(file, headerLine), null, OrderWording.HeaderOnly));
        }
    }

    public OrderFile Result()
    {
        if (_rowsMayBeLost)
        {
            _brokenOrders.UnionWith(_rows!.Names.Select(n => n.Order));
            _brokenRows.AddRange(_rows.Names.Select(n => new BrokenRow(n.Order, n.Piece, n.Line)));
            _rows = null;
        }

        return new OrderFile(
            _rows?.Names ?? [],
            _rows?.ReadLines() ?? [],
            [.. _brokenRows.OrderBy(r => r.Line)],
            _brokenOrders,
            [.. Problems.OrderBy(p => p.At.Line)]);
    }

    private bool TryReadHeader(
        OrderRecord record, IReadOnlyDictionary<string, string> columnAliases, [NotNullWhen(true)] out OrderHeader? header)
    {
        header = null;
        if (record.Quoting == CsvMalformedReason.UnterminatedQuote)
        {
            Problems.Add(new Problem(new Place(file, record.QuoteLine), null, OrderWording.OpenQuote));
            return false;
        }

        return OrderHeader.TryRead(file, record, columnAliases, Problems, out header);
    }

    private void ReadRow(OrderHeader header, OrderRows rows, OrderRecord record)
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
            var row = header.Row(record.Line, record.Cells, Problems, out _);
            var line = OrderCells.ReadLine(row, bareUnit, OrderSlip.Blank, Problems);
            if (own is not null)
            {
                _sets.Add(own, row, Problems);
            }

            if (line is not null && Problems.Count == before)
            {
                rows.Add(line, record.Place);
            }
            else if (line is not null)
            {
                _brokenRows.Add(new BrokenRow(_sets.Slips.Once(line.Order), _sets.Slips.Once(line.Piece), line.Row.Line));
            }
        }

        if (Problems.Count > before && order is not null)
        {
            _brokenOrders.Add(order);
        }
    }
}
