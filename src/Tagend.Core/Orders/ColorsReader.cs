using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads strand colors: <c>black:12 red:12</c>, or <c>black red</c> to share the strands equally.</summary>
/// <remarks>
/// Colors are separated by commas, semicolons, slashes, plus signs or an "and"; a color may have several words then, which are
/// joined by hyphens. Where there are none of these they are separated by spaces, and a color of two words is one only if the
/// shop's list has it.
/// </remarks>
public static class ColorsReader
{
    private static readonly char[] Separators = [',', ';', '/', '+', '&', '\r', '\n'];

    // And, in the languages of the sheets.
    private static readonly string[] Joiners = [" and ", " und ", " et ", " y "];

    /// <param name="names">The shop's colors; null for none.</param>
    public static bool TryRead(
        string text,
        [NotNullWhen(true)] out ValueList<OrderedColor>? colors,
        [NotNullWhen(false)] out string? error,
        ColorNames? names = null)
    {
        var read = new List<OrderedColor>();
        colors = null;
        foreach (var item in Items(text, names ?? ColorNames.None))
        {
            if (!TryReadColor(item, names ?? ColorNames.None, out var color, out error))
            {
                return false;
            }

            if (read.Exists(c => c.Name == color.Name))
            {
                error = OrderWording.ColorTwice(color.Name);
                return false;
            }

            read.Add(color);
        }

        error = read switch
        {
            [] => OrderWording.NoColor,
            _ when read.Exists(c => c.Strands is null) && read.Exists(c => c.Strands is not null) =>
                OrderWording.MixedColors,
            _ => null,
        };
        colors = error is null ? read.ToValueList() : null;
        return error is null;
    }

    /// <summary>A text's colors and their separators, in turn, as written.</summary>
    internal static IEnumerable<string> Parts(string text)
    {
        var start = 0;
        for (var at = 0; at < text.Length; at++)
        {
            if (Separators.Contains(text[at]))
            {
                yield return text[start..at];
                yield return text[at..(at + 1)];
                start = at + 1;
            }
        }

        yield return text[start..];
    }

    private static IEnumerable<string> Items(string text, ColorNames names)
    {
        var joined = string.Join(':', text.Split(':').Select(part => part.Trim(' ')));
        foreach (var joiner in Joiners)
        {
            joined = joined.Replace(joiner, " / ", StringComparison.OrdinalIgnoreCase);
        }

        return joined.Any(c => Separators.Contains(c))
            ? joined.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            : BySpaces(joined.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries), names);
    }

    /// <summary>Each word a color, but for runs of words that the list has as one.</summary>
    private static IEnumerable<string> BySpaces(string[] words, ColorNames names)
    {
        for (var at = 0; at < words.Length;)
        {
            var count = Math.Min(names.MostWords, words.Length - at);
            while (count > 1 && !IsOne(words.AsSpan(at, count), names))
            {
                count--;
            }

            yield return string.Join(' ', words[at..(at + count)]);
            at += count;
        }
    }

    /// <summary>Strands stand behind a color's last word alone.</summary>
    private static bool IsOne(ReadOnlySpan<string> words, ColorNames names)
    {
        foreach (var word in words[..^1])
        {
            if (word.Contains(':', StringComparison.Ordinal))
            {
                return false;
            }
        }

        return names.Knows(NameOf(string.Join(' ', words)));
    }

    private static string NameOf(string item) => item.Split(':')[0];

    private static bool TryReadColor(
        string item, ColorNames names, [NotNullWhen(true)] out OrderedColor? color, [NotNullWhen(false)] out string? error)
    {
        color = null;
        var name = NameOf(item);
        error = NameFault(name);
        int? strands = null;
        if (error is null && name.Length < item.Length)
        {
            var isCount = int.TryParse(
                item.AsSpan(name.Length + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var count);
            strands = count;
            error = isCount && count > 0 ? null : OrderWording.ColorStrands(item);
        }

        color = error is null ? new OrderedColor(names.Of(name), strands) : null;
        return color is not null;
    }

    private static string? NameFault(string name)
    {
        var words = name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length > 1 && !Array.TrueForAll(words, w => w.Any(char.IsLetter)))
        {
            return OrderWording.ColorWords(name);
        }

        var isName = name.Length <= NameReader.Longest
            && name.Any(char.IsLetter)
            && name.All(c => char.IsLetterOrDigit(c) || c is '-' || char.IsWhiteSpace(c));
        return isName ? null : OrderWording.ColorName(name);
    }
}
