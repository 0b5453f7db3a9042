using System.CommandLine;
using System.Globalization;
using System.Text;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Json;

namespace Tagend.Commands;

/// <summary><c>tagend check ORDERS.csv</c>: specs and problems, nothing printed.</summary>
internal static class CheckCommand
{
    [ThreadStatic]
    private static StringWriter? _text; // kept from piece to piece: a season's texts are some million lines

    public static Command Create(string name)
    {
        var options = new ShopOptions();
        var json = new Option<bool>("--json") { Description = "One JSON object per piece, for scripts." };
        var command = new Command(name, "Shows specs and problems of an order file and prints nothing.");
        options.AddTo(command);
        command.Options.Add(json);
        command.SetAction(parsed => Run(options, parsed, parsed.GetValue(json)));
        return command;
    }

    private static int Run(ShopOptions options, ParseResult parsed, bool json)
    {
        if (options.Read(parsed) is not var (orders, book))
        {
            return ExitCode.Problems;
        }

        Say.Problems(orders.Report.Problems);
        var inSheets = orders.CheckSheets();
        Say.Problems(inSheets);
        if (json)
        {
            JsonList.Write(Terminal.Output, orders.Report.Pieces, orders.Catalog.Shop);
        }
        else
        {
            // A season's specs are some million lines, too many to write each by itself.
            using var output = Terminal.Buffered();
            Write(output, orders, book.Shelf(BenchName.Here));
        }

        return book.Fault is not null ? ExitCode.World
            : inSheets.Count > 0 || orders.HasRefusals ? ExitCode.Problems
            : ExitCode.Done;
    }

    private static void Write(TextWriter output, CheckedOrders orders, IReadOnlyList<ShelfSpool> shelf)
    {
        var withheld = orders.Report.Withheld.ToHashSet();
        var pull = new PullList(orders.Catalog.Shop, shelf);
        foreach (var (text, spec) in SideBySide.Select(orders.Report.Pieces, TextOf))
        {
            output.Write(text);
            if (spec is not null && !withheld.Contains(spec.Order))
            {
                pull.Add(spec);
            }
        }

        if (pull.Finished() is { } finished)
        {
            PullText.Write(output, finished, orders.Catalog);
        }

        foreach (var note in TemplatesNote.Of(orders.Catalog))
        {
            output.WriteLine(note);
        }

        output.WriteLine(Summary(orders.Report));
    }

    private static (string Text, BuildSpec? Spec) TextOf(PieceReport piece)
    {
        if (piece.Spec is not { } spec)
        {
            return ("", null);
        }

        const int UsualLength = 2048;
        var text = _text ??= new StringWriter(new StringBuilder(UsualLength), CultureInfo.InvariantCulture);
        text.GetStringBuilder().Clear();
        SpecText.Write(text, spec, piece.Slip);
        return (text.ToString(), spec);
    }

    private static string Summary(SetReport report)
    {
        var problems = report.Problems.Count(p => p.Severity == Severity.Refusal);
        var warnings = report.Problems.Count - problems;
        return $"{Counted.Of(report.Ready.Count, "set")} ready, {report.Withheld.Count} withheld; "
            + $"{Counted.Of(problems, "problem")}, {Counted.Of(warnings, "warning")}";
    }
}
