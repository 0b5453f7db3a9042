using System.CommandLine;
using Spectre.Console;
using Tagend.Output;
using Tagend.Problems;

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
        var run = new PrintRun(catalog, plan);
        var chosen = orders.Count == 0 ? report.Sets : [.. report.Sets.Where(s => orders.Contains(s.Order))];
        var printed = run.Compose(chosen);
        ShopOptions.Report(printed.Problems);
        if (printed.Files.Count > 0)
        {
            WholeFiles.Write(printed.Files);
        }

        var withheld = report.Withheld.Where(o => orders.Count == 0 || orders.Contains(o)).Concat(printed.Withheld).ToList();
        Show(printed, withheld);
        options.Book.Record(printed.Sets, Console.Out);
        if (plan.Printer is { } printer)
        {
            Send(printed.Papers, printer);
        }

        return options.Book.HasFailed ? ExitCode.World
            : withheld.Count > 0 || refused && orders.Count == 0 ? ExitCode.Problems
            : ExitCode.Done;
    }

    /// <summary>One document after the other; the first that is not taken ends it.</summary>
    private static void Send(IReadOnlyList<PrintedPaper> papers, string printer)
    {
        foreach (var paper in papers)
        {
            var job = PrintQueue.Send(printer, paper.Path, paper.Title, paper.Paper);
            Console.WriteLine($"{paper.Path}: sent to {printer}, job {job}");
        }
    }

    private static void Show(PrintedSets printed, List<string> withheld)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumns("order", "pieces", "result");
        foreach (var set in printed.Sets)
        {
            table.AddRow(Cell(set.Order), Cell(string.Join(", ", set.Builds.Select(b => b.Spec.Piece))), new Text("printed"));
        }

        foreach (var order in withheld)
        {
            table.AddRow(Cell(order), Cell(""), new Text("not printed: see the problems above"));
        }

        AnsiConsole.Write(table);
        foreach (var file in printed.Papers)
        {
            Console.WriteLine($"{file.Path}: {Counted.Of(file.Pages, "page")}");
        }

        Console.WriteLine($"{Counted.Of(printed.Sets.Count, "set")} printed, {withheld.Count} not printed");

        static Text Cell(string text) => new(text.ReplaceLineEndings(" "));
    }
}
