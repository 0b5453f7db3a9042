namespace Tagend.Catalog;

/// <summary>All wording about templates, so that tests can hold it.</summary>
internal static class CatalogWording
{
    public const string ALength = "a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"";

    public const string AForce = "a force in quotes, such as \"44 lbf\" or \"196 N\"";

    public static string MissingFolder(string path) =>
        $"no templates folder at {path}: name one with --templates";

    public static string MissingFile(string path) =>
        $"there is no {path}: copy the one that comes with the program";

    public static string Unreadable(string path, string reason) => $"cannot read {path}: {reason}";

    public static string NotToml(string reason) => $"not TOML here: {reason}";

    public static string MissingSection(string name) => $"expected a section [{name}]";

    public static string Missing(string key, string expected) => $"{key} is missing: expected {expected}";

    public static string Expected(string expected) => $"expected {expected}";

    public static string UnknownKey(IEnumerable<string> known) =>
        $"unknown entry; the entries here are {string.Join(", ", known)}";

    public static string UnknownName(string what, IEnumerable<string> known) =>
        $"there is no such {what}; there are {string.Join(", ", known.Order(StringComparer.Ordinal))}";

    public static string LabelsBeyondPage(string direction) =>
        $"the labels reach beyond the page {direction}: check page size, margin, pitch and count";

    public const string CornerTooRound = "a corner's radius is at most half of the label's shorter side";

    public static string LabelsOverlap(string side) =>
        $"the labels overlap: the pitch goes from one label's edge to the next one's, and is not less than the {side}";
}
