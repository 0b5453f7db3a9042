using System.Buffers;

namespace Tagend.Blocks;

/// <summary>Numbers with their units, which stay on one line.</summary>
internal static class Quantity
{
    /// <summary>Of all languages that sheets come in.</summary>
    private static readonly HashSet<string> Units =
        ["in", "ft", "mm", "cm", "m", "lb", "lbs", "lbf", "N", "kg", "g", "gr", "Zoll", "po", "pulg", "libras", "livres", "Pfund", "fps", "min", "%"];

    private static readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> UnitsByText = Units.GetAlternateLookup<ReadOnlySpan<char>>();

    private static readonly SearchValues<char> WordEnds = SearchValues.Create(" \n,;:.)·");

    /// <summary>Whether a space separates a number from its unit, or from its fraction.</summary>
    public static bool IsWithin(string text, int at)
    {
        if (at == 0 || !char.IsNumber(text[at - 1]))
        {
            return false;
        }

        var rest = text.AsSpan(at + 1);
        var end = rest.IndexOfAny(WordEnds);
        var word = end < 0 ? rest : rest[..end];
        return UnitsByText.Contains(word) || IsFraction(word);
    }

    /// <summary>As <c>3/16</c> or <c>½</c>.</summary>
    private static bool IsFraction(ReadOnlySpan<char> word) => word.Length == 1
        ? char.IsNumber(word[0]) && !char.IsDigit(word[0])
        : word.Length > 2 && char.IsAsciiDigit(word[0]) && char.IsAsciiDigit(word[^1]) && word.Contains('/');
}
