namespace Tagend.Pdf;

/// <summary>The bookmarks of a document, in one level: ISO 32000-1, 12.3.3.</summary>
internal sealed class PdfOutline
{
    private readonly List<(string Title, int Page)> _bookmarks = [];

    /// <param name="page">The object of the page that it leads to.</param>
    public void Add(string title, int page) => _bookmarks.Add((title, page));

    /// <summary>The outline's object; null where there is no bookmark.</summary>
    public int? Write(PdfObjects objects)
    {
        if (_bookmarks.Count == 0)
        {
            return null;
        }

        var root = objects.Reserve();
        var items = _bookmarks.ConvertAll(_ => objects.Reserve());
        var buffer = new PdfBuffer();
        objects.Add(root, buffer.Add("<</Type/Outlines/First "u8).Reference(items[0]).Add("/Last "u8).Reference(items[^1])
            .Add("/Count "u8).Add(items.Count).Add(">>"u8));
        for (var i = 0; i < items.Count; i++)
        {
            buffer.Clear();
            buffer.Add("<</Title"u8).Text(_bookmarks[i].Title).Add("/Parent "u8).Reference(root);
            if (i > 0)
            {
                buffer.Add("/Prev "u8).Reference(items[i - 1]);
            }

            if (i + 1 < items.Count)
            {
                buffer.Add("/Next "u8).Reference(items[i + 1]);
            }

            objects.Add(items[i], buffer.Add("/Dest["u8).Reference(_bookmarks[i].Page).Add("/Fit]>>"u8));
        }

        return root;
    }
}
