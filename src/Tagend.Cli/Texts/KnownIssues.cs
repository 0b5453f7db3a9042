using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Options;
using Tagend.Problems;
using Tagend.Tags;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Texts;

/// <summary>
/// Says of scanned tags what the job book knows, as far as there is one: that they are superseded, cancelled or shipped; and
/// takes spools that are scanned to this bench.
/// </summary>
/// <param name="open">Opens the book with the first tag; null where there is none.</param>
/// <param name="readCatalog">Reads the shop's templates with the first spool; null where they have mistakes.</param>
internal sealed class KnownIssues(Func<IJobBook?> open, Func<ShopCatalog?> readCatalog) : IDisposable
{
    private const string NotKnown = "what the job book knows of tags and spools is not said";

    private readonly Lazy<ShopCatalog?> _catalog = new(readCatalog);
    private readonly Lazy<IJobBook?> _book = new(() => Guarded(open));
    private bool _hasFailed;

    public void Dispose()
    {
        if (_book.IsValueCreated)
        {
            _book.Value?.Dispose();
        }
    }

    /// <summary>The pieces of an order that is named and not scanned; null where the text is no order, or the book does not know it.</summary>
    public TagScan? Find(string text)
    {
        try
        {
            return text == TagScan.StandardInput || text.Contains('*', StringComparison.Ordinal) || File.Exists(text) || _book.Value is not { } book
                ? null
                : BookScan.Find(text, book);
        }
        catch (TagendException e)
        {
            _hasFailed = true;
            Streams.Say.Error($"{e.Message}; {NotKnown}");
            return null;
        }
    }

    /// <summary>Says what must be known first of each piece of a tag, and what is left on a spool.</summary>
    public void Say(TagScan scan, TextWriter output)
    {
        if (_hasFailed || (!scan.Issues.Any() && scan.Reading is not TagReading.Spool))
        {
            return;
        }

        try
        {
            foreach (var sentence in _book.Value is { } book ? Said(scan, book) : [])
            {
                output.WriteLine(sentence);
            }
        }
        catch (TagendException e)
        {
            _hasFailed = true;
            Streams.Say.Error($"{e.Message}; {NotKnown}");
        }
    }

    private IEnumerable<string> Said(TagScan scan, IJobBook book)
    {
        if (scan.Reading is TagReading.Spool)
        {
            return _catalog.Value is { } catalog
                ? [new BenchLog(book, catalog.Shop.Unit, new SpoolShelf(book.Spools, catalog, BenchName.Here)).Mount(scan.Reading.Text)]
                : [];
        }

        return scan.Issues.SelectMany(issue => PieceNews.Of(issue, book));
    }

    private static IJobBook? Guarded(Func<IJobBook?> open)
    {
        try
        {
            return open();
        }
        catch (TagendException e)
        {
            Streams.Say.Error($"{e.Message}; {NotKnown}");
            return null;
        }
    }
}
