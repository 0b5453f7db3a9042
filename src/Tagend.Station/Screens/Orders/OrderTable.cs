using Tagend.Catalog;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Station.Desk;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;

namespace Tagend.Station.Screens.Orders;

/// <summary>An order file and what the program says of it, put together cell by cell.</summary>
internal sealed class OrderTable
{
    /// <summary>The same in all rows of a set, as a rule: what tells its pieces apart stands before them.</summary>
    private static readonly string?[] OfTheSet = [OrderColumn.Order, OrderColumn.Customer, OrderColumn.Bow, OrderColumn.Due, OrderColumn.DrawWeight];

    private readonly ShopCatalog _catalog;
    private readonly OrderSheet? _sheet;
    private readonly IReadOnlyList<string?> _columns;
    private readonly ILookup<int, Problem> _byLine;

    private OrderTable(DeskFile file, ShopDesk shop)
    {
        (File, _catalog) = (file, shop.Catalog);
        var book = shop.RunBook();
        Checked = shop.Check(file, book);
        Fault = book.Fault;
        _sheet = OrderSheet.Read(file.Name, file.Bytes, []);
        _columns = _sheet?.Columns(_catalog.Shop.Columns) ?? [];
        _byLine = Checked.Report.Problems.ToLookup(p => p.At.Line);
        Listed = shop.Listed(Checked.File);
        Today = shop.Today;
    }

    public DeskFile File { get; }

    public CheckedOrders Checked { get; }

    public BookFault? Fault { get; }

    public IReadOnlyDictionary<string, ListedOrder> Listed { get; }

    private DateOnly Today { get; }

    /// <summary>A file of the desk, checked.</summary>
    public static OrderTable Of(DeskFile file, ShopDesk shop) => new(file, shop);

    /// <summary>The whole file: sets with problems first, then by the day they are due, then as they stand in it.</summary>
    public FileView View(OrderFilter filter)
    {
        var rows = _sheet?.Rows ?? [];
        var lines = rows.Select(r => r.Line).ToHashSet();
        var orders = Checked.Report.Pieces.GroupBy(p => p.Line).ToDictionary(g => g.Key, g => g.First().Order);
        var ready = Checked.Report.Ready.Select(s => s.Order).ToHashSet();
        var sets = rows.Index()
            .GroupBy(r => orders.GetValueOrDefault(r.Item.Line) ?? OrderWritten(r.Item))
            .Select(g => SetOf(g.Key, [.. g], ready.Contains(g.Key)))
            .OrderBy(s => s.Refusals > 0 ? 0 : 1)
            .ThenBy(s => s.State is OrderState.Built or OrderState.Shipped or OrderState.Cancelled ? DateOnly.MaxValue : s.Listed?.Due ?? DateOnly.MaxValue);
        return new FileView(
            File.Name,
            File.HasDraft,
            File.Other is not null,
            filter,
            Today,
            _sheet?.Titles ?? [],
            [.. Checked.Report.Problems.Where(p => !lines.Contains(p.At.Line))],
            [.. sets],
            Fault,
            Checked.File.Remarks,
            rows.Count > 0 && Checked.File.Rows.Count == 0);
    }

    /// <summary>A set that can be built, made of its rows; null where it cannot.</summary>
    public BuildSet? Make(string order) => Checked.Report.Ready.FirstOrDefault(s => s.Order == order)?.Make();

    private string OrderWritten(SheetRow row) =>
        NameReader.TryReadOrder(row[_columns.TakeWhile(c => c != OrderColumn.Order).Count()], out var order, out _) ? order : "";

    private SetView SetOf(string order, IReadOnlyList<(int Index, SheetRow Row)> rows, bool isReady)
    {
        // A column that is empty in all rows of a set says nothing, but where something is missing in it.
        var placed = rows.Select(r => (r.Index, r.Row, Problems: _byLine[r.Row.Line].ToLookup(ColumnOf))).ToList();
        List<int> shown =
        [
            .. Enumerable.Range(0, _columns.Count)
                .Where(c => placed.Exists(r => r.Row[c].Length > 0 || r.Problems[c].Any()))
                .OrderBy(c => OfTheSet.Contains(_columns[c])),
        ];
        List<string> lacking = [.. placed.SelectMany(r => r.Problems.SelectMany(p => p)).Where(IsOfLackingColumn).Select(p => p.At.Column!).Distinct()];
        return new SetView(
            File.Name,
            order,
            Listed.GetValueOrDefault(order),
            [
                .. placed.Select(r => new RowView(
                    r.Index,
                    r.Row.Line,
                    [
                        .. shown.Select(c => new CellView(c, _sheet!.Titles[c], r.Row[c], [.. r.Problems[c]])),
                        .. lacking.Select(l => new CellView(_columns.Count, l, "", [.. r.Problems[-1].Where(p => IsOfLackingColumn(p) && p.At.Column == l)])),
                    ],
                    [.. r.Problems[-1].Where(p => !IsOfLackingColumn(p))])),
            ],
            isReady,
            ReusedOf(order));
    }

    private ReusedNumber? ReusedOf(string order)
    {
        var customer = Checked.File.Lines.Concat(Checked.File.BrokenLines).FirstOrDefault(l => l.Order == order && l.Slip.Customer.Length > 0)?.Slip.Customer ?? "";
        var isMeant = File.IsReused(order, customer);
        return Checked.Strangers.Contains(order) || (isMeant && Listed.GetValueOrDefault(order)?.State == OrderState.New)
            ? new ReusedNumber(customer, isMeant)
            : null;
    }

    /// <summary>Where a problem stands: by our name of the column, or by the header as the shop's own file has it; −1 for the row.</summary>
    private int ColumnOf(Problem problem)
    {
        if (problem.At.Column is not { } column)
        {
            return -1;
        }

        for (var i = 0; i < _columns.Count; i++)
        {
            var title = _sheet!.Titles[i];
            if (_columns[i] == column || string.Equals(title, column, StringComparison.OrdinalIgnoreCase)
                || column.StartsWith($"{title}, ", StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>A cell is missing for which the file has no column.</summary>
    private bool IsOfLackingColumn(Problem problem) =>
        problem.At.Column is { } column && ColumnOf(problem) < 0 && _columns.Contains(OrderColumn.Order) && OrderColumn.All.Contains(column);
}
