using System.CommandLine;
using System.CommandLine.Invocation;
using Tagend.Output;
using Tagend.Streams;

namespace Tagend.Options;

/// <summary><c>--printers</c>: names the system's print queues, and does nothing else.</summary>
internal static class PrintersOption
{
    public static Option<bool> Create() => new("--printers")
    {
        Description = "List the system's print queues, the default one first, and print nothing.",
        Action = new Listing(),
    };

    private sealed class Listing : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            var names = PrintQueue.Names();
            foreach (var name in names)
            {
                Console.WriteLine(name);
            }

            if (names.Count == 0)
            {
                Console.Error.WriteLine(
                    "tagend: there is no print queue: add the printer in the system's settings, or print the PDFs from a viewer at actual size, 100 %");
            }

            return ExitCode.Done;
        }
    }
}
