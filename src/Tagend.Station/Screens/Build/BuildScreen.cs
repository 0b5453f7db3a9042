using Tagend.Problems;
using Tagend.Specs;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Station.Guard;
using Tagend.Tags;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Build;

/// <summary>A piece at the bench: a step a screen, read from two meters, and at the end what was measured.</summary>
internal sealed class BuildScreen : IScreen
{
    /// <summary>Fields of the form that are no values of the build.</summary>
    private const string Key = "key", TagText = "tag", Mode = "mode";

    private const string Another = "another", Correct = "correct:";

    public NavEntry? Nav { get; } = new("/build", "Build", "build");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/build", (ShopDesk shop, BenchDesk benches) => List(shop, benches, "", null));
        routes.MapPost("/build", async (HttpContext context, ShopDesk shop, BenchDesk benches) =>
            Open(shop, benches, (await context.Request.ReadFormAsync())["piece"].ToString()));
        routes.MapGet("/build/of/{order}/{piece}", (string order, string piece, ShopDesk shop, BenchDesk benches) => Open(shop, benches, $"{order}/{piece}"));
        routes.MapGet("/build/{id}", (string id, HttpContext context, ShopDesk shop, BenchDesk benches) => Show(id, Session.Of(context), shop, benches));
        routes.MapPost("/build/{id}/step", async (string id, HttpContext context, BenchDesk benches) =>
            Move(id, await context.Request.ReadFormAsync(), Session.Of(context), benches));
        routes.MapPost("/build/{id}/judge", async (string id, HttpContext context, ShopDesk shop) =>
            Judge(await context.Request.ReadFormAsync(), shop));
        routes.MapPost("/build/{id}/built", async (string id, HttpContext context, ShopDesk shop, BenchDesk benches) =>
            Save(id, await context.Request.ReadFormAsync(), shop, benches));
    }

    private static IResult List(ShopDesk shop, BenchDesk benches, string asked, string? error)
    {
        var page = BuildListPage.Create(new BuildListModel(
            [.. benches.Open().Select(p => BenchView.Begun(p, shop)).OfType<BegunPiece>()], asked, error));
        page.StatusCode = error is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
        return page;
    }

    private static IResult Open(ShopDesk shop, BenchDesk benches, string text)
    {
        var found = shop.WithBook(book => BenchOf(shop, book).Find(text));
        return found.Spec is { } spec
            ? TypedResults.Redirect($"/build/{benches.Take(TagWriter.Write(spec)).Id}")
            : List(shop, benches, text, found.Error);
    }

    private static IResult Show(string id, Session session, ShopDesk shop, BenchDesk benches)
    {
        if (benches.Find(id) is not { } piece || TagReader.Read(piece.Tag) is not TagReading.Piece { Spec: var spec })
        {
            return Faults.Page(StatusCodes.Status404NotFound, "This piece is not at a bench: scan its tag, or open it from the list.");
        }

        return BuildPage.Create(shop.WithBook(book => BenchView.Of(piece, spec, session.Id, shop, book, BenchOf(shop, book))));
    }

    /// <summary>Says where another device is, where it went on meanwhile.</summary>
    private static IResult Move(string id, IFormCollection form, Session session, BenchDesk benches)
    {
        if (benches.Find(id) is not { } piece || !int.TryParse(form["step"], out var step) || step is < 0 or > 999 || !int.TryParse(form["moves"], out var moves))
        {
            return TypedResults.NotFound();
        }

        var elsewhere = piece.Moves > moves && piece.Device != session.Id ? BenchView.Elsewhere(piece) : "";
        var moved = benches.Move(piece, step, session.Id);
        return TypedResults.Text($"{moved.Moves}\n{elsewhere}");
    }

    private static IResult Judge(IFormCollection form, ShopDesk shop) => PieceOf(form) is not { } spec
        ? TypedResults.NotFound()
        : form["length"].ToString().Trim().Length == 0 ? TypedResults.Text("")
        : VerdictNotice.Create(shop.WithBook(book => BenchView.Judged(spec, BenchOf(shop, book).Read(spec, Given(form)), shop.Catalog.Shop.Unit)));

    private static IResult Save(string id, IFormCollection form, ShopDesk shop, BenchDesk benches)
    {
        if (PieceOf(form) is not { } spec || !Guid.TryParse(form[Key], out var key))
        {
            return TypedResults.NotFound();
        }

        var unit = shop.Catalog.Shop.Unit;
        return shop.WithBook<IResult>(book =>
        {
            var (bench, given, mode) = (BenchOf(shop, book), Given(form), form[Mode].ToString());
            var reading = bench.Read(spec, given);
            if (reading.Built is null)
            {
                return With(VerdictNotice.Create(BenchView.Judged(spec, reading, unit)), StatusCodes.Status422UnprocessableEntity);
            }

            var answer = mode.StartsWith(Correct, StringComparison.Ordinal) && long.TryParse(mode.AsSpan(Correct.Length), out var wrong)
                ? bench.Correct(wrong, given.Where(g => g.Key != "who").ToDictionary(), given.GetValueOrDefault("who", ""), "", key)
                : bench.Log(form[TagText].ToString(), given, mode == Another, key);
            if (answer.Before is { } before)
            {
                return With(AgainNotice.Create(new AgainModel(BuildWording.Before(before, unit), before.Build.Number)), StatusCodes.Status409Conflict);
            }

            if (answer.Logged is not { } logged)
            {
                throw new TagendException(answer.Error!) { Blame = Blame.WrongValue };
            }

            if (benches.Find(id) is { } piece)
            {
                benches.Finish(piece);
            }

            var (material, strands) = (logged.Spec.Bundle.Material, logged.Spec.Bundle.Strands);
            return SavedNotice.Create(new SavedModel(logged, OpenCards.Moved(book, shop.Catalog, material, strands, shop.Today), unit));
        });
    }

    private static BuildSpec? PieceOf(IFormCollection form) => TagReader.Read(form[TagText].ToString()) is TagReading.Piece piece ? piece.Spec : null;

    /// <summary>The values that were typed; a field that was left empty is as on the card.</summary>
    private static Dictionary<string, string> Given(IFormCollection form) => form
        .Where(f => f.Key is not (Key or TagText or Mode or Gate.TokenField) && f.Value.ToString().Trim().Length > 0)
        .ToDictionary(f => f.Key, f => f.Value.ToString());

    private static BenchLog BenchOf(ShopDesk shop, Jobs.IJobBook book) =>
        new(book, shop.Catalog.Shop.Unit, new SpoolShelf(book.Spools, shop.Catalog, shop.Options.Bench));

    private static IResult With(RazorSlices.RazorSlice notice, int status)
    {
        notice.StatusCode = status;
        return (IResult)notice;
    }
}
