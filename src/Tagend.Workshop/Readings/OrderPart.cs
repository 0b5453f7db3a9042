using Tagend.Orders;

namespace Tagend.Workshop.Readings;

/// <summary>An order or one piece of it, as people name it: <c>701</c>, <c>#701</c>, <c>701/buss</c>.</summary>
/// <param name="Order">The order's number, in capitals.</param>
/// <param name="Piece">The piece's name, in lower case; null for the whole order.</param>
public sealed record OrderPart(string Order, string? Piece)
{
    /// <summary>Reads a name.</summary>
    /// <param name="error">Why it cannot be read; empty where it can.</param>
    /// <returns>Null where it cannot be read.</returns>
    public static OrderPart? Read(string text, out string error)
    {
        if (text.Contains('/', StringComparison.Ordinal))
        {
            return PieceName.Read(text, out error) is { } name ? new OrderPart(name.Order, name.Piece) : null;
        }

        if (NameReader.TryReadOrder(text, out var order, out var fault))
        {
            error = "";
            return new OrderPart(order, null);
        }

        error = $"\"{text}\": {fault}, or an order and its piece, such as 701/buss";
        return null;
    }

    /// <inheritdoc/>
    public override string ToString() => Piece is null ? Order : $"{Order}/{Piece}";
}
