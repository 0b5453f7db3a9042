using System.Collections.Concurrent;

namespace Tagend.Output;

/// <summary>A PDF that grows page by page, in memory, before its file is there: a page is written and forgotten.</summary>
public sealed class PdfDraft : IDisposable
{
    /// <summary>Of drafts that are done, for the next ones: one a worker, as large as a volume.</summary>
    private static readonly ConcurrentBag<MemoryStream> Used = [];

    /// <summary>Of a volume of cards: what grows by doubling leaves as much behind.</summary>
    private const int UsualBytes = 4 << 20;

    private readonly MemoryStream _written = Used.TryTake(out var used) ? used : new MemoryStream(UsualBytes);
    private readonly PdfFile.Document _document;

    public PdfDraft(Fonts fonts) => _document = new PdfFile.Document(_written, fonts);

    /// <summary>So far.</summary>
    public int Pages { get; private set; }

    public void Add(Page page)
    {
        _document.Add(page);
        Pages++;
    }

    /// <summary>Ends the PDF and writes it. No page can be added.</summary>
    /// <param name="output">Empty; only written to. Left open.</param>
    public void Write(PdfNote note, Stream output)
    {
        _document.End(note);
        _written.WriteTo(output);
    }

    public void Dispose()
    {
        _document.Dispose();
        _written.SetLength(0);
        Used.Add(_written);
    }
}
