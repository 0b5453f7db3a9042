using System.CommandLine.Help;
using Tagend.Commands;
using Xunit;

namespace Tagend.Tests.Cli;

public class CommandLineTests
{
    /// <summary>A command is made with help only where it is asked for: by each name that the library has for it.</summary>
    [Fact]
    public void Parse_EachNameOfHelp_ShowsHelpOfACommand()
    {
        var help = new HelpOption();
        List<string> names = [help.Name, .. help.Aliases];
        Assert.Equal(5, names.Count);
        foreach (var name in names)
        {
            Assert.IsType<HelpAction>(CommandLine.Parse(["print", name]).Action);
            Assert.IsType<HelpAction>(CommandLine.Parse(["print", "orders.csv", name]).Action);
            Assert.IsType<HelpAction>(CommandLine.Parse([name]).Action);
        }
    }

    [Fact]
    public void Parse_OneCommand_NamesTheProgramAsAllCommandsDo()
    {
        Assert.Equal("print", CommandLine.Parse(["print", "orders.csv"]).CommandResult.Command.Name);
        Assert.Equal("tagend", CommandLine.Parse(["print", "orders.csv"]).RootCommandResult.Command.Name);
        Assert.Equal(["print"], CommandLine.Parse(["print"]).RootCommandResult.Command.Subcommands.Select(c => c.Name));
        Assert.Contains("check", CommandLine.Parse([]).RootCommandResult.Command.Subcommands.Select(c => c.Name));
    }
}
