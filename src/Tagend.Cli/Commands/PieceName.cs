using Tagend.Orders;

namespace Tagend.Commands;

/// <summary>A piece as the command line names it.</summary>
internal sealed record PieceName(string Order, string Piece)
{
    /// <returns>Null where it cannot be read; then the reason is said.</returns>
    public static PieceName? Read(string text, Action<string> say)
    {
        if (text.Split('/') is not [var order, var piece])
        {
            say($"\"{text}\": expected an order and its piece, such as 1001/string");
            return null;
        }

        if (NameReader.TryReadOrder(order, out var orderName, out var error)
            && NameReader.TryReadName(piece, out var pieceName, out error))
        {
            return new PieceName(orderName, pieceName);
        }

        say($"\"{text}\": {error}");
        return null;
    }
}
