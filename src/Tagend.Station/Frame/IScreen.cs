namespace Tagend.Station.Frame;

/// <summary>One task of the shop: its pages and what is sent from them. A new screen is an entry in the list of screens.</summary>
public interface IScreen
{
    /// <summary>Its place in the navigation; null where it is reached from other screens alone.</summary>
    NavEntry? Nav { get; }

    /// <summary>Names its addresses and what answers at each.</summary>
    void Map(IEndpointRouteBuilder routes);
}

/// <summary>A screen in the navigation.</summary>
/// <param name="Path">Where it begins; all of its addresses start so.</param>
/// <param name="Title">One plain word.</param>
/// <param name="Icon">A shape of icons.svg.</param>
public sealed record NavEntry(string Path, string Title, string Icon);

/// <summary>The navigation of the station, in the order of the work.</summary>
public sealed record Navigation(IReadOnlyList<NavEntry> Entries);
