using System.Globalization;
using System.Text;

namespace Tagend.Output;

/// <summary>Adds to a PDF what Skia does not write: its language, bookmarks, and that viewers print it unscaled.</summary>
/// <remarks>
/// An incremental update, ISO 32000-1, 7.5.6: the catalog anew, objects for the bookmarks, a cross-reference section for
/// them, a trailer that names the one before. PrintScaling and DisplayDocTitle: table 150.
/// </remarks>
internal sealed class PdfCatalog
{
    private const int Reach = 1024;
    private const int EntryLength = 20;
    private const int OffsetDigits = 10;

    private readonly Stream _pdf;
    private readonly string _trailer;
    private readonly long _table;
    private readonly long _root;
    private readonly long _size;
    private readonly long _firstEntry;

    private PdfCatalog(Stream pdf)
    {
        _pdf = pdf;
        var tail = Read(pdf.Length - Reach);
        _trailer = Between(tail, "trailer\n", ">>\nstartxref");
        _table = Number(Between(tail, "startxref\n", "\n"));
        _root = Number(Between(_trailer, "/Root ", " "));
        _size = Number(Between(_trailer, "/Size ", "\n"));
        _firstEntry = _table + "xref\n".Length + Between(Read(_table), "xref\n", "\n").Length + 1;
    }

    /// <param name="pdf">As Skia wrote it; can be read and moved in. Left at its new end.</param>
    /// <param name="bookmarks">Title and page, counted from 0, in order.</param>
    public static void Complete(Stream pdf, string language, IReadOnlyList<(string Title, int Page)> bookmarks) =>
        new PdfCatalog(pdf).Append(language, bookmarks);

    private void Append(string language, IReadOnlyList<(string Title, int Page)> bookmarks)
    {
        var tree = Number(Between(Read(OffsetOf(_root)), "<</Type /Catalog\n/Pages ", " 0 R"));
        var pages = new List<long>();
        if (bookmarks.Count > 0)
        {
            Leaves(tree, pages);
        }

        var outlines = bookmarks.Count > 0 ? $"/Outlines {_size} 0 R\n" : "";
        var catalog =
            $"<</Type /Catalog\n/Pages {tree} 0 R\n{outlines}/Lang ({language})\n"
            + "/ViewerPreferences <</Type /ViewerPreferences\n/DisplayDocTitle true\n/PrintScaling /None>>>>";
        var start = _pdf.Length;
        var update = new StringBuilder("\n");
        var catalogAt = start + update.Length;
        update.Append(CultureInfo.InvariantCulture, $"{_root} 0 obj\n{catalog}\nendobj\n");
        var bookmarksAt = new List<long>();
        foreach (var (number, content) in Outline(bookmarks, pages).Index())
        {
            bookmarksAt.Add(start + update.Length);
            update.Append(CultureInfo.InvariantCulture, $"{_size + number} 0 obj\n{content}\nendobj\n");
        }

        var tableAt = start + update.Length;
        update.Append(CultureInfo.InvariantCulture, $"xref\n{_root} 1\n{Entry(catalogAt)}");
        if (bookmarksAt.Count > 0)
        {
            update.Append(CultureInfo.InvariantCulture, $"{_size} {bookmarksAt.Count}\n{string.Concat(bookmarksAt.Select(Entry))}");
        }

        var trailer = _trailer.Replace($"/Size {_size}\n", $"/Size {_size + bookmarksAt.Count}\n", StringComparison.Ordinal);
        update.Append(CultureInfo.InvariantCulture, $"trailer\n{trailer}\n/Prev {_table}>>\nstartxref\n{tableAt}\n%%EOF\n");
        _pdf.Seek(0, SeekOrigin.End);
        _pdf.Write(Encoding.Latin1.GetBytes(update.ToString()));
    }

    /// <summary>The outline and its items, ISO 32000-1, 12.3.3; numbered from the first free object.</summary>
    private IEnumerable<string> Outline(IReadOnlyList<(string Title, int Page)> bookmarks, List<long> pages)
    {
        if (bookmarks.Count == 0)
        {
            yield break;
        }

        var (first, last) = (_size + 1, _size + bookmarks.Count);
        yield return $"<</Type /Outlines\n/First {first} 0 R\n/Last {last} 0 R\n/Count {bookmarks.Count}>>";
        for (var i = 0; i < bookmarks.Count; i++)
        {
            var previous = i > 0 ? $"/Prev {first + i - 1} 0 R\n" : "";
            var next = i < bookmarks.Count - 1 ? $"/Next {first + i + 1} 0 R\n" : "";
            yield return $"<</Title <FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(bookmarks[i].Title))}>\n"
                + $"/Parent {_size} 0 R\n{previous}{next}/Dest [{pages[bookmarks[i].Page]} 0 R /Fit]>>";
        }
    }

    /// <summary>Object numbers of all pages under a node of the page tree, in order.</summary>
    private void Leaves(long node, List<long> pages)
    {
        var text = Read(OffsetOf(node));
        if (!text.StartsWith($"{node} 0 obj\n<</Type /Pages\n", StringComparison.Ordinal))
        {
            pages.Add(node);
            return;
        }

        foreach (var kid in Between(text, "/Kids [", "]").Split(" 0 R", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            Leaves(Number(kid), pages);
        }
    }

    private static string Entry(long offset) => offset.ToString("D10", CultureInfo.InvariantCulture) + " 00000 n \n";

    /// <summary>Where an object starts, by a cross-reference table of one section that starts with object 0.</summary>
    private long OffsetOf(long number) => Number(Read(_firstEntry + (number * EntryLength))[..OffsetDigits]);

    private string Read(long from)
    {
        var start = Math.Max(0, from);
        var bytes = new byte[Math.Min(_pdf.Length - start, Reach)];
        _pdf.Seek(start, SeekOrigin.Begin);
        _pdf.ReadExactly(bytes);
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
