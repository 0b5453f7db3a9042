using System.CommandLine;
using Tagend.Jobs;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary><c>tagend shipped</c>, <c>cancelled</c>, <c>reopened</c>: what became of an order or of one piece of it.</summary>
internal static class StateCommand
{
    public static Command Create(string name, EventKind what, string description)
    {
        var parts = new Argument<string[]>("ORDER")
        {
            Description = "Orders such as 701, or pieces such as 701/buss.",
            Arity = ArgumentArity.OneOrMore,
        };
        var note = new NoteOptions();
        var book = new BookOptions();
        var command = new Command(name, description) { parts };
        note.AddTo(command);
        book.AddTo(command);
        command.SetAction(parsed => Run(book, note, parsed, parsed.GetValue(parts)!, what));
        return command;
    }

    private static int Run(BookOptions options, NoteOptions note, ParseResult parsed, string[] parts, EventKind what)
    {
        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.Open(parsed, catalog);
        var log = new BookLog(book);
        var exitCode = ExitCode.Done;
        foreach (var text in parts)
        {
            var part = OrderPart.Read(text, out var error);
            var answer = part is null ? new StateAnswer([], [], error) : log.Enter(part, what, note.WhoOf(parsed), note.ReasonOf(parsed));
            if (answer.Error is not null)
            {
                Say.Error(answer.Error);
                exitCode = ExitCode.Usage;
                continue;
            }

            Console.WriteLine($"{part}: {string.Join("; ", answer.Pieces.GroupBy(p => p.State).Select(g => $"{StateWords.Of(g.Key)} {string.Join(", ", g.Select(p => p.Piece))}"))}");
            foreach (var remark in answer.Remarks)
            {
                Console.WriteLine(remark);
            }
        }

        return exitCode;
    }
}

/// <summary>Who does something, and why: kept in the log.</summary>
internal sealed class NoteOptions
{
    private readonly Option<string?> _who = new("--who") { Description = "Who logs it: initials or a name.", HelpName = "TEXT" };
    private readonly Option<string?> _reason = new("--reason") { Description = "Why, for whoever reads the log.", HelpName = "TEXT" };

    public void AddTo(Command command)
    {
        command.Options.Add(_who);
        command.Options.Add(_reason);
        command.Check(result =>
        {
            if (EventNote.Fault(Plain(result.GetValue(_who)), Plain(result.GetValue(_reason))) is { } fault)
            {
                result.AddError($"--{fault}");
            }
        });
    }

    public string WhoOf(ParseResult parsed) => Plain(parsed.GetValue(_who));

    public string ReasonOf(ParseResult parsed) => Plain(parsed.GetValue(_reason));

    /// <summary>On one line: the log is read in lines.</summary>
    private static string Plain(string? text) => (text ?? "").ReplaceLineEndings(" ").Trim();
}
