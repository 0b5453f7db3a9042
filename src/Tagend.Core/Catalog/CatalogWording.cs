using System.Text.RegularExpressions;
using Tagend.Problems;

namespace Tagend.Catalog;

/// <summary>All wording about templates, so that tests can hold it.</summary>
internal static partial class CatalogWording
{
    /// <summary>Names that are listed in one sentence.</summary>
    private const int MostListed = 40;

    /// <summary>Characters of a line that are shown.</summary>
    private const int ShownOfLine = 60;

    public const string ALength = "a length in quotes with its unit, such as \"1 1/8 in\" or \"28.6 mm\"";

    public const string AUnit = "a unit as well, for this number could be inches or millimeters: such as \"1 1/8 in\" or \"28.6 mm\"";

    public const string AForce = "a force in quotes, such as \"44 lbf\" or \"196 N\"";

    public const string HiddenCharacter = "expected a name of characters that can be seen: type it anew";

    public const string Texts = "a text in quotes, or several in brackets, such as [\"no\", \"pending\"]";

    public static string PlanNameTwice(string other) => $"is already a name of the plan {other}: a name belongs to one kind";

    public static string ColorNameTwice(string other) => $"is already a name of {other}: a name belongs to one color";

    public static string AText(int most) => FormattableString.Invariant($"a text in quotes, at most {most} visible characters long");

    public static string MissingFolder(string path) =>
        $"no templates folder at {path}: put it back, or name another";

    public static string MissingFile(string path) =>
        $"there is no {path}: copy the one that comes with the program";

    public static string Unreadable(string path, string reason) => $"cannot read {path}: {reason}; check that you may read it, or put back what was shipped";

    public static string TooBig(string path, int megabytes) => $"{path} is larger than {megabytes} MB, more than any template: check that it is the right file";

    /// <summary>A line that is not TOML.</summary>
    /// <param name="line">As it is written.</param>
    /// <param name="reason">The parser's own words, which are not for a shop: what they are about decides what is said.</param>
    public static Problem NotToml(Place place, string line, string reason) => new(
        place,
        Shown(line.Split(" #")[0].TrimEnd()),
        Twice().Match(reason) is { Success: true } twice ? $"stands in line {twice.Groups[1].Value} already: keep one of them"
        : reason.Contains("closing `]` for an array", StringComparison.Ordinal) ? "the list before this is not closed: expected ] at its end"
        : line.StartsWith('[') ? "expected the name of a section in brackets, such as [jig]"
        : "expected a name, = and its value: a text in straight quotes such as \"letter\", a number, or a list in brackets");

    private static string Shown(string entry) => entry.Length <= ShownOfLine ? entry : $"{entry[..ShownOfLine]}…";

    [GeneratedRegex(@"is already defined at \(([0-9]+),")]
    private static partial Regex Twice();

    public const string NestedToml = "brackets are nested too deeply to be intended: templates have at most one pair";

    public const string CutOffToml = "the file ends in the middle of a text, at a backslash: close the quote, or copy the file anew";

    public const string NamelessStep = "expected does or a title: a step says what is done";

    public static string TooManySteps(int most) => $"too many steps: a card holds {most}";

    public static string MissingSection(string name) => $"expected a section [{name}]";

    public static string Missing(string key, string expected) => $"{key} is missing: expected {expected}";

    public static string Expected(string expected) => $"expected {expected}";

    public static string Beyond(LengthRange range) =>
        FormattableString.Invariant($"expected {range.Least.Inches:0.####} to {range.Most.Inches:0.###} in ")
        + FormattableString.Invariant($"({range.Least.Millimeters:0.##} to {range.Most.Millimeters:0.##} mm): {range.Why}");

    public const string ServedWithoutLoop = "a served loop has a length: give end_loop_a and end_loop_b";

    public const string AnEnd = "a place from end A with its unit, such as \"A 10 in\"";

    /// <param name="meant">The entry that was probably meant.</param>
    public static string UnknownKey(string? meant, IReadOnlyList<string> known) =>
        meant is not null ? $"unknown entry: did you mean {meant}?"
        : known.Count == 0 ? "unknown entry: nothing can stand here"
        : known.Count > MostListed ? "unknown entry: the file that comes with the program has all that can stand here"
        : $"unknown entry; the entries here are {string.Join(", ", known)}";

    public static string UnknownName(string what, IEnumerable<string> known) =>
        $"there is no such {what}; there are {string.Join(", ", known.Order(StringComparer.Ordinal))}";

    public static string LabelsBeyondPage(string direction) =>
        $"the labels reach beyond the page {direction}: check page size, margin, pitch and count";

    /// <param name="off">The correction, as a share.</param>
    public static string BeyondCorrection(double off) => FormattableString.Invariant(
        $"is {off * 100:0.0} % off the bar's {PrinterScale.Bar.Millimeters:0} mm, and no printer is off by more than {PrinterScale.GreatestCorrection * 100:0} % by itself: the page was scaled. ")
        + "Print it again at 100 % (\"actual size\", no fit to page) and measure that one";

    public static string NoLanguage(string language, string folder, IEnumerable<string> known) =>
        $"there are no papers in the language \"{language}\": {folder} has words for {string.Join(", ", known)}";

    public static string Fields(IReadOnlyList<string> fields) => fields.Count == 0
        ? "expected a text without anything in braces"
        : $"expected a text with {string.Join(" and ", fields.Select(f => $"{{{f}}}"))} in it, and nothing else in braces";

    public static string TooPale(InkColor color) =>
        FormattableString.Invariant($"its contrast with white paper is {Math.Floor(color.ContrastWithWhite * 100) / 100:0.00} : 1, and text needs ")
        + FormattableString.Invariant($"{InkColor.LeastContrast} : 1; {color.Darkened()} is the same hue, dark enough");

    public static string NoPicture(string path) => $"there is no {path}: put the picture there, or leave logo empty";

    public const string APicture = "an SVG or a PNG picture; export a JPEG as PNG, 600 dots wide or more";

    public const string CornerTooRound = "a corner's radius is at most half of the label's shorter side";

    public static string LabelsOverlap(string side) =>
        $"the labels overlap: the pitch goes from one label's edge to the next one's, and is not less than the {side}";
}
