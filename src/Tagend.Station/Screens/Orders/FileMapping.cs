using Tagend.Problems;
using Tagend.Station.Desk;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Screens.Orders;

/// <summary>A file with columns of the shop's own: what they mean is found out once, and kept as a map of the shop.</summary>
internal static class FileMapping
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/orders/{name}/map", async (string name, HttpContext context, OrderDesk desk, ShopDesk shop) =>
            Propose(name, await context.Request.ReadFormAsync(context.RequestAborted), desk, shop));
        routes.MapPost("/orders/{name}/unmap", async (string name, HttpContext context, OrderDesk desk, ShopDesk shop) =>
            Forget(name, (await context.Request.ReadFormAsync(context.RequestAborted))["map"].ToString(), desk, shop));
    }

    /// <summary>Makes the map; where the form names one, again, with the plans that it says.</summary>
    private static IResult Propose(string name, IFormCollection form, OrderDesk desk, ShopDesk shop)
    {
        var catalog = shop.Catalog;
        var file = FileOf(name, desk);
        var mapName = form["map"].ToString() is { } made && IsName(made) ? made : ShopMaps.NewNameFor(name, catalog);
        var proposed = ShopMaps.Propose(name, file.Bytes, mapName, catalog, shop.Today);
        if (proposed.Proposal is not { } proposal)
        {
            throw new TagendException(string.Join("\n", proposed.Problems)) { Blame = Blame.WrongValue };
        }

        proposal = proposal.WithPlans(proposal.Unplanned
            .Select(p => (Piece: p, Plan: form[$"plan-{p}"].ToString())).Where(p => catalog.Plans.ContainsKey(p.Plan)).ToDictionary(p => p.Piece, p => p.Plan));
        ShopMaps.Keep(proposal, ShopMaps.PathOf(mapName, catalog));
        return FilePart.Create(OrderTable.Of(file, shop).View(OrderFilter.All) with
        {
            Made = new MadeMap(
                mapName, [.. proposal.Map.Never.Union(proposal.NotUnderstood)], proposal.Doubts, proposal.Unplanned, [.. catalog.Plans.Keys.Order(StringComparer.Ordinal)]),
        });
    }

    private static IResult Forget(string name, string map, OrderDesk desk, ShopDesk shop)
    {
        if (IsName(map))
        {
            File.Delete(ShopMaps.PathOf(map, shop.Catalog));
        }

        return FilePart.Create(OrderTable.Of(FileOf(name, desk), shop).View(OrderFilter.All));
    }

    private static bool IsName(string map) => map.Length > 0 && map.All(c => char.IsAsciiLetterOrDigit(c) || c == '-');

    private static DeskFile FileOf(string name, OrderDesk desk) =>
        desk.Open(name) ?? throw OrderDesk.NoFile(name);
}
