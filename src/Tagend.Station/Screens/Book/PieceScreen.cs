using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Tags;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Screens.Book;

/// <summary>An order or a piece of the job book: its issues, builds and states, and what can become of it.</summary>
internal static class PieceScreen
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/book/made/{name}", (string name, ShopDesk shop) => Made(name, shop));
        routes.MapGet("/book/{order}/{piece?}", (string order, string? piece, ShopDesk shop) => Show(order, piece, shop, m => m));
        routes.MapPost("/book/{order}/state", async (string order, HttpContext context, ShopDesk shop) =>
            Become(order, await context.Request.ReadFormAsync(), shop));
        routes.MapPost("/book/{order}/{piece}/again", async (string order, string piece, HttpContext context, ShopDesk shop) =>
            Again(order, piece, await context.Request.ReadFormAsync(), shop));
        routes.MapPost("/book/builds/{number:long}", async (long number, HttpContext context, ShopDesk shop) =>
            OfBuild(number, await context.Request.ReadFormAsync(), shop));
    }

    private static IResult Show(string order, string? piece, ShopDesk shop, Func<PartModel, PartModel> said)
    {
        var part = OrderPart.Read(piece is null ? order : $"{order}/{piece}", out var error);
        var model = part is null ? null : shop.WithBook(book => Model(part, book, shop));
        if (model is null)
        {
            return Faults.Page(StatusCodes.Status404NotFound, part is null ? error : $"There is nothing of {part} in the job book.");
        }

        model = said(model);
        var page = PartPage.Create(model);
        page.StatusCode = model.Faults.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        return page;
    }

    private static PartModel? Model(OrderPart part, IJobBook book, ShopDesk shop)
    {
        var unit = shop.Catalog.Shop.Unit;
        var ofOrder = book.Find(new JobSearch { Order = part.Order }).ToList();
        var jobs = ofOrder.FindAll(j => part.Piece is null || j.Piece == part.Piece);
        return jobs.Count == 0 ? null : new PartModel
        {
            Order = part.Order,
            Piece = part.Piece,
            Jobs = jobs,
            Pieces = [.. OrderList.Pieces(ofOrder, book.Events).Where(p => part.Piece is null || p.Piece == part.Piece)],
            History = OrderHistory.Of(part, book, unit),
            Unit = unit,
            Setting = part.Piece is not null && TagReader.Read(jobs[^1].Tag) is TagReading.Piece { Spec: var spec } ? LengthWriter.Setting(spec.Posts.Tape, unit) : "",
        };
    }

    /// <summary>Shipped, cancelled, reopened or remade.</summary>
    private static IResult Become(string order, IFormCollection form, ShopDesk shop)
    {
        var piece = form["piece"].ToString() is { Length: > 0 } named ? named : null;
        if (OrderPart.Read(piece is null ? order : $"{order}/{piece}", out var error) is not { } part
            || !Enum.TryParse<EventKind>(form["what"], out var what) || what is EventKind.Corrected or EventKind.Struck)
        {
            return Faults.Page(StatusCodes.Status400BadRequest, error.Length > 0 ? error : "Say what became of it.");
        }

        var answer = shop.WithBook(book => new BookLog(book).Enter(part, what, form["who"].ToString().Trim(), form["reason"].ToString().ReplaceLineEndings(" ").Trim()));
        return Show(order, piece, shop, model => answer.Error is { } refusal
            ? model with { Faults = [refusal] }
            : model with { Done = [.. answer.Pieces.Select(p => $"{part.Order}/{p.Piece}: {StateWords.Of(p.State)}"), .. answer.Remarks] });
    }

    /// <summary>Prints again, or with a change as a new revision.</summary>
    private static IResult Again(string order, string piece, IFormCollection form, ShopDesk shop)
    {
        if (PieceName.Read($"{order}/{piece}", out var error) is not { } name
            || shop.WithBook(book => book.Newest(name.Order, name.Piece)) is not { } job || TagReader.Read(job.Tag) is not TagReading.Piece { Spec: var spec })
        {
            return Faults.Page(StatusCodes.Status404NotFound, error is { Length: > 0 } ? error : $"There is nothing of {order}/{piece} in the job book.");
        }

        var (column, text) = (form["column"].ToString(), form["text"].ToString().Trim());
        var isChange = OrderColumn.All.Contains(column) && column != OrderColumn.BowLength;
        var book = shop.RunBook();
        var run = new AgainRun(
            shop.Catalog,
            new AgainPlan
            {
                Kinds = [.. PartModel.Kinds.Where(k => form["kind"].Contains(k.FromTag))],
                Changes = isChange ? [new CellChange(null, column, text)] : [],
                Folder = FolderOf(shop),
                Date = shop.Today,
            },
            book);
        var made = run.Add([spec]);
        return Show(order, piece, shop, model => run.HasRefusals || made.Papers.Count == 0
            ? model with
            {
                Faults = made.Problems.Count > 0 ? [.. made.Problems.Select(p => p.Message)] : ["Tick the papers that are wanted."],
                Change = isChange ? (column, text) : model.Change,
            }
            : model with
            {
                Done = [.. made.Problems.Select(p => p.Message), .. book.Fault is { } fault ? new[] { $"{fault.Reason}; {fault.Consequence}" } : []],
                Files = [.. made.Papers.Select(p => Path.GetFileName(p.Path))],
            });
    }

    /// <summary>Leaves a build out of the fit, takes it in again, or strikes it.</summary>
    private static IResult OfBuild(long number, IFormCollection form, ShopDesk shop)
    {
        var job = shop.WithBook(book =>
        {
            switch (form["what"].ToString())
            {
                case "leave out":
                    book.LeaveOut([number], isLeftOut: true);
                    break;
                case "take in":
                    book.LeaveOut([number], isLeftOut: false);
                    break;
                case "strike":
                    new BenchLog(book, shop.Catalog.Shop.Unit).Strike(number, form["who"].ToString().Trim(), form["reason"].ToString().ReplaceLineEndings(" ").Trim());
                    break;
            }

            return book.WithBuild(number);
        });
        return form["from"] == "fit" ? TypedResults.Redirect("/book/fit")
            : job is null ? Faults.Page(StatusCodes.Status404NotFound, $"There is no build {number} in the job book.")
            : TypedResults.Redirect($"/book/{job.Order}/{job.Piece}");
    }

    public static string FolderOf(ShopDesk shop) => Path.Combine(shop.Options.Folder, "papers", "again");

    /// <summary>A paper of the folder itself: a name leads nowhere else.</summary>
    private static IResult Made(string name, ShopDesk shop)
    {
        var folder = FolderOf(shop);
        return Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*.pdf").FirstOrDefault(f => Path.GetFileName(f) == name) is { } path
            ? TypedResults.PhysicalFile(path, "application/pdf")
            : Faults.Page(StatusCodes.Status404NotFound, "This paper is not there any more: print it again.");
    }
}
