using Tagend.Pdf;

namespace Tagend.Output;

/// <summary>Writes pages as a PDF: true size, its own fonts cut to what is used, the same bytes for the same pages.</summary>
/// <remarks>PDF 1.7, ISO 32000-1. A page is written and forgotten before the next one is asked for.</remarks>
public static class PdfFile
{
    /// <param name="pages">One at least; gone through once.</param>
    /// <param name="output">Empty; only written to. Left open.</param>
    public static void Write(IEnumerable<Page> pages, Fonts fonts, PdfNote note, Stream output)
    {
        using var document = new Document(output, fonts);
        foreach (var page in pages)
        {
            document.Add(page);
        }

        document.End(note);
    }

    /// <summary>A PDF in the making.</summary>
    internal sealed class Document : IDisposable
    {
        private readonly PdfObjects _objects;
        private readonly Fonts _fonts;
        private readonly int _tree;
        private readonly int _resources;
        private readonly SortedDictionary<Weight, (PdfFont Font, int Number)> _used = [];
        private readonly PdfPictures _pictures;
        private readonly PdfContent _content = new();
        private readonly PdfStructure _structure;
        private readonly PdfPen _pen;
        private readonly PdfBuffer _buffer = new();
        private readonly List<int> _pages = [];
        private readonly PdfOutline _outline = new();

        public Document(Stream output, Fonts fonts)
        {
            (_objects, _fonts) = (new PdfObjects(output), fonts);
            _objects.Begin();
            (_tree, _resources) = (_objects.Reserve(), _objects.Reserve());
            _pictures = new PdfPictures(_objects, _resources);
            _structure = new PdfStructure(_objects);
            _pen = new PdfPen(fonts, FontOf, _pictures, _content, new PdfParts(_structure, _content));
        }

        public void Add(Page page)
        {
            var (width, height) = (Size(page.Width), Size(page.Height));
            var top = (int)((page.IsLying ? width : height) / Points.Step);
            var (number, content) = (_objects.Reserve(), _objects.Reserve());
            var parents = _structure.BeginPage(number, beginsSection: page.Bookmarks.Count > 0, page.Language);
            _pen.Draw(page.Inks, page.Setting, height, top);
            _structure.EndPage();
            _objects.AddStream(content, [], _content.Bytes);
            _buffer.Clear();
            _objects.Add(number, _buffer.Add("<</Type/Page/Parent "u8).Reference(_tree).Add("/MediaBox[0 0 "u8).Add(width).Add(height)
                .Add("]/Contents "u8).Reference(content).Add("/StructParents "u8).Add(parents).Add("/Tabs/S>>"u8));
            _pages.Add(number);
            foreach (var title in page.Bookmarks)
            {
                _outline.Add(title, number);
            }
        }

        public void End(PdfNote note)
        {
            foreach (var (font, number) in _used.Values)
            {
                font.Write(_objects, number);
            }

            WriteResources();
            WriteTree();
            var (information, metadata) = PdfInformation.Write(_objects, note.Title, note.Language, note.Date);
            var tree = _structure.End();
            var outline = _outline.Write(_objects);
            var catalog = _objects.Reserve();
            _buffer.Clear();
            _buffer.Add("<</Type/Catalog/MarkInfo<</Marked true>>/StructTreeRoot "u8).Reference(tree).Add("/Pages "u8).Reference(_tree).Add("/Lang"u8).Text(note.Language).Add("/Metadata "u8).Reference(metadata)
                .Add("/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>"u8);
            if (outline is { } root)
            {
                _buffer.Add("/Outlines "u8).Reference(root);
            }

            _objects.Add(catalog, _buffer.Add(">>"u8));
            _objects.End(catalog, information);
        }

        public void Dispose() => _objects.Dispose();

        /// <summary>To a hundredth of a point: a roll's page of whole dots does not become one of a dot more.</summary>
        private static double Size(float side) => Math.Round(side, 2);

        private (PdfFont Font, int Number) FontOf(Weight weight)
        {
            if (!_used.TryGetValue(weight, out var font))
            {
                font = (new PdfFont(_fonts[weight].File), _objects.Reserve());
                _used.Add(weight, font);
            }

            return font;
        }

        /// <summary>One dictionary of what all pages and forms draw with.</summary>
        private void WriteResources()
        {
            _buffer.Clear();
            _buffer.Add("<</Font<<"u8);
            foreach (var (_, number) in _used.Values)
            {
                _buffer.Add("/F"u8).Add(number).Reference(number);
            }

            _buffer.Add(">>"u8);
            _pictures.AddResources(_buffer);
            _objects.Add(_resources, _buffer.Add(">>"u8));
        }

        private void WriteTree()
        {
            _buffer.Clear();
            _buffer.Add("<</Type/Pages/Count "u8).Add(_pages.Count).Add("/Resources "u8).Reference(_resources).Add("/Kids["u8);
            foreach (var page in _pages)
            {
                _buffer.Reference(page);
            }

            _objects.Add(_tree, _buffer.Add("]>>"u8));
        }
    }
}

/// <summary>What a PDF says of itself.</summary>
/// <param name="Date">Of the document; never the clock's, so that the bytes can be made again.</param>
/// <param name="Language">As in RFC 5646: en-US.</param>
public sealed record PdfNote(string Title, DateOnly Date, string Language = PdfNote.English)
{
    public const string English = "en-US";
}
