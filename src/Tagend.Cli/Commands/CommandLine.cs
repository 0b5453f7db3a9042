using System.CommandLine;
using System.CommandLine.Parsing;
using Tagend.Jobs;
using Tagend.Options;

namespace Tagend.Commands;

/// <summary>What the program is told.</summary>
internal static class CommandLine
{
    /// <summary>Reads a command with its options; what is wrong with them is in its errors.</summary>
    /// <remarks>A text that begins with @ is a name like any other, and no file of arguments.</remarks>
    public static ParseResult Parse(IReadOnlyList<string> arguments)
    {
        var root = Root();
        return root.Parse(LengthWords.Joined(arguments, root), new ParserConfiguration { ResponseFileTokenReplacer = null });
    }

    /// <summary>What is wrong, in sentences; a command that there is not comes first, with the one that was meant.</summary>
    public static IEnumerable<string> Faults(ParseResult parsed) =>
        WrongUsage.CommandOf(parsed) is { } fault ? [fault] : WrongUsage.OptionsOf(parsed).Concat(Errors(parsed));

    /// <remarks>The library's own sentence for a number that is none names a type of .NET.</remarks>
    private static IEnumerable<string> Errors(ParseResult parsed) => parsed.Errors.Where(e => !WrongUsage.IsSaid(e, parsed)).Select(error =>
        error.Message.Contains("'System.", StringComparison.Ordinal) && error.SymbolResult is { } at
            ? $"{NameOf(at)} \"{string.Join(' ', at.Tokens.Select(t => t.Value))}\": expected a whole number"
            : error.Message);

    private static string NameOf(SymbolResult at) => at switch
    {
        OptionResult option => option.Option.Name,
        ArgumentResult { Parent: OptionResult option } => option.Option.Name,
        ArgumentResult argument => argument.Argument.Name,
        _ => "the command",
    };

    private static RootCommand Root() => new(
        "Prints what a bowstring shop needs at each step of a build: jig cards, tags and customer sheets from an order CSV. "
        + "Scanning a tag brings the spec back.")
    {
        PrintCommand.Create(),
        CheckCommand.Create(),
        MapCommand.Create(),
        BowCommand.Create(),
        ExplainCommand.Create(),
        RecallCommand.Create(),
        OrdersCommand.Create(),
        JobsCommand.Create(),
        BuiltCommand.Create(),
        SpoolsCommand.Create(),
        RecordCommand.Create(),
        StateCommand.Create("shipped", EventKind.Shipped, "Logs that orders or pieces have left the shop."),
        StateCommand.Create("cancelled", EventKind.Cancelled, "Logs that orders or pieces are not to be made: they are printed no more, and a scan of their tags says so."),
        StateCommand.Create("reopened", EventKind.Reopened, "Logs that orders or pieces are worked on again that were shipped or cancelled."),
        RemakeCommand.Create(),
        LogCommand.Create(),
        FitCommand.Create(),
        BookCommand.Create(),
        RulerCommand.Create(),
        OutlinesCommand.Create(),
        StationCommand.Create(),
        InitCommand.Create(),
    };
}
