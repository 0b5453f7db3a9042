using System.CommandLine;
using System.CommandLine.Parsing;

namespace Tagend.Commands;

/// <summary>What is wrong with a command's options together.</summary>
internal static class CommandCheck
{
    /// <summary>Checks a command whose options all have their values: the library throws where one is asked for that is missing, and tells it by itself.</summary>
    public static void Check(this Command command, Action<CommandResult> check) => command.Validators.Add(result =>
    {
        if (result.Children.OfType<OptionResult>().All(o => o.Tokens.Count >= o.Option.Arity.MinimumNumberOfValues))
        {
            check(result);
        }
    });
}
