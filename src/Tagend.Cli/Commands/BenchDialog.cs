using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Tags;
using Tagend.Workshop.Books;

namespace Tagend.Commands;

/// <summary>At the bench: a card is scanned, its values are typed, piece after piece until the input ends.</summary>
/// <param name="unit">Of bare numbers.</param>
/// <param name="isAnother">Pieces are built once more where a build of them stands.</param>
internal sealed class BenchDialog(BenchLog bench, LengthUnit unit, TextReader input, bool isAnother)
{
    private const string Scan = "scan a card";

    // Who built the last one: mostly who builds the next.
    private string _who = Terminal.IsAttended ? bench.LastBuilder() : "";

    /// <param name="piece">The only piece, where it is named already.</param>
    public int Run(string? piece)
    {
        var (logged, unread) = (0, 0);
        var text = piece ?? Next(Scan);
        while (text is not null)
        {
            string? scanned = null;
            if (TagReader.Read(text) is TagReading.Spool)
            {
                Console.WriteLine(bench.Mount(text));
            }
            else if (text.Length > 0)
            {
                var found = bench.Find(text);
                var isLogged = found.Spec is { } spec ? Log(spec, out scanned) : Refuse(found.Error!);
                _ = isLogged ? logged++ : unread++;
            }

            text = scanned ?? (piece is null ? Next(Scan) : null);
        }

        if (logged + unread == 0)
        {
            Console.Error.WriteLine("standard input: no card was scanned, nothing is logged");
        }

        return logged == 0 || unread > 0 ? ExitCode.NothingRead : ExitCode.Done;
    }

    private static bool Refuse(string error)
    {
        Console.Error.WriteLine($"not understood: {error}");
        return false;
    }

    /// <summary>Asks for the values; once the length is there, the end of the input or the next card leaves the rest as on the card.</summary>
    /// <param name="scanned">The next card's text, where it was scanned in place of an answer.</param>
    private bool Log(BuildSpec spec, out string? scanned)
    {
        scanned = null;
        foreach (var news in bench.NewsOf(spec))
        {
            Console.WriteLine(news);
        }

        var isMore = isAnother;
        if (!isMore && bench.Before(spec) is { } before && !(isMore = IsOneMore(before, ref scanned)))
        {
            return false;
        }

        if (Terminal.IsAttended)
        {
            Console.WriteLine($"{spec.Order}/{spec.Piece}, revision {spec.Revision}: {LengthWriter.Mark(spec.FinishedLength, unit)}. Enter alone: as on the card.");
        }

        var built = bench.CardOf(spec) with { Who = _who };
        var isMeasured = false;
        foreach (var question in bench.Questions(spec, _who))
        {
            if (Ask(question, spec, built, ref scanned) is not { } answered)
            {
                break;
            }

            built = answered;
            isMeasured |= question.AsCarded is null;
        }

        if (!isMeasured)
        {
            Console.Error.WriteLine($"{spec.Order}/{spec.Piece}: not logged: its length was not given");
            return false;
        }

        if (Enter(spec, built, isMore, ref scanned) is not { } logged)
        {
            return false;
        }

        Console.WriteLine(BuildWording.Logged(logged, unit));
        _who = built.Who;
        return true;
    }

    /// <summary>Logs a build. Another bench may have logged one of the piece while the questions were answered: then it is asked again.</summary>
    private LoggedPiece? Enter(BuildSpec spec, AsBuilt built, bool isMore, ref string? scanned)
    {
        if (!isMore && bench.LogFirst(spec, built) is { } logged)
        {
            return logged;
        }

        return isMore || bench.Before(spec) is not { } before || IsOneMore(before, ref scanned) ? bench.Log(spec, built) : null;
    }

    /// <summary>Asks whether a piece was built once more, where a build of it stands: one card is soon scanned twice.</summary>
    private bool IsOneMore(LoggedPiece before, ref string? scanned)
    {
        if (!Terminal.IsAttended)
        {
            Console.Error.WriteLine($"{BuildWording.Before(before, unit)}; nothing was logged: if this is another one, add --again");
            return false;
        }

        Console.WriteLine($"{BuildWording.Before(before, unit)}.");
        var answer = Next("  another one? yes or no [no]") ?? "";
        scanned = TagReader.Read(answer) is TagReading.Foreign ? scanned : answer;
        var isOneMore = answer.StartsWith("y", StringComparison.OrdinalIgnoreCase);
        if (!isOneMore)
        {
            Console.Error.WriteLine($"{before.Spec.Order}/{before.Spec.Piece}: not logged; to change the values of build {before.Build.Number}: tagend built --correct {before.Build.Number}");
        }

        return isOneMore;
    }

    /// <returns>Null where the input ended or another card was scanned.</returns>
    private AsBuilt? Ask(BuiltQuestion question, BuildSpec spec, AsBuilt built, ref string? scanned)
    {
        while (true)
        {
            var answer = Next(question.AsCarded is { Length: > 0 } carded ? $"  {question.Name} [{carded}]" : $"  {question.Name}");
            if (answer is null)
            {
                return null;
            }

            if (TagReader.Read(answer) is TagReading.Spool)
            {
                Console.WriteLine(bench.Mount(answer));
                (question, built) = (bench.Again(question, spec), bench.WithMounted(spec, built));
                continue;
            }

            if (TagReader.Read(answer) is not TagReading.Foreign)
            {
                scanned = answer;
                return null;
            }

            if (answer.Length == 0 && question.AsCarded is not null)
            {
                return built;
            }

            var read = question.Read(built, answer);
            if (read.Built is not null)
            {
                return read.Built;
            }

            Console.Error.WriteLine($"{question.Name} {read.Error}");
        }
    }

    private string? Next(string question)
    {
        if (Terminal.IsAttended)
        {
            Console.Write($"{question}: ");
        }

        return input.ReadLine()?.Trim();
    }
}
