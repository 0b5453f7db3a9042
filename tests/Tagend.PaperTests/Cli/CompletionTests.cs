using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>Completions, asked for by the shells themselves.</summary>
public class CompletionTests
{
    private const string Bash = """
        source "$1/completions/tagend.bash"
        complete -p tagend > /dev/null || exit 1
        COMP_LINE=$2 COMP_POINT=${#2}
        read -ra COMP_WORDS <<< "$2"
        [[ $2 == *' ' ]] && COMP_WORDS+=('')
        COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
        _tagend
        echo "${COMPREPLY[@]}"
        """;

    private const string Zsh = """
        source "$1/completions/_tagend"
        BUFFER=$2 CURSOR=${#2} PREFIX=${2##* }
        compadd() { shift; echo "$@" }
        _files() { echo }
        _tagend
        """;

    private const string PowerShell = """
        . (Join-Path $args[0] 'completions/tagend.ps1')
        (TabExpansion2 $args[1] $args[1].Length).CompletionMatches.CompletionText -join ' '
        """;

    [Theory]
    [InlineData("bash", "tagend pr", "print")]
    [InlineData("bash", "tagend print orders.csv --pape", "--paper")]
    [InlineData("bash", "tagend print orders.csv --paper l", "letter")]
    [InlineData("zsh", "tagend pr", "print")]
    [InlineData("zsh", "tagend print orders.csv --paper l", "letter")]
    [InlineData("pwsh", "tagend pr", "print")]
    [InlineData("pwsh", "tagend print orders.csv --paper l", "letter")]
    public void Completion_OfALineBegun_IsTheOneThatFits(string shell, string line, string completed)
    {
        using var folder = TagendProgram.NewFolder();
        var said = shell switch
        {
            "pwsh" => OutsideTool.Run("pwsh", "-NoProfile", "-File", folder.Write("ask.ps1", OnPath("$env:PATH = '{0}:' + $env:PATH\n") + PowerShell), TagendProgram.Root, line),
            _ => OutsideTool.Run(shell, "-c", OnPath("PATH='{0}':$PATH\n") + (shell == "bash" ? Bash : Zsh), shell, TagendProgram.Root, line),
        };
        Assert.Equal((0, completed), (said.ExitCode, said.Output.Trim()));
    }

    private static string OnPath(string format) => string.Format(
        System.Globalization.CultureInfo.InvariantCulture, format, Path.GetDirectoryName(TagendProgram.Executable));
}
