using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Tags;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>Pieces found in the job book by order and piece, as if their tags were scanned.</summary>
public static class BookScan
{
    /// <summary>Finds the newest issue of a piece, or of each piece of an order but those that are cancelled.</summary>
    /// <param name="text">Such as <c>701/buss</c> or <c>701</c>.</param>
    /// <returns>Null where the text names nothing that was printed.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static TagScan? Find(string text, IJobBook book)
    {
        if (OrderPart.Read(text, out _) is not { } part)
        {
            return null;
        }

        var readings = book.Find(new JobSearch { Order = part.Order, Piece = part.Piece })
            .GroupBy(j => j.Piece)
            .Select(jobs => jobs.Last())
            .Where(job => part.Piece is not null || job.State != PieceState.Cancelled)
            .Select(job => TagReader.Read(job.Tag))
            .ToList();
        var pieces = readings.OfType<TagReading.Piece>().Select(p => p.Spec).ToList();
        return readings.Count == 0 ? null
            : pieces.Count < readings.Count ? new TagScan(text, readings.Find(r => r is not TagReading.Piece)) // says what is wrong with it
            : part.Piece is not null ? new TagScan(text, readings[0])
            : new TagScan(text, new TagReading.Bag(
                text, part.Order, pieces.Select(p => new BagEntry(p.Piece, p.Revision)).ToValueList(), pieces.ToValueList()));
    }
}
