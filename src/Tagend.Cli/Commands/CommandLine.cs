using System.CommandLine;
using Tagend.Jobs;

namespace Tagend.Commands;

/// <summary>What the program is told.</summary>
internal static class CommandLine
{
    /// <summary>Reads a command with its options; what is wrong with them is in its errors.</summary>
    /// <remarks>A text that begins with @ is a name like any other, and no file of arguments.</remarks>
    public static ParseResult Parse(IReadOnlyList<string> arguments) => Root().Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });

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
