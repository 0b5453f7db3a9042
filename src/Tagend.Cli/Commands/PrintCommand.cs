using System.CommandLine;
using System.Runtime.InteropServices;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary><c>tagend print ORDERS.csv</c>: cards, tags, customer sheets and the pull sheet of all sets without a problem.</summary>
internal static class PrintCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var paper = new PrintOptions();
        var command = new Command("print", "Prints cards.pdf, tags.pdf, sheets.pdf and pulls.pdf for every set without a problem.");
        options.AddTo(command);
        paper.AddTo(command);
        command.SetAction(parsed => Run(options, paper, parsed));
        return command;
    }

    private static int Run(ShopOptions options, PrintOptions paper, ParseResult parsed)
    {
        if (options.Read(parsed) is not var (catalog, report))
        {
            return ExitCode.Problems;
        }

        var orders = paper.OrdersOf(parsed);
        var known = report.Pieces.Select(p => p.Order).ToHashSet();
        if (orders.Find(o => !known.Contains(o)) is { } missing)
        {
            Console.Error.WriteLine($"tagend: there is no order {missing} in the file; there are {string.Join(", ", known.Order(StringComparer.Ordinal))}");
            return ExitCode.Usage;
        }

        var refused = report.Problems.Any(p => p.Severity == Severity.Refusal);
        if (refused && parsed.GetValue(paper.Strict))
        {
            Console.Error.WriteLine("tagend: nothing printed, for --strict prints all sets or none");
            return ExitCode.Problems;
        }

        var plan = paper.PlanOf(parsed, catalog);
        var volumes = PrintBatch.VolumesOf(report.Ready.Where(s => orders.Count == 0 || orders.Contains(s.Order)), plan.VolumePieces);
        var summary = new PrintSummary(report.Withheld.Where(o => orders.Count == 0 || orders.Contains(o)), volumes.Count);
        using var stop = new CancellationTokenSource();
        using var signal = PosixSignalRegistration.Create(PosixSignal.SIGINT, context =>
        {
            context.Cancel = true;
            stop.Cancel();
        });
        try
        {
            Print(new PrintBatch(catalog, plan).Print(volumes, stop.Token), volumes, summary, options.Book);
        }
        catch (OperationCanceledException)
        {
            summary.SayStopped();
            return ExitCode.Stopped;
        }

        summary.Write();
        if (plan.Printer is { } printer)
        {
            summary.Send(printer);
        }

        return options.Book.HasFailed ? ExitCode.World
            : summary.Withheld.Count > 0 || refused && orders.Count == 0 ? ExitCode.Problems
            : ExitCode.Done;
    }

    private static void Print(
        IEnumerable<PrintedVolume> printing,
        IReadOnlyList<IReadOnlyList<ReadySet>> volumes,
        PrintSummary summary,
        RunBook book)
    {
        if (volumes.Count > 1)
        {
            new PrintProgress(volumes.Sum(v => v.Sum(s => s.Pieces)), TimeProvider.System).Follow(printing, Done);
            return;
        }

        foreach (var volume in printing)
        {
            Done(volume);
        }

        void Done(PrintedVolume volume) => summary.Add(volume, book.Record(volume.Printed.Sets));
    }
}
