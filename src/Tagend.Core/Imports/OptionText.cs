namespace Tagend.Imports;

/// <summary>One option of an option text.</summary>
/// <param name="Label">As the map has it; as written where the map has none of that name; empty where there is no label.</param>
/// <param name="IsKnown">The map names the label.</param>
public readonly record struct OptionPart(string Label, string Text, bool IsKnown);

/// <summary>
/// Takes an option text apart by its labels: <c>Color: Red/Black; Length: 58 1/2; Strands 24</c> is three options.
/// </summary>
/// <remarks>
/// Semicolons, bars and line ends always part options; commas only before a label that is known. After a label stands a colon,
/// an equals sign or a space. A part without a label is kept by itself, for it may belong to the option before it or be a new one.
/// </remarks>
public static class OptionText
{
    private static readonly char[] Separators = [';', '|', '\r', '\n'];

    /// <param name="labels">Known labels; letter case and runs of spaces do not matter.</param>
    public static IReadOnlyList<OptionPart> Read(string text, IReadOnlyCollection<string> labels)
    {
        var longestFirst = labels.OrderByDescending(l => l.Length).ToList();
        return
        [
            .. text.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .SelectMany(part => AtCommas(part, longestFirst))
                .Select(part => Part(part, longestFirst)),
        ];
    }

    /// <summary>A part, cut before each known label that follows a comma.</summary>
    private static IEnumerable<string> AtCommas(string part, IReadOnlyList<string> labels)
    {
        var start = 0;
        for (var comma = part.IndexOf(',', StringComparison.Ordinal); comma >= 0; comma = part.IndexOf(',', comma + 1))
        {
            if (LabelOf(part[(comma + 1)..].TrimStart(), labels) is not null)
            {
                yield return part[start..comma].Trim();
                start = comma + 1;
            }
        }

        yield return part[start..].Trim();
    }

    private static OptionPart Part(string part, IReadOnlyList<string> labels)
    {
        if (LabelOf(part, labels) is var (label, length))
        {
            return new OptionPart(label, part[length..].Trim().TrimStart(':', '=').Trim(), IsKnown: true);
        }

        var colon = part.IndexOf(':', StringComparison.Ordinal);
        // A colon behind a digit or before one separates a color from its strands: black:12.
        return colon > 0 && !(colon + 1 < part.Length && char.IsDigit(part[colon + 1]))
            ? new OptionPart(part[..colon].Trim(), part[(colon + 1)..].Trim(), IsKnown: false)
            : new OptionPart("", part, IsKnown: false);
    }

    /// <summary>The known label that a part begins with, and how much of the part it takes.</summary>
    private static (string Label, int Length)? LabelOf(string part, IReadOnlyList<string> labels)
    {
        foreach (var label in labels)
        {
            var length = Match(part, label);
            if (length > 0 && (length == part.Length || part[length] is ':' or '=' || char.IsWhiteSpace(part[length])))
            {
                return (label, length);
            }
        }

        return null;
    }

    /// <summary>How many characters of a text a label takes at its start, runs of spaces being one; 0 where it does not begin with it.</summary>
    private static int Match(string text, string label)
    {
        var at = 0;
        foreach (var word in label.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            var start = at;
            while (at < text.Length && char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            if ((start > 0 && at == start) || !text.AsSpan(at).StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                return 0;
            }

            at += word.Length;
        }

        return at;
    }
}
