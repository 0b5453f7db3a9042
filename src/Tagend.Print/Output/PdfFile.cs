using SkiaSharp;

namespace Tagend.Output;

/// <summary>Writes pages as a PDF: true size, its own fonts cut to what is used, the same bytes for the same pages.</summary>
public static class PdfFile
{
    /// <summary>Page sizes snap to 1/7200 in: A4 comes out exactly.</summary>
    private const float RasterDpi = 7200;

    /// <summary>Of images: above 100 they are not turned into JPEG.</summary>
    private const int Lossless = 101;

    /// <param name="pages">One at least; gone through twice.</param>
    /// <param name="output">Empty; can be read and moved in. Left open.</param>
    public static void Write(IReadOnlyCollection<Page> pages, Fonts fonts, PdfNote note, Stream output)
    {
        Draw(pages, fonts, note, output);
        PdfCatalog.Complete(output, note.Language, [.. pages.Index().SelectMany(p => p.Item.Bookmarks.Select(b => (b, p.Index)))]);
    }

    private static void Draw(IReadOnlyCollection<Page> pages, Fonts fonts, PdfNote note, Stream output)
    {
        var created = note.Date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        var metadata = new SKDocumentPdfMetadata
        {
            Title = note.Title,
            Author = "Tagend",
            Creator = "Tagend",
            Creation = created,
            Modified = created,
            RasterDpi = RasterDpi,
            EncodingQuality = Lossless,
        };
        using var typefaces = Typefaces.CutFor(fonts, pages);
        using var held = new HeldFaultStream(output);
        using var document = SKDocument.CreatePdf(held, metadata);
        foreach (var page in pages)
        {
            var canvas = document.BeginPage(page.Width, page.Height);
            canvas.Concat(page.Setting);
            using var pen = new Pen(canvas, typefaces, smooth: true);
            pen.Draw(page.Inks);
            document.EndPage();
        }

        document.Close();
        held.ThrowIfFaulted();
    }
}

/// <summary>What a PDF says of itself.</summary>
/// <param name="Date">Of the document; never the clock's, so that the bytes can be made again.</param>
/// <param name="Language">As in RFC 5646: en-US.</param>
public sealed record PdfNote(string Title, DateOnly Date, string Language = PdfNote.English)
{
    public const string English = "en-US";
}
