using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Station.Desk;
using Tagend.Tags;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Station.Screens.Scan;

/// <summary>Makes of codes and the job book what is shown of them.</summary>
internal static class FoundView
{
    public static FoundModel Of(IReadOnlyList<TagScan> scans, ShopDesk shop)
    {
        try
        {
            return shop.WithBook(book => Model(scans, Found(scans, shop, book)));
        }
        catch (TagendException e)
        {
            // A tag says what it is without a book.
            return Model(scans, [.. Found(scans, shop, null), new FoundMessage(e.Message, "")]);
        }
    }

    /// <summary>What a scanner or a hand typed: a tag's text, or an order and its piece.</summary>
    public static TagScan Scanned(string text, ShopDesk shop)
    {
        var reading = TagReader.Read(text);
        if (reading is TagReading.Foreign && PieceName.Read(text, out _) is { } name
            && shop.WithBook(book => book.Newest(name.Order, name.Piece)) is { } job)
        {
            return new TagScan("text", TagReader.Read(job.Tag));
        }

        return new TagScan("text", reading);
    }

    /// <summary>A piece once, also where its bag names it beside its own tag.</summary>
    private static List<FoundItem> Found(IReadOnlyList<TagScan> scans, ShopDesk shop, IJobBook? book) =>
        [.. scans.SelectMany(s => Items(s, shop, book)).DistinctBy(i => i is FoundPiece piece ? piece.Tag : (object)i)];

    private static FoundModel Model(IReadOnlyList<TagScan> scans, List<FoundItem> items) => new(
        items,
        scans is [{ Reading: TagReading.Bag bag }] ? $"Bag of order {bag.Order}" : Counted.Of(items.Count, "tag"));

    private static IEnumerable<FoundItem> Items(TagScan scan, ShopDesk shop, IJobBook? book)
    {
        switch (scan.Reading)
        {
            case TagReading.Bag { Specs.Count: 0 } bag:
                return [new FoundBag(
                    bag.Order,
                    [.. bag.Contents.Select(c => (c.Piece, c.Revision))],
                    book is null ? [] : [.. scan.Issues.SelectMany(i => PieceNews.Of(i, book))])];
            case TagReading.Spool spool when book is not null:
                var shelf = new SpoolShelf(book.Spools, shop.Catalog, shop.Options.Bench);
                var found = shelf.Find(spool.Text);
                return [found.Spool is null
                    ? new FoundMessage(found.Error!, "")
                    : new FoundMessage(SpoolWording.Mounted(shelf.Mount(found.Spool), shop.Catalog.Shop.Unit), "") { IsGood = true }];
            case TagReading.Foreign foreign:
                return [new FoundMessage(foreign.Message, ShownText.Of(foreign.Text))];
            default:
                return scan.Message is { } message ? [new FoundMessage(message, "")] : scan.Specs.Select(FoundItem (spec) => Piece(spec, book));
        }
    }

    private static FoundPiece Piece(BuildSpec spec, IJobBook? book)
    {
        var jobs = book?.Find(new JobSearch { Order = spec.Order, Piece = spec.Piece }).ToList() ?? [];
        var job = jobs.Find(j => j.Revision == spec.Revision && TagReader.Read(j.Tag) is TagReading.Piece { Spec: var known } && SpecChange.Of(known, spec).Count == 0);
        return new FoundPiece(
            spec,
            TagWriter.Write(spec),
            job,
            book is null ? [] : PieceNews.Of(PieceIssue.Of(spec), book),
            jobs.LastOrDefault() is { } newest && (newest.Revision > spec.Revision || newest.State == PieceState.Cancelled),
            LengthWriter.Setting(spec.Posts.Tape, spec.Unit));
    }
}
