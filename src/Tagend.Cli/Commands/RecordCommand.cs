using System.CommandLine;
using Tagend.Catalog;
using Tagend.Options;
using Tagend.Orders;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop;
using Tagend.Workshop.Printing;

namespace Tagend.Commands;

/// <summary><c>tagend record ORDER</c>: what was measured of a set, on one page.</summary>
internal static class RecordCommand
{
    public static Command Create(string name)
    {
        var order = new Argument<string>("ORDER") { Description = "The order's number, as it was printed." };
        var tags = new Option<bool>("--tags") { Description = "Also prints its tags again with the measured lengths." };
        var language = new Option<string?>("--language") { Description = "Language of the record. Default: the order's own, else as shop.toml says.", HelpName = "LANGUAGE" };
        var labels = new Option<string?>("--labels") { Description = "Label stock of the tags, from stocks.toml. Default: as shop.toml says.", HelpName = "STOCK" };
        var (paper, folder) = (PaperOption.Create("Paper of the record. Default: as shop.toml says."), FolderOption.Create("the record"));
        var book = new BookOptions();
        var command = new Command(name, "Prints what was measured of a built set, one page: lengths, tolerances, loads, turns, lots.")
        {
            order, tags, paper, language, labels, folder,
        };
        book.AddTo(command);
        command.SetAction(parsed =>
        {
            if (book.ReadCatalog(parsed) is not { } catalog)
            {
                return ExitCode.Problems;
            }

            var text = parsed.GetValue(order)!;
            var number = NameReader.TryReadOrder(text, out var read, out _) ? read : text;
            using var opened = book.Open(parsed, catalog);
            if (RecordPaper.Of(number, opened) is not { } set)
            {
                Say.Error($"there is no order {number} in the job book that is to be made; tagend jobs lists what was printed");
                return ExitCode.NothingRead;
            }

            var (papers, problems) = RecordPaper.Print(
                set,
                catalog,
                new RecordPlan
                {
                    Folder = parsed.GetValue(folder)!,
                    Paper = PaperSet.Named(parsed.GetValue(paper)),
                    Language = parsed.GetValue(language),
                    HasTags = parsed.GetValue(tags),
                    Labels = parsed.GetValue(labels),
                },
                DateOption.Of(null));
            Say.Problems(problems);
            foreach (var made in papers)
            {
                Console.WriteLine(Say.Of(made));
            }

            Warn(set);
            return problems.Count > 0 ? ExitCode.Problems : ExitCode.Done;
        });
        return command;
    }

    private static void Warn(BuildSet set)
    {
        var missing = set.Builds.Where(b => b.Measured is null).Select(b => b.Spec.Piece).ToList();
        if (missing.Count > 0)
        {
            Console.WriteLine($"{Counted.Of(missing.Count, "piece")} without a build in the log, said on the record: {string.Join(", ", missing)}");
        }

        var outside = set.Builds.Where(b => b.Measured?.IsWithin(b.Spec) == false).Select(b => b.Spec.Piece).ToList();
        if (outside.Count > 0)
        {
            Console.WriteLine($"{Counted.Of(outside.Count, "piece")} out of tolerance, said on the record: {string.Join(", ", outside)}");
        }
    }
}
