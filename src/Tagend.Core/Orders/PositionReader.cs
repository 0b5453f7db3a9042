using System.Diagnostics.CodeAnalysis;
using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads a place on a piece: <c>A 7 1/2</c>, <c>b 8</c>, and <c>26 1/4</c> for a distance from A.</summary>
public static class PositionReader
{
    private const StringSplitOptions Splitting = StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries;

    /// <summary>Reads the whole text as one place.</summary>
    /// <param name="text">An end where one is named, then a length; spaces around them do not matter.</param>
    /// <param name="bareUnit">The unit of a length that has none.</param>
    /// <param name="position">The place; without an end, from A.</param>
    /// <returns>False where it is no place.</returns>
    public static bool TryRead(string text, LengthUnit bareUnit, out Position position)
    {
        var (end, distance) = SplitEnd(text);
        var isRead = LengthReader.TryRead(distance, bareUnit, out var length);
        position = new Position(end, length);
        return isRead;
    }

    /// <summary>Reads places separated by semicolons or line ends, such as speed nocks.</summary>
    public static bool TryReadAll(
        string text,
        LengthUnit bareUnit,
        [NotNullWhen(true)] out ValueList<Position>? positions,
        [NotNullWhen(false)] out string? error)
    {
        var read = new List<Position>();
        positions = null;
        error = null;
        foreach (var item in text.Split([';', '\r', '\n'], Splitting))
        {
            if (!TryRead(item, bareUnit, out var position))
            {
                error = OrderWording.InItem(read.Count + 1, item, OrderWording.Position);
                return false;
            }

            read.Add(position);
        }

        if (read.Count == 0)
        {
            error = OrderWording.Positions;
            return false;
        }

        positions = read.ToValueList();
        return true;
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
