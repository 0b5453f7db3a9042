using CsvHelper;

namespace Tagend.Orders;

/// <summary>One record of an order file.</summary>
/// <param name="Line">Where it starts; a cell may hold line ends.</param>
/// <param name="QuoteLine">Where a quote opens that nothing closes; else the same.</param>
/// <param name="SpansLines">It ends on a later line.</param>
/// <param name="Quoting">What is wrong with its quotes.</param>
/// <param name="Cells">Without the quotes, and without spaces around them.</param>
internal sealed record OrderRecord(
    int Line, int QuoteLine, bool SpansLines, CsvMalformedReason? Quoting, IReadOnlyList<string> Cells)
{
    public bool IsEmpty => Cells.All(c => c.Length == 0);

    /// <summary>A first line <c>sep=;</c>, as spreadsheet programs write it.</summary>
    public bool NamesSeparator => Line == 1 && Cells[0] == "sep=";
}

/// <summary>Parts an order file into records: RFC 4180, with comma, semicolon or tab as its header has it.</summary>
internal static class OrderTable
{
    /// <summary>Cells whose text is looked for among those before.</summary>
    private const int MostTexts = 4096;

    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>The records, header first; empty lines are passed over.</summary>
    /// <remarks>A quote inside an unquoted cell is text: it is an inch mark.</remarks>
    public static IEnumerable<OrderRecord> Read(byte[] utf8, char separator)
    {
        CsvMalformedReason? quoting = null;
        var options = CsvReaderOptions.Default with
        {
            Separator = separator,
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            OnMalformedRecord = malformed => quoting = malformed.Reason,
        };
        var texts = new Dictionary<string, string>();
        using var reader = CsvReader.Create(utf8, options);
        while (reader.Read())
        {
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++)
            {
                cells[i] = Once(Printable(reader.GetString(i)).Trim());
            }

            var raw = reader.RawRecord;
            var line = (int)reader.LineNumber;
            var isOpen = quoting == CsvMalformedReason.UnterminatedQuote;
            var quoteLine = isOpen ? line + LinesBeforeOpenQuote(raw, separator) : line;
            yield return new OrderRecord(line, quoteLine, raw.IndexOfAny("\r\n"u8) >= 0, quoting, cells);
            quoting = null;
        }

        // The same materials, colors and bows come again and again.
        string Once(string text) =>
            texts.TryGetValue(text, out var same) || (texts.Count < MostTexts && texts.TryAdd(text, text)) ? same ?? text : text;
    }

    /// <summary>The separator that the first line with text has most of, outside quotes; a comma where it has none.</summary>
    public static char SeparatorOf(ReadOnlySpan<byte> utf8)
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

    /// <summary>With a space for each control character but tabs and line ends.</summary>
    private static string Printable(string cell) => cell.Any(IsUnprintable)
        ? string.Concat(cell.Select(c => IsUnprintable(c) ? ' ' : c))
        : cell;

    private static bool IsUnprintable(char c) => char.IsControl(c) && c is not ('\t' or '\r' or '\n');

    /// <summary>Line ends before the quote that is still open at the end of a record.</summary>
    private static int LinesBeforeOpenQuote(ReadOnlySpan<byte> raw, char separator)
    {
        var (lines, linesBeforeQuote) = (0, 0);
        var (isQuoted, isCellStart) = (false, true);
        for (var i = 0; i < raw.Length; i++)
        {
            var b = raw[i];
            var next = i + 1 < raw.Length ? raw[i + 1] : 0;
            lines += b == '\n' || (b == '\r' && next != '\n') ? 1 : 0;
            if (isQuoted)
            {
                // A doubled quote is one quote of the text.
                i += b == '"' && next == '"' ? 1 : 0;
                isQuoted = b != '"' || next == '"';
            }
            else if (b == '"' && isCellStart)
            {
                (isQuoted, isCellStart, linesBeforeQuote) = (true, false, lines);
            }
            else
            {
                isCellStart = b == separator || (isCellStart && b is (byte)' ' or (byte)'\t');
            }
        }

        return linesBeforeQuote;
    }
}
