using Tagend.Imports;

namespace Tagend.Options;

/// <summary>The map that order files are read by, as it is named at a terminal.</summary>
internal static class MapOption
{
    /// <param name="name">Of the map; null to choose by the header.</param>
    public static MapWish Of(string? name) => new(name, "name one of them with --map", file => $"tagend map {file} proposes one");
}
