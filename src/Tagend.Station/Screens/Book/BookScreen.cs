using Microsoft.AspNetCore.Http.Features;
using Tagend.Jobs;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Screens.Book;

/// <summary>The job book: what was printed and built, found as one types; the spools; and what the builds teach.</summary>
internal sealed class BookScreen : IScreen
{
    /// <summary>Jobs that are listed at once: more are not read by anybody.</summary>
    private const int MostShown = 60;

    public NavEntry? Nav { get; } = new("/book", "Book", "book");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/book", (string? q, ShopDesk shop) => Show(q ?? "", shop));
        routes.MapGet("/book/found", (string? q, ShopDesk shop) => ShowFound(q ?? "", shop));
        routes.MapGet("/book/jobs.csv", (string? q, string? lot, HttpContext context, ShopDesk shop) => Csv(q ?? "", lot, context, shop));
        routes.MapPost("/book/forget", async (HttpContext context, ShopDesk shop) =>
            Forget((await context.Request.ReadFormAsync())["customer"].ToString().Trim(), shop));
        SpoolScreen.Map(routes);
        FitScreen.Map(routes);
        PieceScreen.Map(routes);
    }

    private static IResult Show(string text, ShopDesk shop) => BookPage.Create(Found(text, shop));

    private static IResult ShowFound(string text, ShopDesk shop) => FoundJobs.Create(Found(text, shop));

    private static JobList Found(string text, ShopDesk shop) => shop.WithBook(book =>
    {
        var jobs = Searched(text, book).Take(MostShown + 1).ToList();
        return new JobList(text, [.. jobs.Take(MostShown)], jobs.Count > MostShown, shop.Catalog.Shop.Unit);
    });

    /// <summary>An order or a piece by its name, and whatever has a part of a customer's name or of a bow; the newest of each first.</summary>
    private static IEnumerable<PrintedJob> Searched(string text, IJobBook book)
    {
        var plain = text.Trim();
        if (plain.Length == 0)
        {
            return book.Find(new JobSearch { IsNewestFirst = true });
        }

        var part = OrderPart.Read(plain, out _);
        var named = part is null ? [] : book.Find(new JobSearch { Order = part.Order, Piece = part.Piece, IsNewestFirst = true });
        return named
            .Concat(book.Find(new JobSearch { Customer = plain, IsNewestFirst = true }))
            .Concat(book.Find(new JobSearch { Bow = plain, IsNewestFirst = true }))
            .DistinctBy(j => j.Number);
    }

    private static IResult Csv(string text, string? lot, HttpContext context, ShopDesk shop)
    {
        context.Features.GetRequiredFeature<IHttpBodyControlFeature>().AllowSynchronousIO = true;
        context.Response.ContentType = "text/csv; charset=utf-8";
        context.Response.Headers.ContentDisposition = "attachment; filename=\"jobs.csv\"";
        return shop.WithBook<IResult>(book =>
        {
            JobTable.Write(lot is null ? Searched(text, book) : book.Find(new JobSearch { Lot = lot.Trim() }), shop.Catalog.Shop.Unit, context.Response.Body);
            return TypedResults.Empty;
        });
    }

    private static IResult Forget(string customer, ShopDesk shop)
    {
        var forgotten = customer.Length == 0 ? 0 : shop.WithBook(book => book.Forget(customer));
        var page = BookPage.Create(Found("", shop) with
        {
            Forgotten = forgotten,
            Unknown = forgotten == 0 ? customer : null,
        });
        page.StatusCode = forgotten == 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        return page;
    }
}
