using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Workshop.Books;

namespace Tagend.Workshop.Json;

/// <summary>An order, and how far it has come.</summary>
internal sealed record OrderContract(
    string Order,
    string State,
    string? Due,
    string DueText,
    string Customer,
    string Bow,
    IReadOnlyList<OrderPieceContract> Pieces)
{
    internal static OrderContract Of(ListedOrder order) => new(
        order.Order,
        OrderList.Word(order.State),
        order.Due is { } due ? DateWriter.Iso(due) : null,
        order.DueText,
        order.Customer,
        order.Bow,
        [.. order.Pieces.Select(p => new OrderPieceContract(p.Piece, StateWords.Of(p.State), p.Revision, p.Bench, p.Who, p.Reason))]);
}

/// <summary>A piece of an order, and how far it has come.</summary>
internal sealed record OrderPieceContract(string Piece, string State, int Revision, string Bench, string Who, string Reason);
