using Tagend.Jobs;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>What must be known of a piece before it is worked on by its papers.</summary>
public static class PieceNews
{
    /// <summary>What a book says of a tag that was scanned: superseded, cancelled, shipped, to be made again.</summary>
    /// <returns>Sentences, each with the piece's name, the gravest first; none where there is nothing to be said.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<string> Of(PieceIssue scanned, IJobBook book) =>
        book.Newest(scanned.Order, scanned.Piece) is { } newest
            ? [.. new[] { State(newest, book), newest.Revision > scanned.Revision ? Superseded.Sentence(newest) : null }.OfType<string>().Select(s => $"{scanned}: {s}")]
            : [];

    private static string? State(PrintedJob job, IJobBook book)
    {
        return job.State switch
        {
            PieceState.Cancelled => $"cancelled{When(EventKind.Cancelled)}: do not build it unless it is reopened",
            PieceState.Shipped => $"shipped{When(EventKind.Shipped)}",
            PieceState.Remade => $"to be remade{When(EventKind.Remade)}",
            _ => null,
        };

        string When(EventKind what) => BookLog.Last(book.Events(job.Order), job.Piece, what) is { } found
            ? $" on {BookLog.Day(found.At)}{(found.Note.Reason.Length > 0 ? $" ({found.Note.Reason})" : "")}"
            : "";
    }
}
