using RazorSlices;
using Tagend.Station.Guard;

namespace Tagend.Station.Frame;

/// <summary>What stands around a screen.</summary>
/// <param name="Title">Of the window.</param>
/// <param name="Path">The address that was asked for: it marks the place in the navigation.</param>
/// <param name="Entries">Of the navigation; none where there is nowhere to go.</param>
/// <param name="Token">What forms of this browser carry.</param>
public sealed record PageHead(string Title, string Path, IReadOnlyList<NavEntry> Entries, string Token)
{
    /// <summary>Whether a screen of the navigation is the one that is shown.</summary>
    public bool IsAt(NavEntry entry) => Path == entry.Path || Path.StartsWith(entry.Path + "/", StringComparison.Ordinal);
}

/// <summary>A whole page: a screen in its frame.</summary>
public abstract class StationPage<T> : RazorSlice<T>, IUsesLayout<Layout, PageHead>
{
    /// <summary>Of the window, without the program's name.</summary>
    public abstract string Title { get; }

    /// <summary>Whether other screens can be reached from it: not before a shop has begun, or a device is let in.</summary>
    public virtual bool HasNavigation => true;

    /// <inheritdoc/>
    public PageHead LayoutModel => new(
        Title,
        HttpContext!.Request.Path.Value!,
        HasNavigation ? HttpContext.RequestServices.GetRequiredService<Navigation>().Entries : [],
        Session.Of(HttpContext).Token);
}
