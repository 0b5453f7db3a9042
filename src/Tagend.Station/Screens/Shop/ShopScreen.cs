using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Screens.Shop;

/// <summary>The shop's own settings, its test pages and its printers.</summary>
internal sealed class ShopScreen : IScreen
{
    public NavEntry? Nav { get; } = new("/shop", "Shop", "shop");

    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/shop", (string? file, ShopDesk shop) => Show(file ?? "shop.toml", shop));
        routes.MapPost("/shop/setting", (HttpContext context, ShopDesk shop) => Change(context, shop));
        routes.MapGet("/shop/ruler.pdf", (ShopDesk shop) => Ruler(shop));
        routes.MapGet("/shop/outlines.pdf", (string stock, ShopDesk shop) => Outlines(stock, shop));
        routes.MapPost("/shop/printer", (HttpContext context, ShopDesk shop) => Measured(context, shop));
    }

    private static IResult Show(string file, ShopDesk shop)
    {
        var folder = shop.Options.Templates;
        var files = ShopSettings.Files(folder);
        if (!files.Contains(file))
        {
            return Faults.Page(StatusCodes.Status404NotFound, $"There are no settings in {file}.");
        }

        var reading = shop.Templates;
        return ShopPage.Create(new ShopModel(
            file,
            [.. files.Select(f => new SettingFile(f, f == file))],
            [.. ShopSettings.Read(folder, file).Entries.GroupBy(e => e.Section)
                .Select(g => new SettingGroup(g.Key, [.. g.Select(e => new SettingView(file, e, null, [], null))]))],
            reading.Problems,
            [.. (reading.Catalog?.Stocks.Values ?? []).Where(s => s.LabelsPerPage > 1).Select(s => s.Name)],
            folder,
            shop.Options.Book?.Text ?? "none"));
    }

    private static async Task<IResult> Change(HttpContext context, ShopDesk shop)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var (file, section, key, was, value) = (form["file"].ToString(), form["section"].ToString(), form["key"].ToString(), form["was"].ToString(), form["value"].ToString().Trim());
        var folder = shop.Options.Templates;
        if (!ShopSettings.Files(folder).Contains(file))
        {
            return Faults.Page(StatusCodes.Status404NotFound, $"There are no settings in {file}.");
        }

        var before = shop.Templates.Catalog;
        var mistakes = ShopSettings.Change(folder, file, section, key, was, value);
        var entry = ShopSettings.Read(folder, file).Entries.First(e => e.Section == section && e.Key == key);
        return SettingPart.Create(mistakes.Count > 0
            ? new SettingView(file, entry, value, mistakes, null)
            : new SettingView(file, entry, null, [], Said(before, shop.Templates.Catalog)));
    }

    /// <summary>What a change of the posts moves on every card: (π/2 − 1) of what they grew by.</summary>
    private static string Said(ShopCatalog? before, ShopCatalog? after)
    {
        if (before is null || after is null)
        {
            return "Saved.";
        }

        Length PostOf(ShopCatalog c) => c.Shop.Jig.PostDiameter ?? c.Shop.PinDiameter;
        var moved = PostOf(before) - PostOf(after);
        return moved == Length.Zero ? "Saved."
            : $"Saved. The posts of every card move by {LengthWriter.Exact(moved * ((Math.PI / 2) - 1), after.Shop.Unit).TrimStart('-')}; cards that were printed before show the old ones.";
    }

    private static IResult Ruler(ShopDesk shop)
    {
        var (paper, problems) = RulerPaper.Print(shop.Catalog, shop.Catalog.Shop.Paper.Sheet, null, TestPages(shop), shop.Today);
        return paper is null
            ? throw new TagendException(string.Join("\n", problems))
            : Results.File(paper.Path, "application/pdf", Path.GetFileName(paper.Path));
    }

    private static IResult Outlines(string stock, ShopDesk shop)
    {
        var paper = OutlinesPaper.Print(stock, shop.Catalog, TestPages(shop), shop.Today);
        return Results.File(paper.Path, "application/pdf", Path.GetFileName(paper.Path));
    }

    private static async Task<IResult> Measured(HttpContext context, ShopDesk shop)
    {
        var form = await context.Request.ReadFormAsync(context.RequestAborted);
        var name = form["printer"].ToString().Trim();
        if (!PrinterScaleFile.CanName(name) || name.Length == 0)
        {
            return AnswerPart.Create(new ShopAnswer("Name the printer as the system does.", false));
        }

        var (across, along) = (Bar(form["across"].ToString()), Bar(form["along"].ToString()));
        if (across is not { } a || along is not { } b)
        {
            return AnswerPart.Create(new ShopAnswer("Expected what each bar measured, such as 149.3 mm or 5.88 in.", false));
        }

        foreach (var bar in new[] { a, b })
        {
            if (PrinterScale.Refusal(bar) is { } refusal)
            {
                return AnswerPart.Create(new ShopAnswer($"A bar of {LengthWriter.Setting(bar, LengthUnit.Millimeter)} {refusal}.", false));
            }
        }

        var scale = new PrinterScale(name, a, b);
        PrinterScales.Keep(scale, shop.Options.Templates);
        return AnswerPart.Create(new ShopAnswer(
            FormattableString.Invariant($"Pages for {name} are drawn {scale.Across:0.0000} times as wide and {scale.Along:0.0000} times as long from now on."), true));
    }

    private static Length? Bar(string text) => LengthReader.TryRead(text, LengthUnit.Millimeter, out var bar) && bar > Length.Zero ? bar : null;

    private static string TestPages(ShopDesk shop) => Path.Combine(shop.Options.Folder, "papers", "test pages");
}
