using System.CommandLine;
using Tagend.Catalog;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary><c>tagend check ORDERS.csv</c>: specs and problems, nothing printed.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var json = new Option<bool>("--json") { Description = "One object a piece, for scripts." };
        var command = new Command("check", "Shows specs and problems of an order file and prints nothing.");
        options.AddTo(command);
        command.Options.Add(json);
        command.SetAction(parsed => Run(options, parsed, parsed.GetValue(json)));
        return command;
    }

    private static int Run(ShopOptions options, ParseResult parsed, bool json)
    {
        if (options.Read(parsed) is not var (catalog, report))
        {
            return ExitCode.Problems;
        }

        var inSheets = CustomerSheet.Check(catalog.Folder, catalog.Shop.Logo);
        ShopOptions.Report(inSheets);
        if (json)
        {
            SpecJson.Write(Console.OpenStandardOutput(), report.Pieces, catalog.Shop);
        }
        else
        {
            // A season's specs are some million lines, too many to write each by itself.
            using var output = new StreamWriter(Console.OpenStandardOutput(), Console.OutputEncoding);
            Write(output, report, catalog);
        }

        return options.Book.HasFailed ? ExitCode.World
            : inSheets.Count > 0 || report.Problems.Any(p => p.Severity == Severity.Refusal) ? ExitCode.Problems
            : ExitCode.Done;
    }

    private static void Write(TextWriter output, SetReport report, ShopCatalog catalog)
    {
        var withheld = report.Withheld.ToHashSet();
        var pull = new PullList(catalog.Shop);
        foreach (var piece in report.Pieces.Where(p => p.Spec is not null))
        {
            SpecText.Write(output, piece.Spec!, piece.Slip);
            if (!withheld.Contains(piece.Order))
            {
                pull.Add(piece);
            }
        }

        PullText.Write(output, pull, report.Ready.Count, catalog);
        output.WriteLine(Summary(report));
    }

    private static string Summary(SetReport report)
    {
        var problems = report.Problems.Count(p => p.Severity == Severity.Refusal);
        var warnings = report.Problems.Count - problems;
        return $"{Counted.Of(report.Ready.Count, "set")} ready, {report.Withheld.Count} withheld; "
            + $"{Counted.Of(problems, "problem")}, {Counted.Of(warnings, "warning")}";
    }
}
