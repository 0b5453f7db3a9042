using CsvHelper;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>One pass over the records of an order file.</summary>
internal sealed class OrderReading(string file, LengthUnit bareUnit)
{
    private readonly List<OrderLine> lines = [];
    private readonly List<BrokenRow> brokenRows = [];
    private readonly HashSet<string> brokenOrders = [];
    private readonly OrderSets sets = new();
    private bool rowsMayBeLost;
    private string? orderAbove;

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
        if (rowsMayBeLost)
        {
            brokenOrders.UnionWith(lines.Select(l => l.Order));
            brokenRows.AddRange(lines.Select(l => new BrokenRow(l.Order, l.Piece, l.Row.Line)));
            lines.Clear();
        }

        return new OrderFile(
            [.. lines.Select(l => l with { Slip = sets.SlipOf(l.Order, l.Slip.Notes) })],
            [.. brokenRows.OrderBy(r => r.Line)],
            brokenOrders,
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
        var order = own ?? orderAbove;
        orderAbove = order;
        var before = Problems.Count;
        if (header.Fault(record) is { } fault)
        {
            Problems.Add(fault);
            if (record.SpansLines)
            {
                rowsMayBeLost = true;
                Problems.Add(new Problem(new Place(file, record.Line), null, OrderWording.RowsMayBeLost));
            }
        }
        else
        {
            var row = header.Row(record, Problems, out var notes);
            var line = OrderCells.ReadLine(row, bareUnit, notes, Problems);
            if (own is not null)
            {
                sets.Add(own, row, Problems);
            }

            if (line is not null && Problems.Count == before)
            {
                lines.Add(line);
            }
            else if (line is not null)
            {
                brokenRows.Add(new BrokenRow(line.Order, line.Piece, line.Row.Line));
            }
        }

        if (Problems.Count > before && order is not null)
        {
            brokenOrders.Add(order);
        }
    }
}
