using Tagend.Orders;

namespace Tagend.Workshop.Readings;

/// <summary>A piece as people name it: <c>1001/string</c>.</summary>
/// <param name="Order">The order's number, in capitals.</param>
/// <param name="Piece">The piece's name, in lower case.</param>
public sealed record PieceName(string Order, string Piece)
{
    /// <summary>Reads a name, in any case.</summary>
    /// <param name="text">Such as <c>1001/string</c>.</param>
    /// <param name="error">Why it cannot be read; empty where it can.</param>
    /// <returns>Null where it cannot be read.</returns>
    public static PieceName? Read(string text, out string error)
    {
        error = "";
        if (text.Split('/') is not [var order, var piece])
        {
            error = $"\"{text}\": expected an order and its piece, such as 1001/string";
            return null;
        }

        if (NameReader.TryReadOrder(order, out var orderName, out var fault)
            && NameReader.TryReadName(piece, out var pieceName, out fault))
        {
            return new PieceName(orderName, pieceName);
        }

        error = $"\"{text}\": {fault}";
        return null;
    }
}
