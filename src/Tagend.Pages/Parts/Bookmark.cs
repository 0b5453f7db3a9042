using Tagend.Specs;

namespace Tagend.Pages.Parts;

/// <summary>The bookmark that leads to a set in a document of many.</summary>
internal static class Bookmark
{
    public static string Of(BuildSet set) =>
        set.Builds[0].Slip.Customer is { Length: > 0 } customer ? $"{set.Order}, {customer}" : set.Order;
}
