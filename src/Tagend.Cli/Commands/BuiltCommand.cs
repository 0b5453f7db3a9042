using System.CommandLine;
using Tagend.Workshop.Books;

namespace Tagend.Commands;

/// <summary><c>tagend built ORDER/PIECE</c>: logs what was really done, from the command line or at the bench.</summary>
internal static class BuiltCommand
{
    public static Command Create()
    {
        var piece = new Argument<string?>("ORDER/PIECE")
        {
            Description = "The piece, such as 1001/string, or its tag's text in quotes. Without it, scan a card and answer, piece after piece.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var book = new BookOptions();
        var values = new BuiltOptions();
        var command = new Command(
            "built",
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
        if (piece is null && given.Count > 0)
        {
            Say.Error("name the piece that these values are for, such as 1001/string");
            return ExitCode.Usage;
        }

        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = options.OpenOrBegin(parsed, catalog);
        var (unit, bench) = (catalog.Shop.Unit, new BenchLog(book, catalog.Shop.Unit, new SpoolShelf(book.Spools, catalog, BenchName.Here)));
        if (piece is null || given.Count == 0)
        {
            return new BenchDialog(bench, unit, Console.In).Run(piece);
        }

        var answer = bench.Log(piece, given);
        if (answer.Logged is not { } logged)
        {
            Say.Error(answer.Error!);
            return answer.IsPieceKnown ? ExitCode.Usage : ExitCode.NothingRead;
        }

        if (bench.SupersededBy(logged.Spec) is { } superseded)
        {
            Console.WriteLine(superseded);
        }

        Console.WriteLine(BuildText.Of(logged, unit));
        return ExitCode.Done;
    }
}

/// <summary>The values of <c>built</c>, as texts.</summary>
internal sealed class BuiltOptions
{
    private readonly Option<string?>[] _values =
    [
        new("--posts") { Description = "Posts as set, outside to outside.", HelpName = "LENGTH" },
        new("--turns") { Description = "Turns as put in.", HelpName = "N" },
        new("--length") { Description = "Length over the pins after stretching.", HelpName = "LENGTH" },
        new("--load") { Description = "Load on the stretcher, lbf, or N with the unit.", HelpName = "FORCE" },
        new("--minutes") { Description = "Time on the stretcher.", HelpName = "N" },
        new("--who") { Description = "Who built it.", HelpName = "TEXT" },
        new("--lots") { Description = "Lots of strand material and thread it was built from, comma-separated.", HelpName = "LIST" },
        new("--spools")
        {
            Description = "Spools it was made from, by number or tag, comma-separated, or none. Default: those at this bench that it is made of.",
            HelpName = "LIST",
        },
    ];

    public void AddTo(Command command)
    {
        foreach (var value in _values)
        {
            command.Options.Add(value);
        }
    }

    /// <summary>By the name of the question each answers.</summary>
    public Dictionary<string, string> Given(ParseResult parsed) => _values
        .Where(v => parsed.GetValue(v) is not null)
        .ToDictionary(v => v.Name[2..], v => parsed.GetValue(v)!);
}
