using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Pages.Parts;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Book;

/// <summary>The spools: what runs out first, what came in, and what a bad lot was built into.</summary>
internal static class SpoolScreen
{
    private static readonly SpoolForm Blank = new("", "", "", "", 1);

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/book/spools", (ShopDesk shop) => Show(shop, m => m));
        routes.MapPost("/book/spools", async (HttpContext context, ShopDesk shop) => Receive(await context.Request.ReadFormAsync(), shop));
        routes.MapPost("/book/spools/{number}", async (string number, HttpContext context, ShopDesk shop) =>
            OfOne(number, await context.Request.ReadFormAsync(), shop));
        routes.MapGet("/book/lot", (string? lot, ShopDesk shop) => OfLot(lot?.Trim() ?? "", shop));
    }

    private static IResult OfLot(string lot, ShopDesk shop) =>
        LotPage.Create(new LotModel(lot, lot.Length == 0 ? [] : shop.WithBook(book => book.Find(new JobSearch { Lot = lot }).ToList())));

    private static IResult Show(ShopDesk shop, Func<SpoolModel, SpoolModel> said)
    {
        var catalog = shop.Catalog;
        var spools = shop.WithBook(book => ShelfOf(book, shop).Listed(withFinished: false));
        var model = said(new SpoolModel(
            spools,
            [.. catalog.Materials.Keys, .. catalog.Threads.Keys],
            [.. spools.Select(s => s.Spool.Color).Where(c => c.Length > 0).Distinct().Order(StringComparer.Ordinal)],
            catalog.Shop.Unit,
            Blank,
            []));
        var page = SpoolPage.Create(model);
        page.StatusCode = model.Faults.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK;
        return page;
    }

    private static IResult Receive(IFormCollection form, ShopDesk shop)
    {
        var typed = new SpoolForm(form["name"].ToString(), form["color"].ToString(), form["lot"].ToString(), form["length"].ToString(),
            int.TryParse(form["count"], out var count) ? count : 0);
        var catalog = shop.Catalog;
        var (spools, faults) = SpoolReception.Read(typed, catalog, shop.Today);
        if (faults.Count > 0)
        {
            return Show(shop, model => model with { Typed = typed, Faults = faults });
        }

        // A form that is sent twice has one key.
        var received = shop.WithBook(book => book.Spools.Receive(spools, Guid.TryParse(form["key"], out var key) ? key : Guid.NewGuid()));
        var (paper, problems) = SpoolPaper.Print(received, catalog, null, new SheetUse(1, new HashSet<int>()), PieceScreen.FolderOf(shop), shop.Today);
        return Show(shop, model => model with
        {
            Done = [.. received.Select(r => $"spool {r.Number}, {SpoolShelf.TextOf(r)}, lot {r.Lot}: received, {LengthWriter.Spool(r.Length, model.Unit)}"), .. problems.Select(p => p.Message)],
            Files = paper is null ? [] : [Path.GetFileName(paper.Path)],
        });
    }

    /// <summary>Takes a spool to the bench, counts it, finishes it, or prints its tag again.</summary>
    private static IResult OfOne(string number, IFormCollection form, ShopDesk shop)
    {
        var catalog = shop.Catalog;
        return shop.WithBook(book =>
        {
            var shelf = ShelfOf(book, shop);
            if (shelf.Find(number).Spool is not { } spool)
            {
                return Faults.Page(StatusCodes.Status404NotFound, shelf.Find(number).Error!);
            }

            switch (form["what"].ToString())
            {
                case "take":
                    var mounted = SpoolWording.Mounted(shelf.Mount(spool), catalog.Shop.Unit);
                    return Show(shop, model => model with { Done = [mounted] });
                case "finish":
                    book.Spools.Finish(spool.Spool.Number);
                    return Show(shop, model => model with { Done = [$"{SpoolWording.Name(spool)}: finished"] });
                case "tag":
                    var (paper, problems) = SpoolPaper.Print([spool.Spool], catalog, null, new SheetUse(1, new HashSet<int>()), PieceScreen.FolderOf(shop), shop.Today);
                    return Show(shop, model => model with { Done = [.. problems.Select(p => p.Message)], Files = paper is null ? [] : [Path.GetFileName(paper.Path)] });
                default:
                    var count = shelf.Count(spool, form["left"].ToString(), Guid.TryParse(form["key"], out var key) ? key : Guid.NewGuid());
                    return Show(shop, model => count.Error is { } error
                        ? model with { Faults = [new SpoolFault($"left-{number}", error)] }
                        : model with { Done = [$"{SpoolWording.Name(spool)}: {LengthWriter.Spool(count.Left, catalog.Shop.Unit)} left as counted"] });
            }
        });
    }

    private static SpoolShelf ShelfOf(IJobBook book, ShopDesk shop) => new(book.Spools, shop.Catalog, shop.Options.Bench);
}
