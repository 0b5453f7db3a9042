using System.CommandLine;
using System.CommandLine.Invocation;
using Tagend.Commands;
using Tagend.Problems;

var root = new RootCommand(
    "Prints what a bowstring shop needs at each step of a build: jig cards, tags and customer sheets from an order CSV. "
    + "Scanning a tag brings the spec back.")
{
    PrintCommand.Create(),
    CheckCommand.Create(),
    MapCommand.Create(),
    ExplainCommand.Create(),
    RecallCommand.Create(),
    JobsCommand.Create(),
    BuiltCommand.Create(),
    FitCommand.Create(),
    RulerCommand.Create(),
    OutlinesCommand.Create(),
    InitCommand.Create(),
};
var parsed = root.Parse(args);
if (parsed.Action is ParseErrorAction)
{
    foreach (var error in parsed.Errors)
    {
        Console.Error.WriteLine($"tagend: {error.Message}");
    }

    Console.Error.WriteLine("tagend: see tagend --help");
    return ExitCode.Usage;
}

try
{
    return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
}
catch (TagendException e)
{
    Console.Error.WriteLine($"tagend: {e.Message}");
    return ExitCode.World;
}
catch (IOException e)
{
    // Files have sentences of their own; what is left is the output.
    Console.Error.WriteLine($"tagend: standard output cannot be written ({e.Message}): see that there is room where it goes");
    return ExitCode.World;
}
