using System.CommandLine;
using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Streams;
using Tagend.Texts;
using Tagend.Workshop.Books;
using Tagend.Workshop.Json;

namespace Tagend.Commands;

/// <summary><c>tagend spools</c>: the shop's spools: what is left, what came in, their tags.</summary>
internal static class SpoolsCommand
{
    private const string SpoolDescription = "A spool's number, or its tag's text in quotes.";

    public static Command Create(string name)
    {
        var all = new Option<bool>("--all") { Description = "Finished ones too." };
        var json = new Option<bool>("--json") { Description = "A list, one object a spool, for scripts." };
        var book = new BookOptions();
        var command = new Command(name, "Lists the shop's spools, first those that run out first; receives them, prints their tags, counts and finishes them.")
        {
            all, json, CreateReceive(), CreateTag(), CreateTake(), CreateCount(), CreateFinish(),
        };
        book.AddTo(command);
        command.SetAction(parsed => With(book, parsed, begin: false, (shelf, _, catalog) =>
        {
            var spools = shelf.Listed(parsed.GetValue(all));
            if (parsed.GetValue(json))
            {
                JsonList.Write(Terminal.Output, spools);
            }
            else
            {
                SpoolText.Write(spools, catalog.Shop.Unit);
            }

            return ExitCode.Done;
        }));
        return command;
    }

    private static Command CreateReceive()
    {
        var name = new Argument<string>("NAME") { Description = "The material or thread, as materials.toml or threads.toml names it." };
        var lot = new Option<string>("--lot") { Description = "The lot, as it stands on the spool.", HelpName = "LOT", Required = true };
        var color = new Option<string>("--color") { Description = "Its color.", HelpName = "COLOR", DefaultValueFactory = _ => "" };
        var length = new Option<string>("--length")
        {
            Description = "What is on it, such as 1000 yd or 900 m. Default: a full one, as the catalog says.",
            HelpName = LengthWords.Value,
            DefaultValueFactory = _ => "",
        };
        var count = new Option<int>("--count") { Description = "So many that are alike.", HelpName = "N", DefaultValueFactory = _ => 1 };
        var (book, tags) = (new BookOptions(), new SpoolTagOptions());
        var command = new Command("receive", "Enters spools that came in and prints their tags, spools.pdf.") { name, lot, color, length, count };
        tags.AddTo(command);
        book.AddTo(command);
        command.SetAction(parsed => With(book, parsed, begin: true, (shelf, spools, catalog) =>
        {
            var form = new SpoolForm(
                parsed.GetValue(name)!, parsed.GetValue(color)!, parsed.GetValue(lot)!, parsed.GetValue(length)!, parsed.GetValue(count));
            var (read, faults) = SpoolReception.Read(form, catalog, DateOption.Of(null));
            foreach (var fault in faults)
            {
                Say.Error($"{(fault.Field == "name" ? "" : $"--{fault.Field} ")}{fault.Message}");
            }

            if (faults.Count > 0)
            {
                return ExitCode.Usage;
            }

            var received = spools.Receive(read, Guid.NewGuid());
            foreach (var spool in received)
            {
                Console.WriteLine($"{SpoolWording.Name(shelf.Find($"{spool.Number}").Spool!)}: received, {LengthWriter.Spool(spool.Length, catalog.Shop.Unit)}");
            }

            return tags.Print(parsed, received, catalog);
        }));
        return command;
    }

    private static Command CreateTag()
    {
        var numbers = new Argument<string[]>("SPOOL") { Description = SpoolDescription, Arity = ArgumentArity.OneOrMore };
        var (book, tags) = (new BookOptions(), new SpoolTagOptions());
        var command = new Command("tag", "Prints the tags of spools again, spools.pdf.") { numbers };
        tags.AddTo(command);
        book.AddTo(command);
        command.SetAction(parsed => With(book, parsed, begin: false, (shelf, _, catalog) =>
            Found(shelf, parsed.GetValue(numbers)!, out var found) ? tags.Print(parsed, [.. found.Select(s => s.Spool)], catalog) : ExitCode.NothingRead));
        return command;
    }

    private static Command CreateTake() => OfOne("take", "Takes a spool to this bench, as scanning its tag does.", [], (shelf, _, spool, unit, _) =>
    {
        Console.WriteLine(SpoolWording.Mounted(shelf.Mount(spool), unit));
        return ExitCode.Done;
    });

    private static Command CreateCount()
    {
        var left = new Option<string>("--left") { Description = "What is on it, such as 300 yd or 270 m.", HelpName = LengthWords.Value, Required = true };
        return OfOne("count", "Enters what was found on a spool by scale or tape; it is counted from there.", [left], (shelf, _, spool, unit, parsed) =>
        {
            var count = shelf.Count(spool, parsed.GetValue(left)!, Guid.NewGuid());
            if (count.Error is { } error)
            {
                Say.Error($"--left {error}");
                return ExitCode.Usage;
            }

            Console.WriteLine($"{SpoolWording.Name(spool)}: {LengthWriter.Spool(count.Left, unit)} left as counted, {LengthWriter.Spool(Length.Abs(spool.Left), unit)} {(spool.Left < Length.Zero ? "too much used" : "left")} before");
            return ExitCode.Done;
        });
    }

    private static Command CreateFinish() => OfOne("finish", "Takes a spool that is used up or thrown away out of the lists.", [], (_, spools, spool, unit, _) =>
    {
        spools.Finish(spool.Spool.Number);
        Console.WriteLine($"{SpoolWording.Name(spool)}: finished; {SpoolWording.Left(spool, unit)}");
        return ExitCode.Done;
    });

    private static Command OfOne(
        string name, string description, IEnumerable<Option> options, Func<SpoolShelf, ISpools, KeptSpool, LengthUnit, ParseResult, int> act)
    {
        var number = new Argument<string>("SPOOL") { Description = SpoolDescription };
        var book = new BookOptions();
        var command = new Command(name, description) { number };
        foreach (var option in options)
        {
            command.Options.Add(option);
        }

        book.AddTo(command);
        command.SetAction(parsed => With(book, parsed, begin: false, (shelf, spools, catalog) =>
            Found(shelf, [parsed.GetValue(number)!], out var found) ? act(shelf, spools, found[0], catalog.Shop.Unit, parsed) : ExitCode.NothingRead));
        return command;
    }

    private static bool Found(SpoolShelf shelf, string[] texts, out IReadOnlyList<KeptSpool> spools)
    {
        List<FoundSpool> found = [.. texts.Select(shelf.Find)];
        found.ForEach(f =>
        {
            if (f.Error is { } error)
            {
                Say.Error(error);
            }
        });
        spools = [.. found.Select(f => f.Spool).OfType<KeptSpool>()];
        return spools.Count == texts.Length;
    }

    private static int With(BookOptions options, ParseResult parsed, bool begin, Func<SpoolShelf, ISpools, ShopCatalog, int> act)
    {
        if (options.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        using var book = begin ? options.OpenOrBegin(parsed, catalog) : options.Open(parsed, catalog);
        return act(new SpoolShelf(book.Spools, catalog, BenchName.Here), book.Spools, catalog);
    }
}
