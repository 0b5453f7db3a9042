using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>What is said about an order's cells: every sentence in one place, so that tests can hold it.</summary>
internal static class OrderWording
{
    public const string Length = "expected a length such as 60 1/4, 60.25 in or 1530 mm";

    /// <summary>Added to a length that is out of all measure.</summary>
    public static string UnitMeant(string text, LengthUnit unit) =>
        $"; did you mean {text} {LengthWriter.Symbol(unit)}?";

    public const string EatenFraction =
        "this is a date, and a spreadsheet makes one of a fraction such as 1/2: format the column as text there, and type it again";

    public const string NoDate =
        "is not a date, so the order cannot be sorted by it: expected one such as 2026-12-04 or 4 Dec";

    public static string TwoDates(DateOnly first, DateOnly second) =>
        $"may be {DateWriter.Iso(first)} or {DateWriter.Iso(second)}, so the order cannot be sorted by it: say with dates in shop.toml which number is the month, or write it such as 4 Dec";

    public const string Force = "expected a force such as 70, 70 lb or 311 N";
    public const string Position = "expected a place such as 26 1/4 (from end A) or B 8";
    public const string Positions = "expected places such as A 3; B 7 1/2";

    public const string NoServing = "expected servings such as A 0..7 1/2 t021 black; B 0..8 t021";
    public const string OneServing = "expected one serving such as 26 1/4..31 t021 red";

    public const string NoColor = "expected colors such as black:12 red:12, or black red to share the strands equally";
    public const string MixedColors = "give every color its number of strands, or none of them";

    public static string InItem(int number, string item, string message) => $"item {number} \"{item}\": {message}";

    public const string ServingPlaces = "expected where it starts and ends, such as A 0..7 1/2 t021 black";

    public static string ServingStart(string text) => $"cannot read where it starts, \"{text}\": {Length}";

    public static string ServingEnd(string text) => $"cannot read where it ends, \"{text}\": {Length}";

    public const string ServingUnits = "give both lengths their unit, or neither";

    public const string ServingOrder = "it must end farther from its end of the piece than it starts";

    public static string ColorWords(string words) =>
        $"\"{words}\": write a color's strands behind a colon, as in black:12";

    public static string ColorName(string name) =>
        $"\"{name}\": a color is letters, digits and hyphens with at least one letter, and its strands follow as in black:12";

    public static string ColorStrands(string color) =>
        $"\"{color}\": strands are a whole number above 0";

    public static string ColorTwice(string name) => $"\"{name}\" is named twice";

    public const string NameEmpty = "expected a name of letters and digits";

    public static string NameLong(int most) => $"a name has at most {most} characters";

    public static string NameCharacter(string character) =>
        $"a name has letters, digits, spaces, hyphens, points and underscores only, not {character}";

    public const string NameEnds = "a name starts and ends with a letter or a digit";

    public const string Order = "the row names no order: every row of a set needs the set's number";
    public const string Piece = "the row names no piece: expected a name such as string, buss or yoke";

    public const string NoLength =
        "the row has no length: give finished_length, or the bow_length of a recurve or longbow";

    public const string BothLengths =
        "finished_length and bow_length are both given and may differ: keep one of them";

    public const string LengthRange = "expected a length above 0 and below 10 m (393 11/16 in)";
    public const string Revision = "expected a revision number from 1 to 999";
    public const string Strands = "expected an even whole number of strands such as 24";
    public const string DrawWeight = "a draw weight is above 0 and below 2,000 lbf";
    public const string NockGroove = "expected the width of an arrow nock's throat, above 0 and below 1/2 in";
    public const string Twists = "expected turns per inch from 0 to 5, such as 0.75";

    public const string Units = "expected in or mm, the units of the customer's sheet";

    public static string OddStrands(int strands) =>
        $"strands are laid in loops of two, so their number is even: {strands - 1} or {strands + 1}";

    /// <summary>A line, with its file's name where that is another than the one read.</summary>
    public static string Line(string file, int line, string current) =>
        file == current ? $"line {line}" : $"line {line} of {file}";

    public static string PieceTwice(string order, string line) =>
        $"order {order} already has a piece of that name in {line}: give each piece of a set its own name";

    public static string Disagrees(string order, string line, string other) =>
        $"order {order} has \"{other}\" in {line}: give it once, or repeat it in every row of the set";

    public const string EmptyFile = "the file is empty: expected a header such as order,piece,kind,finished_length and a row for each piece";
    public const string HeaderOnly = "there are no rows below the header: add one for each piece";

    public static string NoColumn(string headers) =>
        $"there is no such column among {headers}: add it, or map yours under [columns] in shop.toml";

    public static string NoLengthColumn(string headers) =>
        $"there is neither this column nor bow_length among {headers}: add one, or map yours under [columns] in shop.toml";

    public static string NearColumn(string meant) =>
        $"did you mean {meant}? Rename the column, or say what it is under [columns] in shop.toml (\"notes\" if it is only to be printed)";

    public static string LongTitle(int length, int most) => FormattableString.Invariant(
        $"the header has a name of {length} characters, and names have at most {most}: check that this is the right file, and whether a quote is missing in it");

    public static string ManyColumns(int columns, int most) => FormattableString.Invariant(
        $"the header has {columns} columns, and an order file has {most} at most: check that this is the right file, and its separators");

    public static string LongCell(int length, int most) => FormattableString.Invariant(
        $"has {length} characters, and no page has room for more than {most}: shorten it, or see whether a quote is missing in the file");

    public const string ColumnTwice = "two columns have this meaning: remove or rename one";
    public const string NoHeader = "is in a column without a name: name it in the header, or clear the cell";

    public static string CellCount(int cells, int expected) => cells > expected
        ? $"the row has {cells} cells and the header {expected}: put quotes around a cell that holds the separator"
        : $"the row has {cells} cells and the header {expected}: a cell or a separator is missing";

    public const string TextAfterQuote =
        "text follows a closing quote: double the quotes inside a quoted cell, as in \"60 1/4\"\"\"";

    public const string OpenQuote =
        "the quote that opens here is never closed: close it, or double it if it is an inch mark in a quoted cell";

    public const string RowsMayBeLost =
        "the row spans several lines, so rows may be lost in it: nothing in this file is printed until it is fixed";

    public const string NotUtf16 = "the file starts as UTF-16 but is damaged: save it again as \"CSV UTF-8\"";
    public const string Workbook = "this is a spreadsheet's own file: save it from there as \"CSV UTF-8\"";
    public const string NotText = "the file is not UTF-8 text: save it as \"CSV UTF-8\"";

    public static string NotUtf8(byte value) =>
        $"byte {value:X2} is not UTF-8, so a letter of this line would be guessed: save the file as \"CSV UTF-8\"";

    public static string NotFound(string path) => $"cannot find {path}: check its name and folder";

    public static string IsFolder(string path) => $"{path} is a folder: name the CSV file of orders in it";

    public static string TooBig(string path, int megabytes) =>
        $"{path} is larger than {megabytes} MB, more than any file of orders: check that it is the right one, or split it";

    public static string Unreadable(string path, string reason) =>
        $"cannot read {path}: {reason.TrimEnd('.')}; close it in other programs and check that you may read it";
}
