using System.CommandLine;
using System.Text.RegularExpressions;

namespace Tagend.Options;

/// <summary>A length that nobody put in quotes comes as several words: <c>--length 60 5/16</c>, <c>--across 149.3 mm</c>. They are one behind an option that takes a length.</summary>
internal static partial class LengthWords
{
    /// <summary>What help calls the value of such an option.</summary>
    public const string Value = "LENGTH";

    /// <summary>The words of a command line, those of one length together.</summary>
    /// <param name="root">The command with all others in it, whose options they are.</param>
    public static IReadOnlyList<string> Joined(IReadOnlyList<string> words, Command root)
    {
        var takers = OptionsOf(root).Where(o => o.HelpName == Value).Select(o => o.Name).ToHashSet();
        var joined = new List<string>();
        for (var i = 0; i < words.Count; i++)
        {
            joined.Add(words[i]);
            if (i > 0 && takers.Contains(words[i - 1]) && Number().IsMatch(words[i]))
            {
                while (i + 1 < words.Count && Rest().IsMatch(words[i + 1]))
                {
                    joined[^1] += $" {words[++i]}";
                }
            }
        }

        return joined;
    }

    private static IEnumerable<Option> OptionsOf(Command command) => command.Options.Concat(command.Subcommands.SelectMany(OptionsOf));

    [GeneratedRegex(@"^\d[\d.,]*$")]
    private static partial Regex Number();

    [GeneratedRegex("^([0-9]+/[0-9]+(in|mm|\")?|in|mm|cm|m|yd|ft)$")]
    private static partial Regex Rest();
}
