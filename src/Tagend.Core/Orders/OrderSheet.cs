using System.Text;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>One row of an order file, as it is written.</summary>
/// <param name="Line">The line of the file it starts on, from 1.</param>
/// <param name="Cells">The texts without quotes and without spaces around them; as many as the row has.</param>
public sealed record SheetRow(int Line, IReadOnlyList<string> Cells)
{
    /// <summary>The text of a cell; empty where the row is shorter.</summary>
    /// <param name="column">From 0.</param>
    public string this[int column] => column >= 0 && column < Cells.Count ? Cells[column] : "";
}

/// <summary>
/// An order file as a table of texts, to be mended cell by cell: whatever its cells say. What is not changed stays as it is,
/// byte for byte. Immutable.
/// </summary>
/// <remarks>A row that is changed is written by RFC 4180 with the separator that the file has.</remarks>
public sealed class OrderSheet
{
    private readonly byte[] _utf8;
    private readonly char _separator;
    private readonly List<OrderRecord> _records;

    private OrderSheet(byte[] utf8)
    {
        _utf8 = utf8;
        var table = new OrderTable(utf8);
        _separator = table.Separator;
        _records = [.. table.Records().Where(r => !r.IsEmpty)];
        Rows = [.. _records.Skip(1).Select(r => new SheetRow(r.Line, r.Cells))];
    }

    /// <summary>The texts of the header; none where the file is empty.</summary>
    public IReadOnlyList<string> Titles => _records.Count > 0 ? _records[0].Cells : [];

    /// <summary>The line of the file that the header is on, from 1; 0 where there is none.</summary>
    public int HeaderLine => _records.Count > 0 ? _records[0].Line : 0;

    /// <summary>The rows below the header; empty lines are passed over.</summary>
    public IReadOnlyList<SheetRow> Rows { get; }

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="file">The name that messages have.</param>
    /// <param name="bytes">UTF-8, or UTF-16 with its mark.</param>
    /// <param name="problems">Gets what keeps the bytes from being text.</param>
    /// <returns>Null where they are no text that is read.</returns>
    public static OrderSheet? Read(string file, byte[] bytes, ICollection<Problem> problems)
    {
        var found = new List<Problem>();
        var text = OrderText.Read(file, bytes, found);
        found.ForEach(problems.Add);
        return text is null ? null : new OrderSheet(text);
    }

    /// <summary>A new file with a header and no rows.</summary>
    /// <param name="titles">One at least.</param>
    public static OrderSheet Begin(IReadOnlyList<string> titles) =>
        new([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(RowText(titles, ',') + "\r\n")]);

    /// <summary>Our name of each column; null for one that is kept as a note.</summary>
    /// <param name="aliases">The shop's names for columns, to ours.</param>
    public IReadOnlyList<string?> Columns(IReadOnlyDictionary<string, string> aliases) => OrderHeader.ColumnsOf(Titles, aliases);

    /// <summary>The file's bytes: UTF-8.</summary>
    public byte[] ToBytes() => _utf8;

    /// <summary>The same file with another text in a cell.</summary>
    /// <param name="row">From 0; −1 for the header.</param>
    /// <param name="column">From 0; cells that the row lacks before it are empty.</param>
    public OrderSheet WithCell(int row, int column, string text)
    {
        var cells = _records[row + 1].Cells.ToList();
        cells.AddRange(Enumerable.Repeat("", Math.Max(0, column + 1 - cells.Count)));
        cells[column] = text;
        return With([(row + 1, cells)]);
    }

    /// <summary>The same file with one more column, empty in every row.</summary>
    public OrderSheet WithColumn(string title)
    {
        var count = Titles.Count;
        return With(_records.Select((r, i) => (i, (IReadOnlyList<string>)
            [.. r.Cells.Take(count), .. Enumerable.Repeat("", Math.Max(0, count - r.Cells.Count)), i == 0 ? title : "", .. r.Cells.Skip(count)])));
    }

    /// <summary>The same file with one more row at its end.</summary>
    /// <param name="cells">In the order of the header.</param>
    public OrderSheet WithRow(IReadOnlyList<string> cells)
    {
        var isLineOpen = _utf8.Length > 0 && _utf8[^1] is not ((byte)'\n' or (byte)'\r');
        return new OrderSheet([.. _utf8, .. Encoding.UTF8.GetBytes($"{(isLineOpen ? LineEnd : "")}{RowText(cells, _separator)}{LineEnd}")]);
    }

    /// <summary>The same file without a row.</summary>
    /// <param name="row">From 0.</param>
    public OrderSheet WithoutRow(int row)
    {
        var place = _records[row + 1].Place;
        var end = place.Offset + place.Length;
        end += _utf8.AsSpan(end).StartsWith("\r\n"u8) ? 2 : end < _utf8.Length ? 1 : 0;
        return new OrderSheet([.. _utf8.AsSpan(0, place.Offset), .. _utf8.AsSpan(end)]);
    }

    private string LineEnd => _utf8.AsSpan().IndexOf("\r\n"u8) >= 0 ? "\r\n" : "\n";

    private OrderSheet With(IEnumerable<(int Record, IReadOnlyList<string> Cells)> changed)
    {
        var bytes = new MemoryStream(_utf8.Length + 64);
        var at = 0;
        foreach (var (record, cells) in changed)
        {
            var place = _records[record].Place;
            bytes.Write(_utf8.AsSpan(at, place.Offset - at));
            bytes.Write(Encoding.UTF8.GetBytes(RowText(cells, _separator)));
            at = place.Offset + place.Length;
        }

        bytes.Write(_utf8.AsSpan(at));
        return new OrderSheet(bytes.ToArray());
    }

    private static string RowText(IEnumerable<string> cells, char separator) => string.Join(separator, cells.Select(c => Cell(c, separator)));

    private static string Cell(string text, char separator) =>
        text.AsSpan().ContainsAny(['"', '\r', '\n', separator]) || text != text.Trim() ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
