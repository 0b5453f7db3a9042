using Tagend.Station.Frame;

namespace Tagend.Station.Screens.Orders;

/// <summary>Order files: what needs a hand, and what is ready to be printed.</summary>
internal sealed class OrdersScreen : IScreen
{
    public NavEntry? Nav { get; } = new("/orders", "Orders", "orders");

    public void Map(IEndpointRouteBuilder routes) => routes.MapGet("/orders", () => Show());

    private static IResult Show() => OrdersPage.Create(new OrdersModel());
}

/// <summary>What the screen of orders shows.</summary>
public sealed record OrdersModel;
