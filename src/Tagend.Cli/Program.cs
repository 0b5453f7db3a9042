using System.CommandLine;
using System.CommandLine.Invocation;
using Tagend;
using Tagend.Commands;
using Tagend.Streams;

FirstMemory.Arrange();
StandardDescriptors.Open(args);
Terminal.Begin();
var parsed = CommandLine.Parse(args);
if (parsed.Action is ParseErrorAction)
{
    foreach (var fault in CommandLine.Faults(parsed))
    {
        Say.Error(fault);
    }

    Say.Error("see tagend --help");
    return ExitCode.Usage;
}

return LastHandler.Run(() => parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false }));
