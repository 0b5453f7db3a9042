namespace Tagend.Output;

/// <summary>A PDF that grows page by page before its file is there: a page is written and forgotten.</summary>
public sealed class PdfDraft : IDisposable
{
    private readonly FileStream _written;
    private readonly PdfFile.Document _document;

    /// <param name="file">Empty, to be read and written; this draft's own.</param>
    public PdfDraft(Fonts fonts, FileStream file) => (_written, _document) = (file, new PdfFile.Document(file, fonts));

    /// <summary>So far.</summary>
    public int Pages { get; private set; }

    /// <exception cref="IOException">It cannot be written.</exception>
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
        _written.Position = 0;
        _written.CopyTo(output);
    }

    public void Dispose()
    {
        _document.Dispose();
        _written.Dispose();
    }
}
