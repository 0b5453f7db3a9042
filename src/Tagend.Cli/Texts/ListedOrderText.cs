using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Workshop.Books;

namespace Tagend.Texts;

/// <summary>An order in one line, for it is read on narrow terminals and by other programs: due first, then how far, what is left, and whose it is.</summary>
internal static class ListedOrderText
{
    /// <param name="hasBenches">Orders of several benches are listed, so that each says its own.</param>
    public static string Of(ListedOrder order, DateOnly today, bool hasBenches)
    {
        var due = order.Due is { } day ? $"due {DateWriter.Iso(day)}" : order.DueText.Length > 0 ? $"due \"{order.DueText}\"" : "no due date";
        var isOpen = order.State is not (OrderState.Built or OrderState.Shipped or OrderState.Cancelled);
        var groups = order.Pieces.GroupBy(p => p.State).OrderBy(g => g.Key).ToList();
        string[] parts =
        [
            OrderList.Word(order.State) + Joined(" by ", order.Builders) + (hasBenches ? Joined(" at ", order.Benches) : "")
                + string.Concat(groups.Where(g => IsOwn(order.State, g.Key)).Select(g => Joined(": ", Names(g)))),
            .. groups.Where(g => !IsOwn(order.State, g.Key)).Select(g => Joined(Left(order.State, g.Key), Names(g))),
            Joined("for ", new[] { order.Customer, order.Bow }.Where(t => t.Length > 0)),
        ];
        return $"{order.Order}  {due}{(order.Due < today && isOpen ? ", late" : "")}  {string.Join("; ", parts.Where(p => p.Length > 0))}".ReplaceLineEndings(" ");
    }

    /// <summary>The pieces that the order's own word is for.</summary>
    private static bool IsOwn(OrderState order, PieceState state) => (order, state) is
        (OrderState.New, PieceState.New) or (OrderState.Printed, PieceState.Printed) or (OrderState.Cancelled, PieceState.Cancelled);

    /// <summary>What the pieces of a state are called where the order's own word does not say it; empty where nothing is left to say.</summary>
    private static string Left(OrderState order, PieceState state) => (order, state) switch
    {
        (_, PieceState.New) => "never printed: ",
        (_, PieceState.Printed) => "still to build: ",
        (_, PieceState.Remade) => "to be remade: ",
        (not OrderState.Shipped, PieceState.Shipped) => "shipped: ",
        (_, PieceState.Cancelled) => "cancelled: ",
        _ => "",
    };

    private static IEnumerable<string> Names(IEnumerable<ListedPiece> pieces) =>
        pieces.Select(p => p.Reason.Length > 0 ? $"{p.Piece} ({p.Reason})" : p.Piece);

    /// <summary>Some texts after a word; nothing without texts or a word.</summary>
    private static string Joined(string word, IEnumerable<string> texts) => string.Join(", ", texts) is { Length: > 0 } all && word.Length > 0 ? word + all : "";
}
