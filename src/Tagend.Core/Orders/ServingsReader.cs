using System.Diagnostics.CodeAnalysis;
using Tagend.Measures;

namespace Tagend.Orders;

/// <summary>Reads servings: <c>A 0..7 1/2 t021 black; 26 1/4..31 t019 red; B 0..8 t021</c>.</summary>
/// <remarks>
/// Items are separated by semicolons or line ends. An item is an end (A where none is named), where the serving starts
/// and ends as distances from it, separated by <c>..</c>, <c>…</c> or the word to, then the thread's name, then the
/// color. The first word after the lengths is the thread; words after it are the color, joined by hyphens.
/// </remarks>
public static class ServingsReader
{
    // 5 ft 0 1/4 in
    private const int MostLengthWords = 5;

    private static readonly char[] ItemSeparators = [';', '\r', '\n'];
    private static readonly string[] RangeMarks = ["..", "…", " to "];

    /// <summary>Reads one or more servings.</summary>
    /// <param name="names">The shop's colors; null for none.</param>
    public static bool TryRead(
        string text,
        LengthUnit bareUnit,
        [NotNullWhen(true)] out ValueList<OrderedServing>? servings,
        [NotNullWhen(false)] out string? error,
        ColorNames? names = null)
    {
        servings = null;
        var items = Items(text);
        var read = new List<OrderedServing>();
        foreach (var item in items)
        {
            if (!TryReadItem(item, bareUnit, names, out var serving, out error))
            {
                error = items.Length == 1 ? error : OrderWording.InItem(read.Count + 1, item, error);
                return false;
            }

            read.Add(serving);
        }

        error = read.Count == 0 ? OrderWording.NoServing : null;
        servings = read.Count == 0 ? null : read.ToValueList();
        return read.Count > 0;
    }

    /// <summary>Reads exactly one serving, such as the center serving.</summary>
    /// <param name="names">The shop's colors; null for none.</param>
    public static bool TryReadOne(
        string text,
        LengthUnit bareUnit,
        [NotNullWhen(true)] out OrderedServing? serving,
        [NotNullWhen(false)] out string? error,
        ColorNames? names = null)
    {
        if (Items(text) is [var item])
        {
            return TryReadItem(item, bareUnit, names, out serving, out error);
        }

        serving = null;
        error = OrderWording.OneServing;
        return false;
    }

    private static string[] Items(string text) =>
        text.Split(ItemSeparators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool TryReadItem(
        string item,
        LengthUnit bareUnit,
        ColorNames? names,
        [NotNullWhen(true)] out OrderedServing? serving,
        [NotNullWhen(false)] out string? error)
    {
        serving = null;
        var (end, rest) = PositionReader.SplitEnd(item);
        if (!TrySplitRange(rest, out var start, out var after))
        {
            error = OrderWording.ServingPlaces;
            return false;
        }

        if (!LengthReader.TryRead(start, bareUnit, out var from))
        {
            error = OrderWording.ServingStart(start);
            return false;
        }

        var words = after.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (!TryReadLeadingLength(words, bareUnit, out var to, out var used))
        {
            error = OrderWording.ServingEnd(after);
            return false;
        }

        if (from > Length.Zero && to > Length.Zero && LengthReader.IsBare(start) != LengthReader.IsBare(string.Join(' ', words[..used])))
        {
            error = OrderWording.ServingUnits;
            return false;
        }

        if (to <= from)
        {
            error = OrderWording.ServingOrder;
            return false;
        }

        var thread = words.Length > used ? words[used].ToLowerInvariant() : null;
        var color = words.Length > used + 1 ? (names ?? ColorNames.None).Of(string.Join(' ', words[(used + 1)..])) : null;
        serving = new OrderedServing(new Position(end, from), new Position(end, to), thread, color, item);
        error = null;
        return true;
    }

    private static bool TrySplitRange(string text, out string start, out string after)
    {
        foreach (var mark in RangeMarks)
        {
            var at = text.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at < 0)
            {
                continue;
            }

            start = text[..at].Trim();
            after = text[(at + mark.Length)..].Trim();
            // Three points would leave a decimal point before the second number.
            return start.Length > 0 && after.Length > 0 && !(mark == ".." && after[0] == '.');
        }

        start = after = "";
        return false;
    }

    /// <summary>The longest run of first words that is a length: <c>7 1/2 in t021</c> gives 7 1/2 in.</summary>
    private static bool TryReadLeadingLength(string[] words, LengthUnit bareUnit, out Length length, out int used)
    {
        for (used = Math.Min(words.Length, MostLengthWords); used > 0; used--)
        {
            if (LengthReader.TryRead(string.Join(' ', words[..used]), bareUnit, out length))
            {
                return true;
            }
        }

        length = Length.Zero;
        return false;
    }
}
