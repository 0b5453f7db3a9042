using System.Text.RegularExpressions;

namespace Tagend.Logos;

/// <summary>Holds path data to its grammar: SVG 1.1, 8.3.9. A renderer would draw up to the first mistake.</summary>
internal static partial class SvgPathData
{
    public static bool IsWellFormed(string data)
    {
        var commands = Commands().Matches(data);
        return commands.Count > 0
            && commands[0].Value[0] is 'M' or 'm'
            && commands.Sum(c => c.Length) == data.AsSpan().Trim().Length
            && commands.All(c => IsWhole(char.ToUpperInvariant(c.Value[0]), c.Value[1..]));
    }

    private static bool IsWhole(char command, string arguments)
    {
        // The flags of an arc may stand without anything between them.
        var spaced = command == 'A' ? Arcs().Replace(arguments, "$1 $2 $3 $4") : arguments;
        return SvgNumbers.TryReadAll(spaced, out var numbers) && (ArgumentsOf(command) == 0
            ? numbers.Length == 0
            : numbers.Length > 0 && numbers.Length % ArgumentsOf(command) == 0);
    }

    /// <summary>Arguments that each command takes, or a multiple of them.</summary>
    private static int ArgumentsOf(char command) => command switch
    {
        'Z' => 0,
        'H' or 'V' => 1,
        'M' or 'L' or 'T' => 2,
        'S' or 'Q' => 4,
        'C' => 6,
        _ => 7,
    };

    [GeneratedRegex(@"[MmLlHhVvCcSsQqTtAaZz][^MmLlHhVvCcSsQqTtAaZz]*")]
    private static partial Regex Commands();

    [GeneratedRegex($@"((?:\s*{SvgNumbers.Pattern}\s*,?){{3}})\s*([01])\s*,?\s*([01])\s*,?((?:\s*{SvgNumbers.Pattern}\s*,?){{2}})")]
    private static partial Regex Arcs();
}
