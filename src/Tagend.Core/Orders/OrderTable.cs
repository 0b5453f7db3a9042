using System.Globalization;
using System.Text;
using CsvHelper;
using Tagend.Problems;

namespace Tagend.Orders;

/// <summary>Where a record stands in its file.</summary>
/// <param name="Line">Where it starts; a cell may hold line ends.</param>
/// <param name="Offset">Of its first byte.</param>
/// <param name="Length">In bytes, without the line end behind it.</param>
internal readonly record struct RecordPlace(int Line, int Offset, int Length);

/// <summary>One record of an order file.</summary>
/// <param name="QuoteLine">Where a quote opens that nothing closes; else the same.</param>
/// <param name="SpansLines">It ends on a later line.</param>
/// <param name="Quoting">What is wrong with its quotes.</param>
/// <param name="Cells">Without the quotes, and without spaces around them.</param>
internal sealed record OrderRecord(
    RecordPlace Place, int QuoteLine, bool SpansLines, CsvMalformedReason? Quoting, IReadOnlyList<string> Cells)
{
    public int Line => Place.Line;

    public bool IsEmpty => Cells.All(c => c.Length == 0);

    /// <summary>What is wrong with the record below a header of so many columns, as a whole; null where nothing is.</summary>
    public Problem? Fault(string file, int columns)
    {
        Problem Of(int line, string message) => new(new Place(file, line), null, message);

        if (Quoting == CsvMalformedReason.UnterminatedQuote)
        {
            return Of(QuoteLine, OrderWording.OpenQuote);
        }

        if (Quoting == CsvMalformedReason.TextAfterClosingQuote)
        {
            return Of(Line, OrderWording.TextAfterQuote);
        }

        var isPadded = Cells.Skip(columns).All(c => c.Length == 0);
        return Cells.Count < columns || !isPadded ? Of(Line, OrderWording.CellCount(Cells.Count, columns)) : null;
    }
}

/// <summary>Splits an order file into records: RFC 4180, with comma, semicolon or tab as its header has it.</summary>
internal sealed class OrderTable(byte[] utf8)
{
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>What stands between cells: comma, semicolon or tab.</summary>
    public char Separator { get; } = SeparatorOf(utf8);

    /// <summary>In bytes.</summary>
    public int Length => utf8.Length;

    /// <summary>The records, header first; empty lines, and a first line <c>sep=;</c> of a spreadsheet program, are passed over.</summary>
    /// <remarks>A quote inside an unquoted cell is text: it is an inch mark.</remarks>
    public IEnumerable<OrderRecord> Records()
    {
        var isMalformed = false;
        var options = CsvReaderOptions.Default with
        {
            Separator = Separator,
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            OnMalformedRecord = _ => isMalformed = true,
        };
        using var reader = CsvReader.Create(utf8, options);
        while (reader.Read())
        {
            var raw = reader.RawRecord;
            var place = new RecordPlace((int)reader.LineNumber, (int)reader.ByteOffset, raw.Length);
            var (quoting, linesBefore) = isMalformed ? OrderQuotes.FaultIn(raw, Separator) : (null, 0);
            yield return new OrderRecord(place, place.Line + linesBefore, raw.IndexOfAny("\r\n"u8) >= 0, quoting, CellsOf(reader));
            isMalformed = false;
        }
    }

    private static string[] CellsOf(CsvReader reader)
    {
        var cells = new string[reader.FieldCount];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = SpreadsheetText.Plain(Printable(reader.GetString(i)).Trim());
        }

        return cells;
    }

    /// <summary>The separator that the first line with text has most of, outside quotes; a comma where it has none.</summary>
    private static char SeparatorOf(ReadOnlySpan<byte> utf8)
    {
        var counts = new int[Separators.Length];
        var isQuoted = false;
        var hasText = false;
        foreach (var b in utf8)
        {
            if (b is (byte)'\r' or (byte)'\n' && hasText && !isQuoted)
            {
                break;
            }

            hasText |= b > ' ';
            isQuoted ^= b == '"';
            var separator = Array.IndexOf(Separators, (char)b);
            if (separator >= 0 && !isQuoted)
            {
                counts[separator]++;
            }
        }

        return Separators[Array.IndexOf(counts, counts.Max())];
    }

    /// <summary>With a space for each control character but tabs and line ends, and without marks that only change how others are shown.</summary>
    private static string Printable(string cell) => ShownText.IsShown(cell) ? cell : string.Concat(cell.EnumerateRunes().Select(c =>
        ShownText.IsShown(c) || c.Value is '\t' or '\r' or '\n' ? c.ToString() : Rune.GetUnicodeCategory(c) == UnicodeCategory.Format ? "" : " "));
}
