using System.CommandLine;
using System.CommandLine.Invocation;
using Tagend.Commands;
using Tagend.Streams;

const int OfAnOrder = 15 << 20; // what its papers take in objects is had from the system at once, and needs no collection
GC.TryStartNoGCRegion(OfAnOrder, disallowFullBlockingGC: true);

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
