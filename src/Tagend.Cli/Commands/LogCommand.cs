using System.CommandLine;
using System.Globalization;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Commands;

/// <summary><c>tagend log ORDER</c>: all that was done to an order, in the order it was done.</summary>
internal static class LogCommand
{
    public static Command Create(string name)
    {
        var part = new Argument<string>("ORDER") { Description = "An order such as 701, or a piece such as 701/buss." };
        var book = new BookOptions();
        var command = new Command(name, "Shows all that was done to an order or a piece: printed, built, corrected, shipped, with who, where and why.") { part };
        book.AddTo(command);
        command.SetAction(parsed => Run(book, parsed, parsed.GetValue(part)!));
        return command;
    }

    private static int Run(BookOptions options, ParseResult parsed, string text)
    {
        if (OrderPart.Read(text, out var error) is not { } part)
        {
            Say.Error(error);
            return ExitCode.Usage;
        }

        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.Open(parsed, catalog);
        var history = OrderHistory.Of(part, book, catalog.Shop.Unit);
        if (history.Count == 0)
        {
            Say.Error($"there is nothing of {part} in the job book; tagend orders lists what was printed");
            return ExitCode.NothingRead;
        }

        foreach (var entry in history)
        {
            Console.WriteLine(Line(entry));
        }

        return ExitCode.Done;
    }

    private static string Line(HistoryEntry entry)
    {
        var (who, bench, reason) = entry.Note;
        return $"{entry.At.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}  "
            + (entry.Piece.Length > 0 ? $"{entry.Piece}: " : "")
            + entry.What
            + (reason.Length > 0 ? $" ({reason})" : "")
            + (who.Length > 0 ? $", {who}" : "")
            + (bench.Length > 0 ? $", at {bench}" : "");
    }
}
