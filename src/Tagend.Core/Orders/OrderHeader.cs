using System.Diagnostics.CodeAnalysis;
using Tagend.Measures;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>Which column of a file is which.</summary>
/// <param name="titles">The header's cells as written.</param>
/// <param name="columns">For each of them our name; null for a column that is kept as a note.</param>
internal sealed class OrderHeader(string file, IReadOnlyList<string> titles, string?[] columns) : IOrderLayout
{
    private static readonly char[] WordSeparators = [' ', '-', '_', '#', '.', '\t', '\r', '\n', '\u00A0'];

    // Spelled otherwise elsewhere.
    private static readonly Dictionary<string, string> OtherSpellings = new()
    {
        ["colours"] = OrderColumn.Colors,
        ["color"] = OrderColumn.Colors,
        ["colour"] = OrderColumn.Colors,
        ["centre_serving"] = OrderColumn.CenterServing,
        ["note"] = OrderColumn.Notes,
    };

    /// <summary>Shorter names are too easily near another word: row, box and bow.</summary>
    private const int ShortestNearName = 5;

    /// <summary>Many more than any order needs; what has more is another file.</summary>
    private const int MostColumns = 250;

    private const int ShownOfLong = 40;

    /// <summary>Of a column's name; what is longer would be compared with every name there is.</summary>
    private const int LongestTitle = 200;

    /// <summary>Of a cell, and of all notes of a piece together: more than a card's whole page.</summary>
    internal const int MostCharacters = 4_000;

    public bool NumbersRepeats => false;

    public LengthUnit? Unit => null;

    /// <summary>The file names no pieces: each row is a bow of the book.</summary>
    public bool IsByBow { get; private init; }

    /// <summary>Its headers as written.</summary>
    public IReadOnlyList<string> Titles => titles;

    private readonly int _orderAt = columns.TakeWhile(c => c != OrderColumn.Order).Count();

    /// <summary>Reads a header.</summary>
    /// <param name="aliases">The shop's names for columns, to ours.</param>
    /// <param name="hasBows">Pieces and lengths may be left out of a file that names bows.</param>
    /// <param name="header">Null, with problems added, where a column is missing, double or perhaps misspelled.</param>
    public static bool TryRead(
        string file,
        OrderRecord record,
        IReadOnlyDictionary<string, string> aliases,
        bool hasBows,
        List<Problem> problems,
        [NotNullWhen(true)] out OrderHeader? header)
    {
        var titles = record.Cells.Reverse().SkipWhile(t => t.Length == 0).Reverse().ToList();
        var columns = ColumnsOf(titles, aliases);
        var faults = new List<Problem>();
        Problem Fault(string column, string message) => new(new Place(file, record.Line, column), null, message);

        var unknown = titles.Where((title, i) => columns[i] is null && title.Length > 0).ToList();
        var known = string.Join(", ", titles.Where(t => t.Length > 0));
        foreach (var twice in columns.OfType<string>().GroupBy(c => c).Where(g => g.Count() > 1))
        {
            faults.Add(Fault(twice.Key, OrderWording.ColumnTwice));
        }

        var isByBow = hasBows && columns.Contains(OrderColumn.Bow) && !columns.Contains(OrderColumn.Piece);
        foreach (var column in new[] { OrderColumn.Order, OrderColumn.Piece }.Where(c => !columns.Contains(c) && !(isByBow && c == OrderColumn.Piece)))
        {
            faults.Add(Missing(OrderWording.NoColumn(known), column));
        }

        if (!isByBow && !(hasBows && columns.Contains(OrderColumn.Bow))
            && !columns.Contains(OrderColumn.FinishedLength) && !columns.Contains(OrderColumn.BowLength))
        {
            faults.Add(Missing(OrderWording.NoLengthColumn(known), OrderColumn.FinishedLength, OrderColumn.BowLength));
        }

        faults.AddRange(
            from title in unknown
            where !faults.Exists(f => f.At.Column == title)
            let meant = OrderColumn.All.FirstOrDefault(c => !columns.Contains(c) && (IsSlip(Plain(title), c) || EndsWithIt(Plain(title), c)))
            where meant is not null && !faults.Exists(f => f.At.Column == meant)
            select Fault(title, OrderWording.NearColumn(meant)));

        // At the column that is probably meant, where there is one.
        Problem Missing(string message, params ReadOnlySpan<string> wanted)
        {
            foreach (var column in wanted)
            {
                if (NearestName.To(column, unknown.Select(Plain).Where(IsWords)) is { } near)
                {
                    return Fault(unknown.Find(t => Plain(t) == near)!, OrderWording.NearColumn(column));
                }
            }

            return Fault(wanted[0], message);
        }

        problems.AddRange(faults);
        header = faults.Count == 0 ? new OrderHeader(file, titles, columns) { IsByBow = isByBow } : null;
        return header is not null;
    }

