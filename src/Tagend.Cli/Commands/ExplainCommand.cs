using System.CommandLine;
using Tagend.Specs;
using Tagend.Specs.Explained;

namespace Tagend.Commands;

/// <summary><c>tagend explain ORDERS.csv ORDER/PIECE</c>: how each number of a piece came about.</summary>
internal static class ExplainCommand
{
    public static Command Create()
    {
        var options = new ShopOptions(isOneFile: true);
        var piece = new Argument<PieceName>("ORDER/PIECE")
        {
            Description = "The piece, such as 1001/string.",
            CustomParser = result => PieceName.Read(result.Tokens[0].Value, result.AddError),
        };
        var json = new Option<bool>("--json") { Description = "One object a step, for scripts." };
        var command = new Command("explain", "Shows how each number of a piece was computed, and where it comes from.");
        options.AddTo(command);
        command.Arguments.Add(piece);
        command.Options.Add(json);
        command.SetAction(parsed => Run(options, parsed, parsed.GetValue(piece)!, parsed.GetValue(json)));
        return command;
    }

    private static int Run(ShopOptions options, ParseResult parsed, PieceName name, bool json)
    {
        if (options.ReadQuietly(parsed) is not var (catalog, orders, report))
        {
            return ExitCode.Problems;
        }

        var pieces = report.Pieces.Where(p => p.Order == name.Order && p.Piece == name.Piece).ToList();
        if (pieces.Count == 0)
        {
            return SayWhatThereIs(report, name);
        }

        ShopOptions.Report(pieces.SelectMany(p => p.Problems));
        if (pieces.Find(p => p.Spec is not null) is not { Spec: { } spec })
        {
            return ExitCode.Problems;
        }

        var row = orders.Rows.Index().First(r => r.Item.Order == name.Order && r.Item.Piece == name.Piece).Index;
        var steps = Explanation.Of(spec, orders.Lines[row], catalog);
        if (json)
        {
            ExplanationJson.Write(Console.OpenStandardOutput(), steps);
        }
        else
        {
            ExplanationText.Write(Console.Out, spec, steps);
        }

        return options.Book.HasFailed ? ExitCode.World : ExitCode.Done;
    }

    private static int SayWhatThereIs(SetReport report, PieceName name)
    {
        if (report.Pieces.Count == 0)
        {
            ShopOptions.Report(report.Problems);
            return ExitCode.Problems;
        }

        var pieces = report.Pieces.Where(p => p.Order == name.Order).Select(p => p.Piece).Distinct().ToList();
        Console.Error.WriteLine(pieces.Count > 0
            ? $"tagend: there is no piece {name.Piece} in order {name.Order}; there are {string.Join(", ", pieces)}"
            : $"tagend: there is no order {name.Order} in the file; there are {string.Join(", ", report.Pieces.Select(p => p.Order).Distinct())}");
        return ExitCode.Usage;
    }
}
