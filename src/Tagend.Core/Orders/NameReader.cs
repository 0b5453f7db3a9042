using System.Diagnostics.CodeAnalysis;

namespace Tagend.Orders;

/// <summary>Reads names that go into file names and tags: letters, digits, spaces, hyphens, points, underscores.</summary>
public static class NameReader
{
    /// <summary>Most characters of a name.</summary>
    public const int Longest = 24;

    /// <summary>An order's number, in capitals; without the number sign that stores write before it.</summary>
    public static bool TryReadOrder(
        string text, [NotNullWhen(true)] out string? name, [NotNullWhen(false)] out string? error) =>
        TryRead(text.TrimStart().TrimStart('#'), static t => t.ToUpperInvariant(), out name, out error);

    /// <summary>The name of a piece, kind, material or thread, in lower case.</summary>
    public static bool TryReadName(
        string text, [NotNullWhen(true)] out string? name, [NotNullWhen(false)] out string? error) =>
        TryRead(text, static t => t.ToLowerInvariant(), out name, out error);

    private static bool TryRead(
        string text,
        Func<string, string> fold,
        [NotNullWhen(true)] out string? name,
        [NotNullWhen(false)] out string? error)
    {
        var plain = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        error = Fault(plain);
        name = error is null ? fold(plain) : null;
        return error is null;
    }

    private static string? Fault(string name)
    {
        if (name.Length == 0)
        {
            return OrderWording.NameEmpty;
        }

        foreach (var c in name)
        {
            if (!char.IsLetterOrDigit(c) && !" -._".Contains(c, StringComparison.Ordinal))
            {
                return OrderWording.NameCharacter(Shown(c));
            }
        }

        if (!char.IsLetterOrDigit(name[0]) || !char.IsLetterOrDigit(name[^1]))
        {
            return OrderWording.NameEnds;
        }

        return name.Length > Longest ? OrderWording.NameLong(Longest) : null;
    }

    private static string Shown(char c) =>
        char.IsControl(c) || char.IsSurrogate(c) ? $"character U+{(int)c:X4}" : c.ToString();
}
