using System.CommandLine;
using System.CommandLine.Parsing;

namespace Tagend.Options;

/// <summary>Refuses an empty text where a file, a folder or a tag is named: it would be taken for something that nobody meant.</summary>
internal static class NotEmpty
{
    public static Argument<T> NamesSomething<T>(this Argument<T> argument)
    {
        argument.Validators.Add(result => Refuse(result, argument.Name));
        return argument;
    }

    public static Option<T> NamesSomething<T>(this Option<T> option)
    {
        option.Validators.Add(result => Refuse(result, option.Name));
        return option;
    }

    private static void Refuse(SymbolResult result, string name)
    {
        if (result.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
        {
            result.AddError($"{name} \"\": expected a name, and it is empty");
        }

        // What looks like an option is one that was misspelled, and no file of that name.
        if (result is ArgumentResult && result.Tokens.FirstOrDefault(token => token.Value.StartsWith("--", StringComparison.Ordinal)) is { } option)
        {
            var options = (result.Parent as CommandResult)?.Command.Options.Select(o => o.Name) ?? [];
            result.AddError($"there is no option {option.Value}{WrongUsage.Meant(option.Value, options)}");
        }
    }
}
