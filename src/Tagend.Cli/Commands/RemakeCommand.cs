using System.CommandLine;
using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Options;
using Tagend.Pages;
using Tagend.Streams;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary><c>tagend remake ORDER/PIECE</c>: a piece that is to be made again, with its papers.</summary>
internal static class RemakeCommand
{
    /// <summary>What a bench needs to make a piece again, as tags name the kinds.</summary>
    private static readonly string[] Papers = ["card", "strip", "tag"];

    public static Command Create(string name)
    {
        var parts = new Argument<string[]>("ORDER")
        {
            Description = "Pieces such as 701/buss, or orders such as 701 for all their pieces.",
            Arity = ArgumentArity.OneOrMore,
        };
        var note = new NoteOptions();
        var paper = new RemakeOptions();
        var command = new Command(name, "Logs that a piece is to be remade, whatever was built, and prints its card, strip and tag from the job book.") { parts };
        note.AddTo(command);
        paper.AddTo(command);
        command.SetAction(parsed => Run(paper, note, parsed, parsed.GetValue(parts)!));
        return command;
    }

    private static int Run(RemakeOptions options, NoteOptions note, ParseResult parsed, string[] parts)
    {
        if (options.Book.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.Book.Open(parsed, catalog);
        var (log, runBook) = (new BookLog(book), options.RunBook(parsed, catalog));
        var printing = new AgainPrinting(new AgainRun(catalog, options.PlanOf(parsed), runBook), runBook, ownsOutput: false);
        var (isWrong, reason) = (false, note.ReasonOf(parsed));
        foreach (var text in parts)
        {
            var part = OrderPart.Read(text, out var fault);
            var error = part is null ? fault : log.Refusal(part, EventKind.Remade, reason);
            if (error is null && BookScan.Find(text, book) is { } scan)
            {
                // The papers first: a bench waits for them, and the log does not.
                error = scan.Message ?? (printing.Add(scan.Specs) ? log.Enter(part!, EventKind.Remade, note.WhoOf(parsed), reason).Error : null);
            }

            if (error is not null)
            {
                Say.Error(error);
                isWrong = true;
            }
        }

        var exitCode = printing.End();
        return isWrong ? ExitCode.Usage : exitCode;
    }

    /// <summary>The options of <c>remake</c>.</summary>
    private sealed class RemakeOptions
    {
        private readonly Option<string> _folder = FolderOption.Create("what is printed again");
        private readonly Option<string?> _paper = PaperOption.Create("Paper of the card and the strip. Default: as shop.toml says.");

        private readonly Option<string?> _labels = new Option<string?>("--labels")
        {
            Description = "Label stock of the tag, from stocks.toml. Default: as shop.toml says.",
            HelpName = "STOCK",
        }.CompletesStocks();

        public BookOptions Book { get; } = new();

        public void AddTo(Command command)
        {
            foreach (var option in new Option[] { _folder, _paper, _labels })
            {
                command.Options.Add(option);
            }

            Book.AddTo(command);
        }

        public RunBook RunBook(ParseResult parsed, ShopCatalog catalog) => new(Book.AddressOf(parsed, catalog), TimeProvider.System, BenchName.Here);

        public AgainPlan PlanOf(ParseResult parsed) => new()
        {
            Kinds = [.. PageKinds.All.Where(k => Papers.Contains(k.FromTag))],
            Changes = [],
            Folder = parsed.GetValue(_folder)!,
            Paper = PaperSet.Named(parsed.GetValue(_paper)),
            Labels = parsed.GetValue(_labels),
            Date = DateOption.Of(null),
        };
    }
}
