using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads a place on a piece: <c>A 7 1/2</c>, <c>b 8</c>, and <c>26 1/4</c> for a distance from A.</summary>
public static class PositionReader
{
    public static bool TryRead(string text, LengthUnit bareUnit, out Position position)
    {
        var (end, distance) = SplitEnd(text);
        var isRead = LengthReader.TryRead(distance, bareUnit, out var length);
        position = new Position(end, length);
        return isRead;
    }

    /// <summary>The end named at the start of a text, A where there is none, and what follows it.</summary>
    internal static (PieceEnd End, string Distance) SplitEnd(string text)
    {
        var trimmed = text.Trim();
        var namesEnd = trimmed.Length > 1 && trimmed[0] is 'A' or 'a' or 'B' or 'b' && !char.IsLetter(trimmed[1]);
        if (!namesEnd)
        {
            return (PieceEnd.A, trimmed);
        }

        return (trimmed[0] is 'A' or 'a' ? PieceEnd.A : PieceEnd.B, trimmed[1..].TrimStart());
    }
}
