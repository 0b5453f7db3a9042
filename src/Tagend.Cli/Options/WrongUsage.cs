using System.CommandLine;
using System.CommandLine.Parsing;
using Tagend.Problems;

namespace Tagend.Options;

/// <summary>Commands and options that there are not, with those that were meant.</summary>
internal static class WrongUsage
{
    /// <returns>Null where there is such a command.</returns>
    public static string? CommandOf(ParseResult parsed)
    {
        var commands = parsed.CommandResult.Command.Subcommands;
        return commands.Count > 0 && parsed.UnmatchedTokens is [var word, ..] && !word.StartsWith('-')
            ? $"there is no command {word}{Meant(word, commands.Select(c => c.Name))}"
            : null;
    }

    /// <summary>A sentence for each option that there is not.</summary>
    public static IEnumerable<string> OptionsOf(ParseResult parsed) => parsed.UnmatchedTokens.Where(IsOption)
        .Select(option => $"there is no option {option}{Meant(option, parsed.CommandResult.Command.Options.Select(o => o.Name))}");

    /// <summary>Whether an error of the library is about a word that a sentence of ours is about.</summary>
    public static bool IsSaid(ParseError error, ParseResult parsed) =>
        parsed.UnmatchedTokens.Any(t => IsOption(t) && error.Message.Contains($"'{t}'", StringComparison.Ordinal));

    /// <summary>Which name was meant; nothing where none is near.</summary>
    public static string Meant(string word, IEnumerable<string> names) =>
        NearestName.Meant(word.ToLowerInvariant(), names) is { } name ? $"; did you mean {name}?" : "";

    private static bool IsOption(string token) => token.StartsWith('-') && token.Length > 1;
}
