using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>The manual page against the program's own help.</summary>
public class ManualTests
{
    private static readonly string Page = Path.Combine(TagendProgram.Root, "man", "tagend.1");

    private static readonly string[] Commands =
        [.. Regex.Matches(TagendProgram.Run("--help").Output.Split("Commands:")[1], @"^  (\w+)", RegexOptions.Multiline).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Manual_OfTheProgram_NamesEveryCommandAndOption()
    {
        var sections = Regex.Split(File.ReadAllText(Page).Replace("\\-", "-", StringComparison.Ordinal), @"^\.S[SH] ", RegexOptions.Multiline);
        Assert.NotEmpty(Commands);
        foreach (var command in Commands)
        {
            var section = Assert.Single(sections, s => Regex.IsMatch(s, $@"^tagend {command}\b"));
            Assert.Empty(OptionsIn(TagendProgram.Run(command, "--help").Output).Except(["--help"]).Except(OptionsIn(section)));
        }
    }

    [Fact]
    public void Manual_OfTheProgram_IsWellFormed()
    {
        var said = OutsideTool.Run("mandoc", "-T", "lint", "-W", "warning", Page);
        Assert.Equal((0, ""), (said.ExitCode, said.Output));
    }

    [Fact]
    public void Version_OfTheProgram_IsThatOfTheBuild()
    {
        var properties = File.ReadAllText(Path.Combine(TagendProgram.Root, "Directory.Build.props"));
        var version = Regex.Match(properties, "<Version>(.+)</Version>").Groups[1].Value;
        Assert.Equal(version + "\n", TagendProgram.Run("--version").Output);
    }

    private static IEnumerable<string> OptionsIn(string text) => Regex.Matches(text, @"(?<![\w-])--[a-z][a-z-]*").Select(m => m.Value).Distinct();
}
