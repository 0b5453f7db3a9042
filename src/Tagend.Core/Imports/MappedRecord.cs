using System.Globalization;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>One record of a mapped file, and the rows it makes.</summary>
/// <param name="allPieces">That the map has columns of, in its order.</param>
/// <param name="cellOf">A cell by its header.</param>
internal sealed class MappedRecord(
    SourceMap map, List<string> allPieces, string file, int line, Func<string, string> cellOf, List<Problem> problems)
{
    /// <summary>More of one piece in one order are a slip of the hand.</summary>
    private const int MostOfAPiece = 50;

    /// <summary>What a piece named by the map does not take from the cells of the whole row: those are of a row with one piece.</summary>
    private static readonly string[] OfOnePiece = [OrderColumn.Piece, OrderColumn.Kind, MapTarget.Quantity];

    private static readonly string[] Lengths = [OrderColumn.FinishedLength, OrderColumn.BowLength];

    private readonly Dictionary<MapTarget, Value> _values = [];
    private readonly HashSet<MapTarget> _lost = []; // with a text that cannot be used, which is told already
    private readonly List<string> _notes = [];
    private readonly List<(string Piece, string Note)> _notesOfPieces = [];

    /// <summary>A text of the order and where it comes from.</summary>
    private readonly record struct Value(string Text, CellOrigin Origin);

    public IReadOnlyList<LaidRow> Rows()
    {
        foreach (var cell in map.Cells)
        {
            var text = cell.Template.Fill(cellOf);
            foreach (var target in cell.Targets)
            {
                Set(target, text, cell.Title, text, isOneOfSeveral: true);
            }
        }

        foreach (var column in map.Options)
        {
            Take(column);
        }

        var pieces = PiecesNamed();
        foreach (var constant in map.Constants.Where(c => !_values.TryGetValue(c.Target, out var v) || v.Text.Length == 0))
        {
            _values[constant.Target] = new Value(constant.Text, new CellOrigin(ImportWording.Constant(map.Name, constant.Target), constant.Text));
        }

        if (pieces.Count == 0)
        {
            _values.TryAdd(new MapTarget(null, OrderColumn.Piece), new Value("", new CellOrigin(TitlesOfPieces(), "")));
            return Copies(null, 0);
        }

        foreach (var column in Lengths)
        {
            if (_values.TryGetValue(new MapTarget(null, column), out var length) && length.Text.Length > 0)
            {
                problems.Add(At(length.Origin, ImportWording.LengthOfNoPiece(pieces)));
            }
        }

        return [.. pieces.SelectMany(Copies)];
    }

    /// <summary>The options of a text, each to where the map has it.</summary>
    private void Take(OptionColumn column)
    {
        var written = cellOf(column.Header);
        foreach (var targets in column.Labels.SelectMany(l => l.Value.Select(t => (Target: t, Label: l.Key))))
        {
            var origin = $"{column.Header}, {targets.Label}";
            _values.TryAdd(targets.Target, new Value("", new CellOrigin(origin, "")));
        }

        if (written.Length > OrderHeader.MostCharacters)
        {
            problems.Add(OrderHeader.LongCell(new Place(file, line, column.Header), written));
            _lost.UnionWith(column.Labels.Values.SelectMany(t => t));
            return;
        }

        var isAnyLost = false;
        foreach (var (label, text, isKnown) in OptionText.Read(written, [.. column.Labels.Keys]))
        {
            if (label.Length == 0)
            {
                problems.Add(At(new CellOrigin(column.Header, text), ImportWording.NoLabel(column.Labels.Keys)));
                isAnyLost = true;
                continue;
            }

            if (!isKnown)
            {
                _notes.Add($"{label}: {text}");
                continue;
            }

            foreach (var target in column.Labels[label])
            {
                Set(target, text, $"{column.Header}, {label}", text, isOneOfSeveral: false);
            }
        }

        // A text without a label may be of any that has none.
        _lost.UnionWith(column.Labels.Values.SelectMany(t => t).Where(t => isAnyLost && _values[t].Text.Length == 0));
    }

    private void Set(MapTarget target, string text, string title, string written, bool isOneOfSeveral)
    {
        if (map.Blank.Contains(text, StringComparer.OrdinalIgnoreCase))
        {
            text = "";
        }

        if (target.Column == MapTarget.Never)
        {
            return;
        }

        if (target.Column == OrderColumn.Notes)
        {
            AddNote(target, text, title, isOneOfSeveral);
            return;
        }

        if (text.Length > OrderHeader.MostCharacters)
        {
            problems.Add(OrderHeader.LongCell(new Place(file, line, title), text));
            _lost.Add(target);
            return;
        }

        var origin = new CellOrigin(title, written);
        if (_values.TryGetValue(target, out var other) && other.Text.Length > 0 && text.Length > 0)
        {
            problems.Add(At(origin, ImportWording.SaidTwice(target, other.Origin.Column, other.Text)));
            _lost.Add(target);
            return;
        }

        if (text.Length > 0 || !_values.ContainsKey(target))
        {
            _values[target] = new Value(Replaced(target, text), origin);
        }
    }

    private void AddNote(MapTarget target, string text, string title, bool isOneOfSeveral)
    {
        if (text.Length == 0)
        {
            return;
        }

        var several = map.Cells.Count(c => c.Targets.Contains(target)) > 1 || !isOneOfSeveral;
        var note = several ? $"{title}: {text}" : text;
        if (target.Piece is { } piece)
        {
            _notesOfPieces.Add((piece, note));
        }
        else
        {
            _notes.Add(note);
        }
    }

    /// <summary>What the map has for a text of a target; for colors also for each of several.</summary>
    private string Replaced(MapTarget target, string text)
    {
        var values = map.Values.GetValueOrDefault(target.ToString()) ?? map.Values.GetValueOrDefault(target.Column);
        if (values is null || text.Length == 0)
        {
            return text;
        }

        if (values.TryGetValue(Headers.Plain(text), out var whole))
        {
            return whole;
        }

        return target.Column == OrderColumn.Colors
            ? string.Concat(ColorsReader.Parts(text).Select(p => values.GetValueOrDefault(Headers.Plain(p), p)))
            : text;
    }

    /// <summary>The pieces with a text of their own in this record; a kind alone makes none.</summary>
    private List<string> PiecesNamed() =>
    [
        .. _values
            .Where(v => v.Key.Piece is not null && v.Key.Column != OrderColumn.Kind && v.Value.Text.Length > 0
                && !(v.Key.Column == MapTarget.Quantity && v.Value.Text.Trim() == "0"))
            .Select(v => v.Key.Piece!)
            .Distinct()
            .OrderBy(p => allPieces.IndexOf(p)),
    ];

    /// <summary>Where a record could name a piece.</summary>
    private string TitlesOfPieces()
    {
        var titles = _values.Where(v => v.Key.Piece is not null && Lengths.Contains(v.Key.Column)).Select(v => v.Value.Origin.Column);
        return string.Join(", ", titles) is { Length: > 0 } all ? all : OrderColumn.Piece;
    }

    /// <param name="piece">Null for the only piece of the record.</param>
    /// <param name="isLater">Not the first piece of the record: what is packed with the row is packed once.</param>
    private IEnumerable<LaidRow> CopiesOf(string? piece, int count, bool isLater)
    {
        var targets = _values.Keys
            .Where(t => t.Piece == piece || (t.Piece is null && !OfOnePiece.Contains(t.Column) && !Lengths.Contains(t.Column)))
            .Select(t => t.Column)
            .Where(c => c != MapTarget.Quantity && !(c == OrderColumn.Accessories && isLater))
            .Distinct()
            .ToList();
        if (piece is not null)
        {
            targets.Add(OrderColumn.Piece);
        }

        var values = targets.ConvertAll(c => c == OrderColumn.Piece && piece is not null ? Named(piece) : ValueOf(piece, c));
        var name = targets.IndexOf(OrderColumn.Piece);
        string?[] columns = [.. targets];
        CellOrigin?[] origins = [.. values.Select(v => v.Origin)];
        var notes = string.Join('\n', _notesOfPieces.Where(n => n.Piece == piece).Select(n => n.Note).Concat(_notes)).ReplaceLineEndings("\n");
        for (var i = 1; i <= count; i++)
        {
            string[] cells = [.. values.Select(v => v.Text)];
            if (name >= 0 && count > 1 && cells[name].Length > 0)
            {
                cells[name] = FormattableString.Invariant($"{cells[name]} {i}");
            }

            var row = new OrderRow(file, line, columns, cells, origins);
            yield return new LaidRow(_lost.Count == 0 ? row : row.Without(LostOf(piece)), notes);
        }
    }

    /// <summary>The columns of a row that nothing is known of; of a record that names no piece, with a lost text of one, what it is too.</summary>
    private IEnumerable<string> LostOf(string? piece)
    {
        var ofRow = _lost.Where(t => t.Piece == piece || (t.Piece is null && !OfOnePiece.Contains(t.Column) && !Lengths.Contains(t.Column)));
        return ofRow.Select(t => t.Column).Concat(
            piece is null && _lost.Any(t => t.Piece is not null) ? [OrderColumn.Piece, OrderColumn.Kind, .. Lengths] : []);
    }

    private IReadOnlyList<LaidRow> Copies(string? piece, int index) => [.. CopiesOf(piece, CountOf(piece), index > 0)];

    private Value Named(string piece) => new(piece, _values.First(v => v.Key.Piece == piece && v.Value.Text.Length > 0).Value.Origin);

    /// <summary>A piece's own text, or that of the whole row where it has none.</summary>
    private Value ValueOf(string? piece, string column)
    {
        var hasOwn = _values.TryGetValue(new MapTarget(piece, column), out var own);
        var ofRow = piece is not null && !OfOnePiece.Contains(column) && !Lengths.Contains(column)
            ? _values.GetValueOrDefault(new MapTarget(null, column))
            : default;
        return hasOwn && (own.Text.Length > 0 || ofRow.Origin is null) ? own : ofRow;
    }

    /// <returns>1, with a problem, where it cannot be read.</returns>
    private int CountOf(string? piece)
    {
        if (!_values.TryGetValue(new MapTarget(piece, MapTarget.Quantity), out var quantity) || quantity.Text.Length == 0)
        {
            return 1;
        }

        var isNumber = decimal.TryParse(quantity.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number);
        if (isNumber && number == decimal.Truncate(number) && number is >= 1 and <= MostOfAPiece)
        {
            return (int)number;
        }

        problems.Add(At(quantity.Origin, ImportWording.AQuantity(MostOfAPiece)));
        return 1;
    }

    private Problem At(CellOrigin origin, string message) => new(new Place(file, line, origin.Column), origin.Text, message);
}
