using System.CommandLine;
using System.Runtime.InteropServices;
using Tagend.Options;
using Tagend.Output;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary><c>tagend print ORDERS.csv</c>: the papers of all sets without a problem.</summary>
internal static class PrintCommand
{
    public static Command Create(string name)
    {
        var options = new ShopOptions();
        var paper = new PrintOptions();
        var command = new Command(name, "Prints cards.pdf, tags.pdf, sheets.pdf and pulls.pdf for every set without a problem.");
        options.AddTo(command);
        paper.AddTo(command);
        command.SetAction(parsed => Run(options, paper, parsed));
        return command;
    }

    private static int Run(ShopOptions options, PrintOptions paper, ParseResult parsed)
    {
        Task<Fonts>? fonts = null;
        if (options.Read(parsed, Begin) is not var (orders, book))
        {
            return ExitCode.Problems;
        }

        var report = orders.Report;
        var chosen = paper.OrdersOf(parsed);
        Say.Problems(orders.ProblemsOf(chosen));
        if (orders.Missing(chosen) is { } missing)
        {
            Say.Error(missing);
            return ExitCode.Usage;
        }

        if (orders.HasRefusals && parsed.GetValue(paper.Strict))
        {
            Say.Error("nothing printed: --strict prints all sets or none");
            return ExitCode.Problems;
        }

        var printer = paper.PrinterOf(parsed);
        var plan = paper.PlanOf(parsed, orders.Catalog, book) with { Shelf = book.Shelf(BenchName.Here) };
        var volumes = PrintBatch.VolumesOf(chosen.Of(report.Ready), plan.VolumePieces);
        var summary = new PrintSummary(report.Withheld.Where(chosen.Has), volumes.Count, orders.Catalog);
        var hasFailed = book.Fault is not null;
        using var stop = new CancellationTokenSource();
        using var signal = PosixSignalRegistration.Create(PosixSignal.SIGINT, context =>
        {
            context.Cancel = true;
            stop.Cancel();
        });
        using var batch = new PrintBatch(orders.Catalog, plan, fonts);
        try
        {
            Print(batch.Print(volumes, stop.Token), volumes, summary, book);
        }
        catch (OperationCanceledException)
        {
            summary.SayStopped();
            return ExitCode.Stopped;
        }

        if (!hasFailed)
        {
            Say.Fault(book);
        }

        summary.Removed([.. batch.Removed]);
        summary.Write();
        if (printer is not null)
        {
            summary.Send(printer);
        }

        return book.Fault is not null ? ExitCode.World
            : summary.Withheld.Count > 0 || summary.HasMisfits || (orders.HasRefusals && chosen.IsAll) ? ExitCode.Problems
            : ExitCode.Done;

        void Begin(string templates)
        {
            fonts = PrintBatch.BeginFonts(templates);
            fonts.ContinueWith(_ => FirstMemory.Prepare(), default, TaskContinuationOptions.PreferFairness, TaskScheduler.Default);
        }
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

        void Done(PrintedVolume volume)
        {
            summary.Add(volume, book.Record(volume.Printed.Sets));
            book.KeepLabels(volume.Printed.NextLabels);
        }
    }
}
