using System.CommandLine;
using Tagend.Catalog;

namespace Tagend.Options;

/// <summary><c>--paper</c>: one of the sets of sheet and card there are.</summary>
internal static class PaperOption
{
    public static Option<string?> Create(string description)
    {
        string[] names = [.. PaperSet.All.Select(set => set.Name)];
        return new Option<string?>("--paper") { Description = description, HelpName = string.Join('|', names) }.TakesOneOf(names);
    }

    /// <summary>The set named, else the shop's own.</summary>
    public static PaperSet Of(string? name, ShopCatalog catalog) => PaperSet.Named(name) ?? catalog.Shop.Paper;
}
