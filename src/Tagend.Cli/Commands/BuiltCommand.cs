using System.CommandLine;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Workshop.Books;

namespace Tagend.Commands;

/// <summary><c>tagend built ORDER/PIECE</c>: logs what was really done, from the command line or at the bench.</summary>
internal static class BuiltCommand
{
    /// <summary>The name of the question who built it.</summary>
    private const string Who = "who";

    public static Command Create(string name)
    {
        var piece = new Argument<string?>("ORDER/PIECE")
        {
            Description = "The piece, such as 1001/string, or its tag's text in quotes. Without it, scan a card and answer, piece after piece.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var book = new BookOptions();
        var values = new BuiltOptions();
        var command = new Command(
            name,
            "Logs what was actually done to a piece; what is not given is taken from the card. Without values it asks for them.")
        {
            piece,
        };
        values.AddTo(command);
        book.AddTo(command);
        command.SetAction(parsed => Run(book, values, parsed, parsed.GetValue(piece)));
        return command;
    }

    private static int Run(BookOptions options, BuiltOptions values, ParseResult parsed, string? piece)
    {
        var given = values.Given(parsed);
        if (values.Misused(parsed, piece, given.Count) is { } misuse)
        {
            Say.Error(misuse);
            return ExitCode.Usage;
        }

        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.OpenOrBegin(parsed, catalog);
        var (unit, bench) = (catalog.Shop.Unit, new BenchLog(book, catalog.Shop.Unit, new SpoolShelf(book.Spools, catalog, BenchName.Here)));
        if (parsed.GetValue(values.Strike) is { } struck)
        {
            bench.Strike(struck, values.WhoOf(parsed), values.ReasonOf(parsed));
            Console.WriteLine($"build {struck} is struck: it no longer counts");
            return ExitCode.Done;
        }

        if (parsed.GetValue(values.Correct) is { } wrong)
        {
            return Logged(bench.Correct(wrong, given, values.WhoOf(parsed), values.ReasonOf(parsed)), bench, unit);
        }

        return piece is null || given.Count == 0
            ? new BenchDialog(bench, unit, Console.In, parsed.GetValue(values.Again)).Run(piece)
            : Logged(bench.Log(piece, WithWho(given, bench), parsed.GetValue(values.Again)), bench, unit);
    }

    /// <summary>At a terminal, whoever built the last one builds this one too, where nobody is named; the answer says who.</summary>
    private static Dictionary<string, string> WithWho(Dictionary<string, string> given, BenchLog bench) =>
        Terminal.IsAttended && !given.ContainsKey(Who) && bench.LastBuilder() is { Length: > 0 } who ? new(given) { [Who] = who } : given;

    private static int Logged(LogAnswer answer, BenchLog bench, LengthUnit unit)
    {
        if (answer.Before is { } before)
        {
            Say.Error($"{BuildWording.Before(before, unit)}; nothing was logged. If this is another one, add --again; "
                + $"to change what was logged: --correct {before.Build.Number}; if it was logged by mistake: --strike {before.Build.Number}");
            return ExitCode.Usage;
        }

        if (answer.Logged is not { } logged)
        {
            Say.Error(answer.IsPieceKnown ? $"--{answer.Error}" : answer.Error!);
            return answer.IsPieceKnown ? ExitCode.Usage : ExitCode.NothingRead;
        }

        foreach (var news in bench.NewsOf(logged.Spec))
        {
            Console.WriteLine(news);
        }

        Console.WriteLine(BuildWording.Logged(logged, unit));
        return ExitCode.Done;
    }
}

/// <summary>The values of <c>built</c>, as texts.</summary>
internal sealed class BuiltOptions
{
    private readonly Option<string?> _who = new("--who") { Description = "Who built it. Default at a terminal: whoever built the last one at this bench.", HelpName = "TEXT" };

    private readonly Option<string?>[] _values;

    public BuiltOptions() => _values =
    [
        new("--posts") { Description = "Posts as set, outside to outside.", HelpName = LengthWords.Value },
        new("--turns") { Description = "Turns as put in.", HelpName = "N" },
        new("--length") { Description = "Length over the pins after stretching.", HelpName = LengthWords.Value },
        new("--load") { Description = "Load on the stretcher, lbf, or N with the unit.", HelpName = "FORCE" },
        new("--minutes") { Description = "Time on the stretcher.", HelpName = "N" },
        _who,
        new("--lots") { Description = "Lots of strand material and thread it was built from, comma-separated.", HelpName = "LIST" },
        new("--spools")
        {
            Description = "Spools it was made from, by number or tag, comma-separated, or none. Default: those at this bench that it is made of.",
            HelpName = "LIST",
        },
    ];

    private readonly Option<string?> _reason = new("--reason") { Description = "Why it is corrected or struck, for whoever reads the log.", HelpName = "TEXT" };

    public Option<bool> Again { get; } = new("--again") { Description = "Log another build of a piece that is already logged as built." };

    public Option<long?> Correct { get; } = new("--correct")
    {
        Description = "Replace the values of this build with those given and keep the others; --who is who corrects it.",
        HelpName = "BUILD",
    };

    public Option<long?> Strike { get; } = new("--strike") { Description = "Strike this build: it was logged by mistake.", HelpName = "BUILD" };

    public void AddTo(Command command)
    {
        foreach (var option in _values.Concat<Option>([Again, Correct, Strike, _reason]))
        {
            command.Options.Add(option);
        }
    }

    public string WhoOf(ParseResult parsed) => parsed.GetValue(_who) ?? "";

    public string ReasonOf(ParseResult parsed) => (parsed.GetValue(_reason) ?? "").ReplaceLineEndings(" ").Trim();

    /// <returns>What is wrong with the options together; null where nothing is.</returns>
    public string? Misused(ParseResult parsed, string? piece, int given)
    {
        var (correct, strike) = (parsed.GetValue(Correct) is not null, parsed.GetValue(Strike) is not null);
        return correct && strike ? "--correct and --strike: choose one of them"
            : (correct || strike) && piece is not null ? $"{(correct ? "--correct" : "--strike")} names the build, and {piece} is not needed"
            : correct && given == 0 ? "--correct: give the values as they should be, such as --length \"60 5/16\""
            : strike && given > 0 ? "--strike takes no values: it only takes the build out of the count"
            : !(correct || strike) && ReasonOf(parsed).Length > 0 ? "--reason goes with --correct or --strike"
            : !(correct || strike) && piece is null && given > 0 ? "name the piece that these values are for, such as 1001/string"
            : EventNote.Fault(WhoOf(parsed), ReasonOf(parsed)) is { } fault ? $"--{fault}" : null;
    }

    /// <summary>By the name of the question each answers.</summary>
    public Dictionary<string, string> Given(ParseResult parsed) => _values
        .Where(v => parsed.GetValue(v) is not null && !(v == _who && (parsed.GetValue(Correct) ?? parsed.GetValue(Strike)) is not null))
        .ToDictionary(v => v.Name[2..], v => parsed.GetValue(v)!);
}
