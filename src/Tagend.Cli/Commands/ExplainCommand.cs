using System.CommandLine;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop.Json;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary><c>tagend explain ORDERS.csv ORDER/PIECE</c>: how each number of a piece came about.</summary>
internal static class ExplainCommand
{
    public static Command Create(string name)
    {
        var options = new ShopOptions(isOneFile: true);
        var piece = new Argument<PieceName>("ORDER/PIECE")
        {
            Description = "The piece, such as 1001/string.",
            CustomParser = result =>
            {
                var name = PieceName.Read(result.Tokens[0].Value, out var error);
                if (name is null)
                {
                    result.AddError(error);
                }

                return name!;
            },
        };
        var json = new Option<bool>("--json") { Description = "One JSON object per step, for scripts." };
        var command = new Command(name, "Shows how each number of a piece was computed, and where it comes from.");
        options.AddTo(command);
        command.Arguments.Add(piece);
        command.Options.Add(json);
        command.SetAction(parsed => Run(options, parsed, parsed.GetValue(piece)!, parsed.GetValue(json)));
        return command;
    }

    private static int Run(ShopOptions options, ParseResult parsed, PieceName name, bool json)
    {
        if (options.Read(parsed) is not var (orders, book))
        {
            return ExitCode.Problems;
        }

        var explained = orders.Explain(name);
        Say.Problems(explained.Problems);
        if (explained.Missing is { } missing)
        {
            Say.Error(missing);
            return ExitCode.Usage;
        }

        if (explained.Spec is not { } spec)
        {
            return ExitCode.Problems;
        }

        if (json)
        {
            JsonList.Write(Terminal.Output, explained.Steps);
        }
        else
        {
            ExplanationText.Write(Console.Out, spec, explained.Steps);
        }

        return book.Fault is not null ? ExitCode.World : ExitCode.Done;
    }
}
