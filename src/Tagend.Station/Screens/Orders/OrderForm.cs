using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;

namespace Tagend.Station.Screens.Orders;

/// <summary>A field of the form: a column of an order file.</summary>
/// <param name="Example">What may be written in it.</param>
/// <param name="Choices">What there is to choose from; none for free text.</param>
/// <param name="IsOfSet">The next piece of the order has the same.</param>
public sealed record FormField(string Column, string Label, string Example, IReadOnlyList<string> Choices, bool IsOfSet, string Value);

/// <summary>The form for an order, one piece at a time.</summary>
/// <param name="File">The file the piece is added to; empty for a new one.</param>
/// <param name="Set">The order as it stands; null before its first piece.</param>
public sealed record OrderFormModel(string File, IReadOnlyList<FormField> Fields, SetView? Set);

/// <summary>Writes an order in a form.</summary>
internal static class OrderForm
{
    private const string NewFile = "orders";

    private static readonly (string Column, string Label, bool IsOfSet)[] Columns =
    [
        (OrderColumn.Order, "Order number", true),
        (OrderColumn.Customer, "Customer", true),
        (OrderColumn.Bow, "Bow", true),
        (OrderColumn.Due, "Due", true),
        (OrderColumn.DrawWeight, "Draw weight", true),
        (OrderColumn.Kind, "What is built", false),
        (OrderColumn.Piece, "Name of the piece", false),
        (OrderColumn.FinishedLength, "Finished length", false),
        (OrderColumn.Material, "Material", true),
        (OrderColumn.Strands, "Strands", true),
        (OrderColumn.Colors, "Colors", true),
        (OrderColumn.Servings, "Servings", false),
        (OrderColumn.CenterServing, "Center serving", false),
        (OrderColumn.NockPoint, "Nock point", false),
        (OrderColumn.Peep, "Peep", false),
        (OrderColumn.Notes, "Notes", false),
    ];

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/orders/new", (string? file, string? order, OrderDesk desk, ShopDesk shop) => Show(file ?? "", order, desk, shop));
        routes.MapPost("/orders/new", (HttpContext context, OrderDesk desk) => Add(context, desk));
    }

    private static IResult Show(string file, string? order, OrderDesk desk, ShopDesk shop)
    {
        var catalog = shop.Catalog;
        var set = order is not null && desk.Open(file) is { } known
            ? OrderTable.Of(known, shop).View(OrderFilter.All).Sets.FirstOrDefault(s => string.Equals(s.Order, order, StringComparison.OrdinalIgnoreCase))
            : null;
        var last = set?.Rows[^1].Cells ?? [];
        return OrderFormPage.Create(new OrderFormModel(
            file,
            [.. Columns.Select(c => new FormField(
                c.Column, c.Label, ExampleOf(c.Column, catalog), ChoicesOf(c.Column, catalog), c.IsOfSet,
                c.IsOfSet ? last.FirstOrDefault(l => l.Title == c.Column)?.Text ?? "" : ""))],
            set));
    }

    private static async Task<IResult> Add(HttpContext context, OrderDesk desk)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var cells = Columns.ToDictionary(c => c.Column, c => form[c.Column].ToString().Trim());
        if (cells.Values.All(c => c.Length == 0))
        {
            throw new TagendException("Nothing is written yet: fill in the order number, the piece and its length.") { Blame = Blame.WrongValue };
        }

        var name = form["file"].ToString();
        if (name.Length == 0 || desk.Open(name) is null)
        {
            name = desk.TakeIn(NewFile, OrderSheet.Begin([.. Columns.Select(c => c.Column)]).WithRow([.. Columns.Select(c => cells[c.Column])]).ToBytes());
        }
        else
        {
            desk.Change(name, bytes => WithRow(OrderSheet.Read(name, bytes, []) ?? throw new TagendException($"{name} is no text that can be added to") { Blame = Blame.WrongValue }, cells).ToBytes());
        }

        return Redirect.To(context, $"/orders/new?file={Uri.EscapeDataString(name)}&order={Uri.EscapeDataString(cells[OrderColumn.Order])}");
    }

    private static OrderSheet WithRow(OrderSheet sheet, Dictionary<string, string> cells)
    {
        foreach (var missing in cells.Where(c => c.Value.Length > 0).Select(c => c.Key).Except(sheet.Columns(new Dictionary<string, string>()).OfType<string>()))
        {
            sheet = sheet.WithColumn(missing);
        }

        return sheet.WithRow([.. sheet.Columns(new Dictionary<string, string>()).Select(c => c is null ? "" : cells.GetValueOrDefault(c, ""))]);
    }

    private static string ExampleOf(string column, ShopCatalog catalog) => (column, catalog.Shop.Unit) switch
    {
        (OrderColumn.Order, _) => "1042",
        (OrderColumn.Due, _) => "4 Dec",
        (OrderColumn.DrawWeight, LengthUnit.Inch) => "70",
        (OrderColumn.DrawWeight, _) => "311 N",
        (OrderColumn.Piece, _) => "string",
        (OrderColumn.FinishedLength, LengthUnit.Inch) => "60 1/4",
        (OrderColumn.FinishedLength, _) => "1530",
        (OrderColumn.Colors, _) => "black:12 red:12",
        (OrderColumn.Servings, LengthUnit.Inch) => "A 0..7 1/2 t021 black; B 0..8 t021",
        (OrderColumn.Servings, _) => "A 0..190 t021 black; B 0..203 t021",
        (OrderColumn.CenterServing, LengthUnit.Inch) => "26 1/4..31",
        (OrderColumn.CenterServing, _) => "667..787",
        (OrderColumn.NockPoint, LengthUnit.Inch) => "29",
        (OrderColumn.NockPoint, _) => "737",
        (OrderColumn.Peep, LengthUnit.Inch) => "23 1/2",
        (OrderColumn.Peep, _) => "597",
        _ => "",
    };

    private static IReadOnlyList<string> ChoicesOf(string column, ShopCatalog catalog) => column switch
    {
        OrderColumn.Kind => [.. catalog.Plans.Keys.Order(StringComparer.Ordinal)],
        OrderColumn.Material => [.. catalog.Materials.Keys.Order(StringComparer.Ordinal)],
        _ => [],
    };
}
