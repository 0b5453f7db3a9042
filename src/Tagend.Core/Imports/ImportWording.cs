using Tagend.Measures;

namespace Tagend.Imports;

/// <summary>All wording about maps and what is read by them, so that tests can hold it.</summary>
internal static class ImportWording
{
    public const string UnknownSection =
        "no such section in a map: there are [columns], [join], [constants], [options.\"HEADER\"], [values.COLUMN] and [[leave_out]]";

    public const string ATemplate = "expected headers in braces, such as \"{Make} {Model}\"";

    public const string OneOfIsAndIsNot = "expected either is or is_not, with texts in brackets, such as is = [\"no\", \"\"]";

    public const string ValueTwice = "the same text is given above, for letter case and spaces do not matter: keep one of them";

    public static string NoSuchTarget(IEnumerable<string> columns) =>
        $"expected a column of an order, or PIECE.COLUMN such as buss.finished_length; the columns are {string.Join(", ", columns)}";

    public static string OfTheRow(string column) =>
        $"{column} is one of the whole row, not of a piece: write it without the piece and its point";

    public static string TargetTwice(MapTarget target, IEnumerable<string> headers) =>
        $"{target} is given by {string.Join(" and by ", headers.Select(h => $"\"{h}\""))}: keep one of them, or put them together under [join]";

    public static string SeveralFit(IEnumerable<string> names, string choose) =>
        $"the maps {string.Join(" and ", names)} fit this header equally well: {choose}";

    public static string NoMap(string name, IReadOnlyCollection<string> names, string propose) => names.Count == 0
        ? $"there is no map {name}, for imports in the templates folder has none: {propose}"
        : $"there is no map {name}; imports in the templates folder has {string.Join(", ", names)}";

    public static string Lacks(string map, IReadOnlyCollection<string> missing) =>
        $"imports/{map}.toml reads files like this one, but here is no column {string.Join(" and no column ", missing.Select(m => $"\"{m}\""))}: "
        + "put it back into the file, or take it out of the map";

    public static string NotOurs(int maps, string propose) =>
        $"the header is not that of our order file, and {(maps == 0 ? "there is no map" : "no map fits it")} in the templates' imports: {propose}";

    public static string NotInMap(string map) =>
        $"the column is not in imports/{map}.toml, so it is printed nowhere: name it there under [columns], as \"notes\" or \"never\" if nothing else";

    public static string Constant(string map, MapTarget target) => $"{target}, a constant of imports/{map}.toml";

    public static string LengthOfNoPiece(IEnumerable<string> pieces) =>
        $"the row also has lengths of {string.Join(", ", pieces)}, and this one is of none of them: name its piece in the map";

    public static string NoLabel(IEnumerable<string> labels) =>
        $"has no label, so it could belong to anything; the labels in the map are {string.Join(", ", labels)}";

    public static string SaidTwice(MapTarget target, string other, string text) =>
        $"{target} is \"{text}\" in {other} already: keep one of them in this row, or mark one as never in the map";

    public static string AQuantity(int most) => FormattableString.Invariant($"expected how many pieces, a whole number from 1 to {most}");

    /// <param name="leftOut">Why, and how many rows.</param>
    public static string ReadBy(string file, string map, int rows, IReadOnlyCollection<(string Why, int Rows)> leftOut)
    {
        var kept = rows == 1 ? "1 row" : $"{rows} rows";
        var text = $"{file}: {kept} read by imports/{map}.toml";
        return leftOut.Count == 0 ? text : $"{text}; left out: {string.Join(", ", leftOut.Select(l => $"{l.Rows} {l.Why}"))}";
    }

    public const string NothingToMap = "there is no row below a header: export a file with some orders in it, and propose a map from that";

    public static string NoOrderFound(IEnumerable<string> headers) =>
        $"no column is an order's number among {string.Join(", ", headers)}: give that column the header Order, and propose again";

    public static string TitleOf(string file) => $"As in {file}";

    public static string OtherUnit(LengthUnit unit) => unit == LengthUnit.Millimeter
        ? "the lengths are too large for inches, so bare numbers are read as mm (unit)"
        : "the lengths are too small for mm, so bare numbers are read as inches (unit)";

    public static string NoLengths(string header, string cell) =>
        $"\"{header}\" reads like a column of lengths, but holds \"{cell}\": it is printed nowhere until the map says what it is";

    public static string SecondColumn(string header, MapTarget target) =>
        $"\"{header}\" seems to be {target} as well, which another column is already: it is printed nowhere until the map says what it is";

    public static string NoPaid(string header, IEnumerable<string> cells) =>
        $"\"{header}\" may say what is paid, but which of {string.Join(", ", cells.Select(c => $"\"{c}\""))} is paid is not clear: all rows are taken; add a [[leave_out]]";

    public static string TakenFor(string item, string plan, string section) =>
        $"\"{item}\" is taken for a {plan}, which its name does not say: see {section} in the map";

    public static string NoPlanFor(string what, string section, IEnumerable<string> plans) =>
        $"which plan {what} is built by is not clear, so its orders are refused until {section} in the map says it: {string.Join(", ", plans)}";

    public static string WhichPiece(string item) =>
        $"which piece \"{item}\" is cannot be seen from its name: say it under [values.piece] and [values.kind] in the map";
}
