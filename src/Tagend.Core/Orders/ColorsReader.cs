using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads strand colors: <c>black:12 red:12</c>, or <c>black red</c> to share the strands equally.</summary>
/// <remarks>
/// Colors are parted by commas, semicolons, slashes or plus signs; by spaces only where there are none of these,
/// so that a color of two words is never taken for two colors there.
/// </remarks>
public static class ColorsReader
{
    private static readonly char[] Separators = [',', ';', '/', '+', '\r', '\n'];

    public static bool TryRead(
        string text, [NotNullWhen(true)] out ValueList<OrderedColor>? colors, [NotNullWhen(false)] out string? error)
    {
        var read = new List<OrderedColor>();
        colors = null;
        foreach (var item in Items(text))
        {
            if (!TryReadColor(item, out var color, out error))
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

    /// <summary>A text's colors and what parts them, in turn, as written.</summary>
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

    private static string[] Items(string text)
    {
        var joined = string.Join(':', text.Split(':').Select(part => part.Trim(' ')));
        var hasSeparators = joined.Trim().Any(c => Separators.Contains(c));
        return joined.Split(
            hasSeparators ? Separators : null, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }

    private static bool TryReadColor(
        string item, [NotNullWhen(true)] out OrderedColor? color, [NotNullWhen(false)] out string? error)
    {
        color = null;
        var colon = item.IndexOf(':', StringComparison.Ordinal);
        var name = colon < 0 ? item : item[..colon];
        error = NameFault(name);
        int? strands = null;
        if (error is null && colon >= 0)
        {
            var isCount = int.TryParse(
                item.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var count);
            strands = count;
            error = isCount && count > 0 && count % 2 == 0 ? null : OrderWording.ColorStrands(item);
        }

        color = error is null ? new OrderedColor(name.ToLowerInvariant(), strands) : null;
        return color is not null;
    }

    private static string? NameFault(string name)
    {
        if (name.Any(char.IsWhiteSpace))
        {
            return OrderWording.ColorWords(name);
        }

        var isName = name.Length <= NameReader.Longest
            && name.Any(char.IsLetter)
            && name.All(c => char.IsLetterOrDigit(c) || c == '-');
        return isName ? null : OrderWording.ColorName(name);
    }
}
