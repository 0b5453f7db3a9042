using Tagend.Station.Frame;
using Tagend.Station.Screens.Book;
using Tagend.Station.Screens.Build;
using Tagend.Station.Screens.Devices;
using Tagend.Station.Screens.Orders;
using Tagend.Station.Screens.Papers;
using Tagend.Station.Screens.Scan;
using Tagend.Station.Screens.Shop;
using Tagend.Station.Screens.Start;

namespace Tagend.Station;

/// <summary>The screens there are, in the order of the work. A new one is an entry here.</summary>
internal static class ScreenList
{
    /// <summary>The first is where a browser begins.</summary>
    public static IReadOnlyList<IScreen> All { get; } = [new OrdersScreen(), new PapersScreen(), new BuildScreen(), new ScanScreen(), new BookScreen(), new ShopScreen(), new StartScreen(), new DevicesScreen()];
}
