using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Tagend.Jobs;
using Tagend.Options;

namespace Tagend.Commands;

/// <summary>What the program is told.</summary>
internal static class CommandLine
{
    private static readonly (string Name, Func<string, Command> Create)[] Commands =
    [
        ("print", PrintCommand.Create),
        ("check", CheckCommand.Create),
        ("map", MapCommand.Create),
        ("bow", BowCommand.Create),
        ("explain", ExplainCommand.Create),
        ("recall", RecallCommand.Create),
        ("orders", OrdersCommand.Create),
        ("jobs", JobsCommand.Create),
        ("built", BuiltCommand.Create),
        ("spools", SpoolsCommand.Create),
        ("record", RecordCommand.Create),
        ("shipped", name => StateCommand.Create(name, EventKind.Shipped, "Logs that orders or pieces have left the shop.")),
        ("cancelled", name => StateCommand.Create(name, EventKind.Cancelled, "Logs that orders or pieces are not to be made: they are printed no more, and a scan of their tags says so.")),
        ("reopened", name => StateCommand.Create(name, EventKind.Reopened, "Logs that orders or pieces are worked on again that were shipped or cancelled.")),
        ("remake", RemakeCommand.Create),
        ("log", LogCommand.Create),
        ("fit", FitCommand.Create),
        ("book", BookCommand.Create),
        ("ruler", RulerCommand.Create),
        ("outlines", OutlinesCommand.Create),
        ("station", StationCommand.Create),
        ("init", InitCommand.Create),
    ];

    private static readonly string[] HelpNames = ["--help", "-h", "-?", "/h", "/?"];

    /// <summary>Reads a command with its options; what is wrong with them is in its errors.</summary>
    /// <remarks>A text that begins with @ is a name like any other, and no file of arguments.</remarks>
    public static ParseResult Parse(IReadOnlyList<string> arguments)
    {
        var root = Root(arguments);
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

    /// <summary>With the one command that is asked for, or with all of them where none is: to make them all takes as long as to lay out a card.</summary>
    /// <remarks>What the library's root command and its help look up of themselves takes a fiftieth of a short run; with a command there are no suggestions to be made.</remarks>
    private static Command Root(IReadOnlyList<string> arguments)
    {
        const string Purpose = "Prints what a bowstring shop needs at each step of a build: jig cards, tags and customer sheets from an order CSV. "
            + "Scanning a tag brings the spec back.";
        if (arguments.Count > 0 && Array.Find(Commands, c => c.Name == arguments[0]) is { Name: not null } asked)
        {
            var one = new Command("tagend", Purpose) { asked.Create(asked.Name) };
            if (arguments.Any(a => HelpNames.Contains(a)))
            {
                one.Options.Add(new HelpOption());
            }

            return one;
        }

        var root = new RootCommand(Purpose);
        foreach (var (name, create) in Commands)
        {
            root.Subcommands.Add(create(name));
        }

        return root;
    }
}
