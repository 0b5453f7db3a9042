using System.CommandLine;
using System.CommandLine.Invocation;
using Tagend.Commands;
using Tagend.Jobs;

StandardDescriptors.Open(args);
Terminal.Begin();
var root = new RootCommand(
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
// A text that begins with @ is a name like any other, and no file of arguments.
var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
if (parsed.Action is ParseErrorAction)
{
    foreach (var error in parsed.Errors)
    {
        Say.Error(error.Message);
    }

    Say.Error("see tagend --help");
    return ExitCode.Usage;
}

return LastHandler.Run(() => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
