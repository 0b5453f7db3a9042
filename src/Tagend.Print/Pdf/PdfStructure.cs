namespace Tagend.Pdf;

/// <summary>The structure tree of a document, written part by part as its pages are: ISO 32000-1, 14.7.</summary>
/// <remarks>
/// So that it is read aloud as it is meant: PDF/UA-1 (ISO 14289-1). A part that nothing is drawn for is left out, but a table's
/// cell, without which its row would be short.
/// </remarks>
internal sealed class PdfStructure
{
    private readonly PdfObjects _objects;
    private readonly int _root;
    private readonly List<Element> _open = [];
    private readonly List<int> _owners = [];
    private readonly List<int> _pageOwners = [];
    private readonly PdfBuffer _buffer = new();
    private int _depth;
    private int _page;

    public PdfStructure(PdfObjects objects)
    {
        (_objects, _root) = (objects, objects.Reserve());
        Open("Document"u8);
        Number(0);
    }

    /// <summary>Begins a page.</summary>
    /// <param name="page">Its object.</param>
    /// <param name="beginsSection">It is the first of several that belong together.</param>
    /// <param name="language">Of the section, RFC 5646; null for the document's.</param>
    /// <returns>Its number in the tree of its parts: the page's StructParents.</returns>
    public int BeginPage(int page, bool beginsSection, string? language = null)
    {
        if (beginsSection)
        {
            CloseTo(1);
            Open("Sect"u8, language: language);
        }

        _page = page;
        _owners.Clear();
        return _pageOwners.Count;
    }

    /// <summary>Ends all parts of the page but the section.</summary>
    public void EndPage()
    {
        CloseTo(_depth > 1 && _open[1].IsSection ? 2 : 1);
        _buffer.Clear();
        _buffer.Character((byte)'[');
        foreach (var owner in _owners)
        {
            _buffer.Reference(owner);
        }

        var number = _objects.Reserve();
        _objects.Add(number, _buffer.Character((byte)']'));
        _pageOwners.Add(number);
    }

    /// <summary>Begins a part within the one begun last.</summary>
    /// <param name="type">A standard structure type: 14.8.4.</param>
    /// <param name="alternative">What it shows, in words.</param>
    /// <param name="language">RFC 5646; null for that of the part around it.</param>
    public void Open(ReadOnlySpan<byte> type, string? alternative = null, string? language = null)
    {
        if (_depth == _open.Count)
        {
            _open.Add(new Element());
        }

        var element = _open[_depth];
        element.Begin(type, alternative, language);
        _depth++;
        if (element.IsCell)
        {
            Number(_depth - 1);
        }
    }

    /// <summary>Ends the part begun last.</summary>
    public void Close()
    {
        _depth--;
        var element = _open[_depth];
        if (element.Number == 0)
        {
            return;
        }

        _buffer.Clear();
        _buffer.Add("<</S/"u8).Add(element.Type).Add("/P "u8).Reference(_depth == 0 ? _root : _open[_depth - 1].Number);
        if (element.HasContent)
        {
            _buffer.Add("/Pg "u8).Reference(_page);
        }

        if (element.Alternative is { } alternative)
        {
            _buffer.Add("/Alt"u8).Text(alternative);
        }

        if (element.Language is { } language)
        {
            _buffer.Add("/Lang"u8).Text(language);
        }

        if (element.IsHeaderCell)
        {
            _buffer.Add("/A<</O/Table/Scope/Column>>"u8);
        }

        if (element.Kids.Length > 0)
        {
            _buffer.Add("/K["u8).Add(element.Kids.Bytes).Character((byte)']');
        }

        _objects.Add(element.Number, _buffer.Add(">>"u8));
        if (_depth > 0)
        {
            _open[_depth - 1].Kids.Reference(element.Number);
        }
    }

    /// <summary>A number for what is drawn next, of the part begun last: its MCID.</summary>
    public int Mark()
    {
        var element = _open[_depth - 1];
        Number(_depth - 1);
        element.HasContent = true;
        element.Kids.Add(_owners.Count);
        _owners.Add(element.Number);
        return _owners.Count - 1;
    }

    /// <summary>Ends the tree.</summary>
    /// <returns>Its root, for the catalog.</returns>
    public int End()
    {
        var document = _open[0].Number;
        CloseTo(0);
        _buffer.Clear();
        _buffer.Add("<</Type/StructTreeRoot/K "u8).Reference(document).Add("/ParentTreeNextKey "u8).Add(_pageOwners.Count).Add("/ParentTree<</Nums["u8);
        for (var i = 0; i < _pageOwners.Count; i++)
        {
            _buffer.Add(i).Reference(_pageOwners[i]);
        }

        _objects.Add(_root, _buffer.Add("]>>>>"u8));
        return _root;
    }

    private void CloseTo(int depth)
    {
        while (_depth > depth)
        {
            Close();
        }
    }

    /// <summary>Gives a part and those around it their objects.</summary>
    private void Number(int depth)
    {
        for (var i = depth; i >= 0 && _open[i].Number == 0; i--)
        {
            _open[i].Number = _objects.Reserve();
        }
    }

    /// <summary>A part that has begun. Used again for the next.</summary>
    private sealed class Element
    {
        private readonly PdfBuffer _type = new();

        public ReadOnlySpan<byte> Type => _type.Bytes;

        public PdfBuffer Kids { get; } = new();

        public string? Alternative { get; private set; }

        public string? Language { get; private set; }

        /// <summary>0 until something is drawn for it.</summary>
        public int Number { get; set; }

        public bool HasContent { get; set; }

        public bool IsSection => Type.SequenceEqual("Sect"u8);

        public bool IsHeaderCell => Type.SequenceEqual("TH"u8);

        public bool IsCell => IsHeaderCell || Type.SequenceEqual("TD"u8);

        public void Begin(ReadOnlySpan<byte> type, string? alternative, string? language)
        {
            _type.Clear();
            _type.Add(type);
            Kids.Clear();
            (Alternative, Language, Number, HasContent) = (alternative, language, 0, false);
        }
    }
}
