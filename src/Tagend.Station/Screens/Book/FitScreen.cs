using Tagend.Fits;
using Tagend.Measures;
using Tagend.Station.Desk;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Book;

/// <summary>What the shop's own builds say of take-up, against the rule and the helix.</summary>
internal static class FitScreen
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/book/fit", (ShopDesk shop) => Show(shop));
        routes.MapGet("/book/fit/{material}/{strands:int}.png", (string material, int strands, ShopDesk shop) => Plot(material, strands, shop));
    }

    private static IReadOnlyList<TakeUpFit> Fits(ShopDesk shop) =>
        shop.WithBook(book => TakeUpFit.All(BuildPoint.Of(book.Built()), shop.Catalog));

    private static IResult Show(ShopDesk shop)
    {
        var catalog = shop.Catalog;
        var unit = catalog.Shop.Unit;
        return FitPage.Create(new FitModel(
            [
                .. Fits(shop).Select(fit => new FitView(
                    fit,
                    FitWording.Title(fit),
                    [.. FitWording.Facts(fit, catalog)],
                    fit.Fit is { } found ? $"{LengthWriter.Fine(found.PerTurn, unit)} ± {LengthWriter.Error(found.PerTurnError, unit)}" : null,
                    LengthWriter.Fine(catalog.Shop.RuleTakeUpPerTurn, unit),
                    FitWording.HelixPerTurn(fit, catalog) is { } helix ? LengthWriter.Fine(helix, unit) : null)),
            ],
            shop.WithBook(book => OpenCards.Moved(book, catalog, null, null, shop.Today)),
            unit));
    }

    private static IResult Plot(string material, int strands, ShopDesk shop)
    {
        if (Fits(shop).FirstOrDefault(f => f.Material == material && f.Strands == strands) is not { Fit: not null } fit)
        {
            return TypedResults.NotFound();
        }

        var picture = new MemoryStream();
        FitPaper.WritePicture(fit, shop.Catalog, picture);
        return TypedResults.Bytes(picture.ToArray(), "image/png");
    }
}
