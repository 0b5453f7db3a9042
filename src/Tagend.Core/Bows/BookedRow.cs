using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Bows;

/// <summary>One row of an order, with what the bow book has of its bow.</summary>
/// <param name="written">What the row calls its bow.</param>
internal sealed class BookedRow(LaidRow row, string written, BowBook book, List<Problem> problems)
{
    /// <summary>Columns of one piece: a row of a whole set gives them to the only piece that has such a thing.</summary>
    private static readonly string[] OfOnePiece =
    [
        OrderColumn.Kind, OrderColumn.FinishedLength, OrderColumn.BowLength, OrderColumn.Servings, OrderColumn.CenterServing,
        OrderColumn.NockPoint, OrderColumn.Peep, OrderColumn.SpeedNocks, OrderColumn.NockGroove,
    ];

    private readonly OrderRow _row = row.Row;

    public IReadOnlyList<LaidRow> Rows()
    {
        var piece = _row[OrderColumn.Piece];
        if (book.Find(written) is not { } bow)
        {
            return piece is null && !HasLength() ? Refused(OrderColumn.Bow, BowWording.NoBow(book.Nearest(written), [.. book.Bows.Select(b => b.Bow)])) : [row];
        }

        if (piece is null)
        {
            var strange = OfOnePiece.Where(c => _row[c] is not null && bow.Pieces.Count > 1 && bow.Pieces.Count(p => p.Cells.ContainsKey(c)) != 1).ToList();
            strange.ForEach(c => problems.Add(_row.Problem(c, BowWording.WhichPiece(bow))));
            var rest = strange.Count > 0 ? _row.Without(strange) : _row;
            return [.. bow.Pieces.Select(p => Filled(rest, bow, p, isOneOfSeveral: bow.Pieces.Count > 1))];
        }

        _ = NameReader.TryReadName(piece, out var name, out _);
        return bow.Pieces.FirstOrDefault(p => p.Name == name) is { } booked ? [Filled(_row, bow, booked, isOneOfSeveral: false)]
            : HasLength() ? [row]
            : Refused(OrderColumn.Piece, BowWording.NoPiece(bow));
    }

    private bool HasLength() => _row[OrderColumn.FinishedLength] is not null || _row[OrderColumn.BowLength] is not null;

    /// <summary>The row as it is: what it does not say itself, the bow might have.</summary>
    private LaidRow[] Refused(string column, string message)
    {
        problems.Add(_row.Problem(column, message));
        return [row with { Row = _row.Without(OrderColumn.All.Where(c => _row[c] is null)) }];
    }

    private LaidRow Filled(OrderRow said, BowRecipe bow, BowPiece piece, bool isOneOfSeveral)
    {
        // What the row says of one piece is not the others', and what is packed with the set is packed once.
        var own = OrderColumn.All.Where(c => said[c] is not null
            && !(isOneOfSeveral && OfOnePiece.Contains(c) && !piece.Cells.ContainsKey(c))
            && !(isOneOfSeveral && c == OrderColumn.Accessories && piece != bow.Pieces[0])).ToList();
        var hasLength = own.Contains(OrderColumn.FinishedLength) || own.Contains(OrderColumn.BowLength);
        var booked = piece.Cells
            .Where(c => !own.Contains(c.Key) && !(hasLength && c.Key is OrderColumn.FinishedLength or OrderColumn.BowLength))
            .Append(new KeyValuePair<string, string>(OrderColumn.Piece, piece.Name))
            .Where(c => !own.Contains(c.Key))
            .Select(c => (Column: c.Key, c.Value, Origin: new CellOrigin(BowWording.Origin(bow, piece, c.Key), c.Value)));
        var others = own.Where(c => piece.Cells.TryGetValue(c, out var text) && Plain(text) != Plain(said[c]!)).ToList();
        var note = BowWording.Note(bow, others.ConvertAll(c => (c, said[c]!, piece.Cells[c])));
        return new LaidRow(said.With(own, booked), string.Join('\n', new[] { row.Notes, note }.Where(n => n.Length > 0)));
    }

    private static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
