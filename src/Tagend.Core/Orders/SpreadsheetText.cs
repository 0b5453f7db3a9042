namespace Tagend.Orders;

/// <summary>Texts in files that spreadsheets open. A text that could be taken for a formula has an apostrophe before it, there and back.</summary>
public static class SpreadsheetText
{
    private const char Apostrophe = '\'';

    /// <summary>What a formula begins with, in half and in full width (U+FF01 to FF60 of The Unicode Standard), and what hides it.</summary>
    private const string Beginnings = "=+-@＝＋－＠\t\r\n";

    /// <summary>As it is written.</summary>
    public static string Guarded(string text) => IsFormula(text) ? Apostrophe + text : text;

    /// <summary>As it was meant: without the apostrophe that <see cref="Guarded"/> has put before it.</summary>
    public static string Plain(string written) => written.Length > 1 && written[0] == Apostrophe && IsFormula(written[1..]) ? written[1..] : written;

    private static bool IsFormula(string text) => text.Length > 0 && Beginnings.Contains(text[0], StringComparison.Ordinal);
}
