using System.CommandLine;
using Tagend.Commands;

namespace Tagend.Fuzz;

/// <summary>Command lines: each is read, or refused in sentences without the program's insides. None is run.</summary>
internal sealed class LinesTarget : ITarget
{
    private const int MostWords = 10;

    private static readonly string[] Values =
    [
        "orders.csv", "1001/string", "", " ", "-", "--", "@file", "\"", "0", "-1", "1e9", "99999999999999999999", "60 1/4", "60 5/16 in", "1530 mm", "nan", "2026-03-14", "2026-13-40", "letter", "a4",
        "none", "postgres://shop@/strings", "finished_length=60", "=", "customer=", "3,7", "1,,2", "cards,tags", "roll-3x2", "in", "mm", "\u001B[2J", "\u202E", "漢", "\uD800", "a=b=c", "--out=", "-o", "/", "--help=x",
    ];

    private readonly IReadOnlyList<string> _words;

    public LinesTarget()
    {
        var root = CommandLine.Parse([]).RootCommandResult.Command;
        var commands = All(root).ToList();
        _words = [.. commands.Select(c => c.Name), .. commands.SelectMany(c => c.Options).Select(o => o.Name).Distinct()];
    }

    public IReadOnlyList<byte[]> Tokens => [];

    public bool Run(Mutation mutation)
    {
        var words = Enumerable.Range(0, mutation.Random.Next(MostWords)).Select(_ => mutation.Pick(mutation.OneIn(3) ? Values : _words)).ToList();
        mutation.Spoiled = System.Text.Encoding.UTF8.GetBytes(string.Join('\n', words));
        var parsed = CommandLine.Parse(words);
        foreach (var fault in CommandLine.Faults(parsed))
        {
            if (fault.Length == 0 || fault.Contains("Exception", StringComparison.Ordinal) || fault.Contains("System.", StringComparison.Ordinal))
            {
                throw new FaultException($"no sentence: {fault}");
            }
        }

        return parsed.Errors.Count == 0;
    }

    public void Dispose()
    {
    }

    private static IEnumerable<Command> All(Command command) => command.Subcommands.SelectMany(All).Prepend(command);
}
