using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>What came of saying what became of an order or a piece.</summary>
/// <param name="Pieces">As they are now; none where it is refused.</param>
/// <param name="Remarks">What should be known of it.</param>
/// <param name="Error">Why nothing was entered; null where it was.</param>
public sealed record StateAnswer(IReadOnlyList<ListedPiece> Pieces, IReadOnlyList<string> Remarks, string? Error);

/// <summary>What becomes of orders and pieces: shipped, cancelled, taken up again, made again. Nothing of it is ever erased.</summary>
/// <param name="book">Where it is logged.</param>
public sealed class BookLog(IJobBook book)
{
    /// <summary>Logs what became of an order or a piece, where that can have become of it.</summary>
    /// <param name="part">An order that was printed, or a piece of one.</param>
    /// <param name="what">Of pieces: not corrected or struck, which builds are.</param>
    /// <param name="who">May be empty.</param>
    /// <param name="reason">May be empty, but for what is cancelled or made again.</param>
    /// <exception cref="TagendException">The book cannot be used.</exception>
    public StateAnswer Enter(OrderPart part, EventKind what, string who, string reason)
    {
        if ((EventNote.Fault(who, reason) ?? Refusal(part, what, reason)) is { } error)
        {
            return new StateAnswer([], [], error);
        }

        var unbuilt = PiecesOf(part).FindAll(p => p.State is PieceState.Printed or PieceState.Remade);
        book.Enter(part.Order, part.Piece, what, who, reason, Guid.NewGuid());
        return new StateAnswer(
            PiecesOf(part),
            what == EventKind.Shipped && unbuilt.Count > 0
                ? [$"{part.Order}: not logged as built: {string.Join(", ", unbuilt.Select(p => p.Piece))}; log it, if its length was measured"]
                : [],
            null);
    }

    /// <summary>Why something cannot have become of an order or a piece; null where it can.</summary>
    /// <param name="part">An order, or a piece of one.</param>
    /// <param name="what">Of pieces: not corrected or struck.</param>
    /// <param name="reason">Needed for what is cancelled or made again.</param>
    /// <exception cref="TagendException">The book cannot be used.</exception>
    public string? Refusal(OrderPart part, EventKind what, string reason)
    {
        var pieces = PiecesOf(part);
        return pieces.Count == 0 ? Missing(part) : Refused(part, what, reason, pieces);
    }

    /// <summary>The last time that something became of a piece.</summary>
    /// <param name="log">Of its order.</param>
    internal static BookEvent? Last(IReadOnlyList<BookEvent> log, string piece, EventKind what) =>
        log.LastOrDefault(e => e.What == what && (e.Piece.Length == 0 || e.Piece == piece));

    /// <summary>The day of something, where the shop is.</summary>
    internal static string Day(DateTimeOffset at) => DateWriter.Iso(DateOnly.FromDateTime(at.LocalDateTime));

    private List<ListedPiece> PiecesOf(OrderPart part) => book.Find(new JobSearch { Order = part.Order, Piece = part.Piece }).ToList() is { Count: > 0 } jobs
        ? [.. OrderList.Pieces(jobs, book.Events)]
        : [];

    private string Missing(OrderPart part)
    {
        var pieces = book.Find(new JobSearch { Order = part.Order }).Select(j => j.Piece).Distinct().ToList();
        return pieces.Count == 0
            ? $"there is no order {part.Order} in the job book: check the number"
            : $"there is no piece {part.Piece} of order {part.Order} in the job book; it has {string.Join(", ", pieces)}";
    }

    private string? Refused(OrderPart part, EventKind what, string reason, List<ListedPiece> pieces)
    {
        if (what is EventKind.Cancelled or EventKind.Remade && reason.Length == 0)
        {
            return $"{part}: give a reason: whoever reads the log later needs it";
        }

        var states = pieces.Select(p => p.State).ToHashSet();
        return what switch
        {
            EventKind.Shipped when states.SetEquals([PieceState.Shipped]) => $"{part} has already shipped{On(EventKind.Shipped)}",
            EventKind.Shipped when states.IsSubsetOf([PieceState.Shipped, PieceState.Cancelled]) => Closed(),
            EventKind.Cancelled when states.SetEquals([PieceState.Cancelled]) => $"{part} is already cancelled{On(EventKind.Cancelled)}",
            EventKind.Cancelled when states.IsSubsetOf([PieceState.Shipped, PieceState.Cancelled]) => Closed(),
            EventKind.Remade when states.SetEquals([PieceState.Cancelled]) => Closed(),
            EventKind.Reopened when !states.Overlaps([PieceState.Shipped, PieceState.Cancelled]) => $"{part} is neither shipped nor cancelled",
            _ => null,
        };

        string Closed() => $"{part} is {string.Join(" and ", states.Order().Select(StateWords.Of))}"
            + $"{On(states.Contains(PieceState.Shipped) ? EventKind.Shipped : EventKind.Cancelled)}: reopen it first";

        string On(EventKind kind) => Last(book.Events(part.Order), pieces[0].Piece, kind) is { } found
            ? $" ({Day(found.At)}{(found.Note.Reason.Length > 0 ? $": {found.Note.Reason}" : "")})"
            : "";
    }
}
