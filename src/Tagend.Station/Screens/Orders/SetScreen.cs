using Tagend.Jobs;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Station.Desk;
using Tagend.Station.Frame;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Station.Screens.Orders;

/// <summary>One set by itself: its drawing, the numbers it is built by, and what is to be known of it.</summary>
/// <param name="Listed">What the job book knows of it; null where it cannot be read.</param>
/// <param name="Problems">Warnings only: a set with a refusal is mended among the orders.</param>
public sealed record SetModel(
    string File, string Order, string Customer, string Bow, string Due, ListedOrder? Listed, IReadOnlyList<BuildSpec> Specs, IReadOnlyList<Problem> Problems)
{
    public string Path => $"/orders/{Uri.EscapeDataString(File)}/sets/{Uri.EscapeDataString(Order)}";

    public OrderState State => Listed?.State ?? OrderState.New;

    /// <summary>Whether a piece is printed and waits to be built.</summary>
    public bool IsToBuild(string piece) => Listed?.In(PieceState.Printed, PieceState.Remade).Any(p => p.Piece == piece) == true;
}

/// <summary>The screen of one set.</summary>
internal static class SetScreen
{
    private const int WideDrawing = 760;
    private const int NarrowDrawing = 330;
    private const int DotsPerInch = 144;

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/orders/{name}/sets/{order}", (string name, string order, OrderDesk desk, ShopDesk shop) => Show(name, order, desk, shop));
        routes.MapGet("/orders/{name}/sets/{order}/drawing.png", (string name, string order, bool? narrow, OrderDesk desk, ShopDesk shop) =>
            Drawing(name, order, narrow == true ? NarrowDrawing : WideDrawing, desk, shop));
    }

    private static IResult Show(string name, string order, OrderDesk desk, ShopDesk shop)
    {
        if (desk.Open(name) is not { } file || OrderTable.Of(file, shop) is not { } table || table.Make(order) is not { } set)
        {
            return Faults.Page(StatusCodes.Status404NotFound, $"There is no set {order} in {name} that can be built: mend it among the orders first.");
        }

        var slip = set.Builds[0].Slip;
        return SetPage.Create(new SetModel(
            name,
            set.Order,
            slip.Customer,
            slip.Bow,
            slip.Due,
            table.Listed.GetValueOrDefault(set.Order),
            [.. set.Builds.Select(b => b.Spec)],
            [.. table.Checked.Report.Pieces.Where(p => p.Order == set.Order).SelectMany(p => p.Problems).Distinct()]));
    }

    private static IResult Drawing(string name, string order, int width, OrderDesk desk, ShopDesk shop) =>
        desk.Open(name) is { } file && OrderTable.Of(file, shop).Make(order) is { } set && SetPicture.Of(set, shop.Catalog, width, DotsPerInch) is { } picture
            ? Results.Bytes(picture, "image/png")
            : Results.NotFound();
}
