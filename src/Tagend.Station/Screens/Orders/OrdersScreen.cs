using Tagend.Orders;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;

namespace Tagend.Station.Screens.Orders;

/// <summary>Order files: what needs a hand, and what is ready to be printed.</summary>
internal sealed class OrdersScreen : IScreen
{
    public NavEntry? Nav { get; } = new("/orders", "Orders", "orders");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/orders", (OrderDesk desk, ShopDesk shop) => Show(null, OrderFilter.All, desk, shop));
        routes.MapGet("/orders/{name}", (string name, string? show, OrderDesk desk, ShopDesk shop) => Show(name, FilterOf(show), desk, shop));
        routes.MapPost("/orders", (HttpContext context, OrderDesk desk) => TakeIn(context, desk));
        routes.MapPost("/orders/{name}/cell", (string name, HttpContext context, OrderDesk desk, ShopDesk shop) => Mend(name, context, desk, shop));
        routes.MapPost("/orders/{name}/reuse", (string name, HttpContext context, OrderDesk desk, ShopDesk shop) => Reuse(name, context, desk, shop));
        routes.MapPost("/orders/{name}/keep", (string name, HttpContext context, OrderDesk desk) => Keep(name, context, desk));
        routes.MapPost("/orders/{name}/drop", (string name, HttpContext context, OrderDesk desk) => Drop(name, context, desk));
        routes.MapGet("/orders/{name}/file", (string name, OrderDesk desk) => Download(name, desk));
        FileMapping.Map(routes);
        SetScreen.Map(routes);
        VersionsScreen.Map(routes);
        OrderForm.Map(routes);
    }

    private static IResult Show(string? name, OrderFilter filter, OrderDesk desk, ShopDesk shop)
    {
        var files = desk.Files();
        var shown = name ?? (files.Count > 0 ? files[0].Name : null);
        FileView? view = null;
        if (shown is not null)
        {
            if (desk.Open(shown) is not { } file)
            {
                return Faults.Page(StatusCodes.Status404NotFound, $"There is no order file {name}.");
            }

            view = OrderTable.Of(file, shop).View(filter);
        }

        return OrdersPage.Create(new OrdersModel([.. files.Select(f => new FileEntry(f.Name, f.HasDraft, f.Name == shown))], view, desk.Folder));
    }

    /// <summary>A file that was dropped or chosen, or rows that were pasted.</summary>
    private static async Task<IResult> TakeIn(HttpContext context, OrderDesk desk)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        string? first = null;
        foreach (var file in form.Files.Where(f => f.Length > 0))
        {
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes, context.RequestAborted);
            var name = desk.TakeIn(file.FileName, bytes.ToArray());
            first ??= name;
        }

        if (form["rows"].ToString() is { Length: > 0 } rows && !string.IsNullOrWhiteSpace(rows))
        {
            first = desk.TakeIn("pasted", System.Text.Encoding.UTF8.GetBytes(rows.TrimStart('\r', '\n')));
        }

        if (first is null)
        {
            throw new TagendException("Nothing was sent: choose an order file, or paste the rows with their header.") { Blame = Blame.WrongValue };
        }

        return Redirect.To(context, $"/orders/{Uri.EscapeDataString(first)}");
    }

    /// <summary>A cell that was edited; answers with what became of its set.</summary>
    private static async Task<IResult> Mend(string name, HttpContext context, OrderDesk desk, ShopDesk shop)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var (title, was, text) = (form["title"].ToString(), form["was"].ToString(), form["text"].ToString().Trim());
        if (!int.TryParse(form["row"], out var row) || !int.TryParse(form["column"], out var column))
        {
            return Results.BadRequest();
        }

        string? now = null;
        var isMended = desk.Change(name, bytes =>
        {
            var sheet = OrderSheet.Read(name, bytes, []) ?? throw new TagendException($"{name} is no text that can be mended here") { Blame = Blame.WrongValue };
            sheet = column == sheet.Titles.Count ? sheet.WithColumn(title) : sheet;
            now = row < -1 || row >= sheet.Rows.Count || column < 0 || column >= sheet.Titles.Count ? null
                : row == -1 ? sheet.Titles[column]
                : sheet.Rows[row][column];
            return now == was ? sheet.WithCell(row, column, text).ToBytes() : null;
        });
        if (!isMended && now != text)
        {
            throw new TagendException(now is null
                ? $"{name} has become another file meanwhile: reload the page. You typed \"{text}\"."
                : $"This cell says \"{now}\" now: somebody else changed it meanwhile. You typed \"{text}\"; reload the page and decide.")
            {
                Blame = Blame.Changed,
            };
        }

        var view = OrderTable.Of(desk.Open(name)!, shop).View(FilterOf(form["show"]));
        var set = view.Sets.FirstOrDefault(s => s.Rows.Any(r => r.Index == row));
        if (set is null || set.Id != form["set"] || column >= view.Titles.Count - 1)
        {
            context.Response.Headers["HX-Retarget"] = "#file";
            return FilePart.Create(view);
        }

        return MendedPart.Create(new MendedView(view, set));
    }

    /// <summary>An order's number is used again on purpose, or it is not.</summary>
    private static async Task<IResult> Reuse(string name, HttpContext context, OrderDesk desk, ShopDesk shop)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        desk.Reuse(name, form["order"].ToString(), form["customer"].ToString(), form["reused"].Count > 0);
        return FilePart.Create(OrderTable.Of(desk.Open(name)!, shop).View(FilterOf(form["show"])));
    }

    private static async Task<IResult> Keep(string name, HttpContext context, OrderDesk desk)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        return Redirect.To(context, desk.Keep(name, form["other"].ToString() is { Length: > 0 } seal ? seal : null)
            ? $"/orders/{Uri.EscapeDataString(name)}"
            : $"/orders/{Uri.EscapeDataString(name)}/versions");
    }

    private static IResult Drop(string name, HttpContext context, OrderDesk desk)
    {
        desk.Drop(name);
        return Redirect.To(context, desk.Open(name) is null ? "/orders" : $"/orders/{Uri.EscapeDataString(name)}");
    }

    private static IResult Download(string name, OrderDesk desk) => desk.Open(name) is { } file
        ? Results.Bytes(file.Bytes, "text/csv; charset=utf-8", name)
        : Faults.Page(StatusCodes.Status404NotFound, $"There is no order file {name}.");

    private static OrderFilter FilterOf(string? text) => Enum.TryParse<OrderFilter>(text, ignoreCase: true, out var filter) ? filter : OrderFilter.All;
}
