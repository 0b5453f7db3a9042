using CsvHelper;

namespace Tagend.Orders;

/// <summary>What is wrong with the quotes of a record that the reader calls malformed.</summary>
/// <remarks>
/// The reader names the first fault alone, and an inch mark in a cell without quotes is one to it: it would hide a quote behind it
/// that is never closed, and with that all rows to the end of the file.
/// </remarks>
internal static class OrderQuotes
{
    private enum Part
    {
        CellStart,
        Text,
        Quoted,
        AfterQuote,
    }

    /// <param name="raw">The record's bytes: UTF-8.</param>
    /// <param name="separator">Between its cells.</param>
    /// <returns>The fault, null for inch marks alone; and how many line ends of the record are before a quote that stays open.</returns>
    public static (CsvMalformedReason? Fault, int LinesBefore) FaultIn(ReadOnlySpan<byte> raw, char separator)
    {
        var (part, fault) = (Part.CellStart, (CsvMalformedReason?)null);
        var (lines, linesBeforeQuote) = (0, 0);
        for (var i = 0; i < raw.Length; i++)
        {
            var b = raw[i];
            var next = i + 1 < raw.Length ? raw[i + 1] : 0;
            lines += b == '\n' || (b == '\r' && next != '\n') ? 1 : 0;
            switch (part)
            {
                case Part.Quoted when b == '"' && next == '"':
                    i++; // one quote of the text
                    break;
                case Part.Quoted:
                    part = b == '"' ? Part.AfterQuote : Part.Quoted;
                    break;
                case var _ when b == separator:
                    part = Part.CellStart;
                    break;
                case Part.CellStart when b == '"':
                    (part, linesBeforeQuote) = (Part.Quoted, lines);
                    break;
                case Part.CellStart or Part.AfterQuote when b is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n':
                    break;
                case Part.AfterQuote:
                    (part, fault) = (Part.Text, CsvMalformedReason.TextAfterClosingQuote);
                    break;
                default:
                    part = Part.Text;
                    break;
            }
        }

        return part == Part.Quoted ? (CsvMalformedReason.UnterminatedQuote, linesBeforeQuote) : (fault, 0);
    }
}