    /// <summary>Our name of each column of a header; null for one that is kept as a note.</summary>
    public static string?[] ColumnsOf(IReadOnlyList<string> titles, IReadOnlyDictionary<string, string> aliases)
    {
        var names = Names(aliases);
        string?[] columns = [.. titles.Select(title => names.GetValueOrDefault(Plain(title)))];
        for (var i = 0; i < columns.Length; i++)
        {
            // Of several columns of notes the first is the notes, and the others are kept beside them.
            columns[i] = columns[i] == OrderColumn.Notes && columns.AsSpan(0, i).Contains(OrderColumn.Notes) ? null : columns[i];
        }

        return columns;
    }

    /// <summary>A record's cells by column, with its notes and every unknown column's text added to them.</summary>
    public IReadOnlyList<LaidRow> Rows(int line, IReadOnlyList<string> written, List<Problem> problems)
    {
        var cells = written as string[] is { } whole && whole.Length == titles.Count ? whole : [.. written.Take(titles.Count)];
        var (extras, unusable) = (new List<string>(), new List<string>());
        for (var i = 0; i < titles.Count; i++)
        {
            if (cells[i].Length > MostCharacters)
            {
                problems.Add(TooLong(titles[i], cells[i]));
                cells = [.. cells]; // those of the record stay as they are
                cells[i] = "";
                unusable.AddRange(columns[i] is { } column ? [column] : []);
            }
            else if (cells[i].Length > 0 && columns[i] is null)
            {
                if (titles[i].Length > 0)
                {
                    extras.Add($"{titles[i]}: {cells[i]}");
                }
                else
                {
                    problems.Add(new Problem(new Place(file, line), cells[i], OrderWording.NoHeader));
                }
            }
        }

        var row = new OrderRow(file, line, columns, cells);
        var own = row[OrderColumn.Notes];
        var notes = (extras.Count == 0 ? own ?? "" : string.Join('\n', extras.Prepend(own).OfType<string>())).ReplaceLineEndings("\n");
        if (notes.Length > MostCharacters)
        {
            problems.Add(TooLong(OrderColumn.Notes, notes));
            notes = "";
        }

        return [new LaidRow(unusable.Count == 0 ? row : row.Without(unusable), notes)];

        Problem TooLong(string column, string text) => LongCell(new Place(file, line, column), text);
    }

    public string? Remark(string file) => null;

    /// <summary>What is wrong with a header by its size; null where nothing is.</summary>
    internal static Problem? TooLarge(string file, OrderRecord header)
    {
        var last = header.Cells.ToList().FindLastIndex(c => c.Length > 0) + 1;
        var place = new Place(file, header.Line);
        return last > MostColumns ? new Problem(place, null, OrderWording.ManyColumns(last, MostColumns))
            : header.Cells.FirstOrDefault(c => c.Length > LongestTitle) is { } title
                ? new Problem(place, $"{title[..ShownOfLong]}…", OrderWording.LongTitle(title.Length, LongestTitle))
                : null;
    }

    /// <summary>A cell that no page has room for.</summary>
    internal static Problem LongCell(Place place, string text) =>
        new(place, $"{text[..ShownOfLong]}…", OrderWording.LongCell(text.Length, MostCharacters));

    public Problem? Fault(OrderRecord record) => record.Fault(file, titles.Count);

    public string? OrderOf(OrderRecord record) =>
        _orderAt < record.Cells.Count && NameReader.TryReadOrder(record.Cells[_orderAt], out var order, out _)
            ? order
            : null;

    private static Dictionary<string, string> Names(IReadOnlyDictionary<string, string> aliases)
    {
        var names = OrderColumn.All.ToDictionary(c => c);
        foreach (var (theirs, ours) in OtherSpellings.Concat(aliases).Where(a => OrderColumn.All.Contains(a.Value)))
        {
            names[Plain(theirs)] = ours;
        }

        return names;
    }

    /// <summary>In lower case, with underscores for spaces and hyphens.</summary>
    private static string Plain(string title) =>
        string.Join('_', title.ToLowerInvariant().Split(WordSeparators, StringSplitOptions.RemoveEmptyEntries));

    private static bool IsWords(string title) => title.All(c => char.IsLetterOrDigit(c) || c == '_');

    /// <summary>A longer name for one of ours: string colors, number of strands. Not for what has a length of its own kind.</summary>
    private static bool EndsWithIt(string title, string column) =>
        column.Length >= ShortestNearName && (title.EndsWith($"_{column}", StringComparison.Ordinal)
            || (column == OrderColumn.Colors && (title.EndsWith("_color", StringComparison.Ordinal) || title.EndsWith("_colour", StringComparison.Ordinal)
                || title.EndsWith("_colours", StringComparison.Ordinal))));

    private static bool IsSlip(string title, string column) =>
        column.Length >= ShortestNearName && NearestName.Changes(title, column) <= Math.Max(1, column.Length / 4);
}
