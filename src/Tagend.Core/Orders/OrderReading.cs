using CsvHelper;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>One pass over the records of all files of orders.</summary>
internal sealed class OrderReading
{
    /// <summary>Records after which a file's number of rows can be told.</summary>
    private const int Sampled = 1024;

    /// <summary>Room for a million rows; a file that promises more may only look so.</summary>
    private const double MostTimes = 1024;

    private readonly LengthUnit _bareUnit;
    private readonly KnownCells _known;
    private readonly List<RowName> _brokenRows = [];
    private readonly HashSet<string> _brokenOrders = [];
    private readonly List<string> _remarks = [];
    private readonly OrderSets _sets = new();
    private readonly OrderRows _rows;
    private string? _orderAbove;
    private bool _isFirst = true;

    public OrderReading(LengthUnit bareUnit, ColorNames names)
    {
        (_bareUnit, _known) = (bareUnit, new KnownCells(names));
        _rows = new OrderRows(bareUnit, _known, _sets.Slips);
    }

    public List<Problem> Problems { get; } = [];

    public void ReadAll(string file, OrderTable table, OrderFormat format)
    {
        OrderSource? source = null;
        var (headerLine, count, before) = (0, 0, Problems.Count);
        var rowsMayBeLost = false;
        _orderAbove = null;
        foreach (var record in SideBySide.Ahead(table.Records().Where(r => !r.IsEmpty)))
        {
            if (source is not null)
            {
                if (++count == Sampled && _isFirst)
                {
                    MakeRoom(Math.Min(MostTimes, (double)table.Length / record.Place.Offset));
                }

                rowsMayBeLost |= ReadRecord(source, record);
            }
            else if (LayoutOf(file, record, format) is { } layout)
            {
                headerLine = record.Line;
                source = new OrderSource(file, layout);
            }
            else
            {
                return;
            }
        }

        _isFirst = false;
        if (source is null)
        {
            Problems.Add(new Problem(new Place(file), null, OrderWording.EmptyFile));
            return;
        }

        if (count == 0)
        {
            Problems.Add(new Problem(new Place(file, headerLine), null, OrderWording.HeaderOnly));
        }

        if (rowsMayBeLost)
        {
            var unusable = _rows.Remove(source);
            _brokenRows.AddRange(unusable);
            _brokenOrders.UnionWith(unusable.Select(r => r.Order));
        }

        _remarks.AddRange(source.Layout.Remark(file) is { } remark ? [remark] : []);
        var ofFile = Problems[before..].OrderBy(p => p.At.Line).ToList();
        Problems.RemoveRange(before, ofFile.Count);
        Problems.AddRange(ofFile);
    }

    public OrderFile Result(IEnumerable<string> files)
    {
        _rows.Close();
        _sets.Slips.Close();
        return new OrderFile(_rows.Names, _rows.ReadLines(), _brokenRows, _brokenOrders, Problems)
        {
            BrokenLines = _rows.ReadBroken(),
            Files = [.. files],
            Remarks = _remarks,
        };
    }

    private IOrderLayout? LayoutOf(string file, OrderRecord record, OrderFormat format)
    {
        if (OrderHeader.TooLarge(file, record) is { } tooLarge)
        {
            Problems.Add(tooLarge);
            return null;
        }

        if (record.Quoting != CsvMalformedReason.UnterminatedQuote)
        {
            return format.LayoutOf(file, record, Problems);
        }

        Problems.Add(new Problem(new Place(file, record.QuoteLine), null, OrderWording.OpenQuote));
        return null;
    }

    /// <returns>Whether rows may be lost in the record.</returns>
    private bool ReadRecord(OrderSource source, OrderRecord record)
    {
        // A row that names no order is most likely of the set above it, which would be printed without it.
        var own = source.Layout.OrderOf(record);
        var order = own ?? _orderAbove;
        _orderAbove = order;
        var (before, rowsMayBeLost) = (Problems.Count, false);
        if (source.Layout.Fault(record) is { } fault)
        {
            Problems.Add(fault);
            rowsMayBeLost = record.SpansLines;
            Problems.AddRange(rowsMayBeLost ? [new Problem(new Place(source.File, record.Line), null, OrderWording.RowsMayBeLost)] : []);
        }
        else
        {
            var rows = source.Layout.Rows(record.Line, record.Cells, Problems);
            var isBroken = HasRefusal(before);
            var cells = _rows.Keep(record.Cells);
            for (var i = 0; i < rows.Count; i++)
            {
                ReadRow(new RowPlace(source, record.Line, cells, i), rows[i].Row, own, isBroken);
            }
        }

        if (order is not null && HasRefusal(before))
        {
            _brokenOrders.Add(order);
        }

        return rowsMayBeLost;
    }

    private void ReadRow(RowPlace place, OrderRow row, string? order, bool isBroken)
    {
        var (before, layout) = (Problems.Count, place.Source.Layout);
        var line = OrderCells.ReadLine(row, layout.Unit ?? _bareUnit, _known, OrderSlip.Blank, Problems);
        if (order is not null)
        {
            var piece = _sets.Add(order, row, layout.NumbersRepeats, Problems);
            line = piece is null ? line : line.Named(piece);
        }

        if (!isBroken && !HasRefusal(before))
        {
            _rows.Add(line, place);
            return;
        }

        var name = _rows.AddBroken(line, place);
        if (name is { Order.Length: > 0, Piece.Length: > 0 })
        {
            _brokenRows.Add(name);
        }
    }

    /// <summary>Makes room for as many times what is kept so far of the first file: lists that grow by themselves leave all their smaller ones in memory for a while.</summary>
    private void MakeRoom(double times)
    {
        _rows.MakeRoom(times);
        _sets.MakeRoom(times);
    }

    private bool HasRefusal(int from) => Problems.FindIndex(from, p => p.Severity == Severity.Refusal) >= 0;
}
