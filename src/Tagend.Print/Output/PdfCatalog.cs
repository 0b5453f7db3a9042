using System.Globalization;
using System.Text;

namespace Tagend.Output;

/// <summary>Adds to a PDF what Skia does not write: its language, and that viewers print it unscaled.</summary>
/// <remarks>
/// An incremental update, ISO 32000-1, 7.5.6: the catalog anew, a cross-reference section for it, a trailer that
/// names the one before. PrintScaling and DisplayDocTitle: table 150.
/// </remarks>
internal static class PdfCatalog
{
    private const int Reach = 1024;
    private const int EntryLength = 20;
    private const int OffsetDigits = 10;

    /// <param name="pdf">As Skia wrote it; can be read and moved in. Left at its new end.</param>
    public static void Complete(Stream pdf, string language)
    {
        var length = pdf.Length;
        var tail = Read(pdf, length - Reach);
        var trailer = Between(tail, "trailer\n", ">>\nstartxref");
        var table = Number(Between(tail, "startxref\n", "\n"));
        var root = Number(Between(trailer, "/Root ", " "));
        var pages = Number(Between(Read(pdf, OffsetOf(pdf, table, root)), "<</Type /Catalog\n/Pages ", " 0 R"));

        var catalog =
            $"\n{root} 0 obj\n<</Type /Catalog\n/Pages {pages} 0 R\n/Lang ({language})\n"
            + "/ViewerPreferences <</Type /ViewerPreferences\n/DisplayDocTitle true\n/PrintScaling /None>>>>\nendobj\n";
        var offset = (length + 1).ToString("D10", CultureInfo.InvariantCulture);
        var update =
            $"{catalog}xref\n{root} 1\n{offset} 00000 n \ntrailer\n{trailer}\n/Prev {table}>>\n"
            + $"startxref\n{length + catalog.Length}\n%%EOF\n";
        pdf.Seek(0, SeekOrigin.End);
        pdf.Write(Encoding.Latin1.GetBytes(update));
    }

    /// <summary>Where an object starts, by a cross-reference table of one section that starts with object 0.</summary>
    private static long OffsetOf(Stream pdf, long table, long number)
    {
        var sectionAt = table + "xref\n".Length;
        var head = Between(Read(pdf, table), "xref\n", "\n");
        return Number(Read(pdf, sectionAt + head.Length + 1 + (number * EntryLength))[..OffsetDigits]);
    }

    private static string Read(Stream pdf, long from)
    {
        var start = Math.Max(0, from);
        var bytes = new byte[Math.Min(pdf.Length - start, Reach)];
        pdf.Seek(start, SeekOrigin.Begin);
        pdf.ReadExactly(bytes);
        return Encoding.Latin1.GetString(bytes);
    }

    private static string Between(string text, string before, string after)
    {
        var from = text.IndexOf(before, StringComparison.Ordinal);
        var to = from < 0 ? -1 : text.IndexOf(after, from + before.Length, StringComparison.Ordinal);
        return to < 0
            ? throw new InvalidOperationException($"the PDF has no {before.Trim()} where Skia writes one")
            : text[(from + before.Length)..to];
    }

    private static long Number(string digits) => long.Parse(digits, CultureInfo.InvariantCulture);
}
