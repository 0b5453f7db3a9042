using System.CommandLine;
using Tagend.Catalog;
using Tagend.Imports;
using Tagend.Measures;
using Tagend.Options;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Streams;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend map FILE</c>: proposes how a shop's own spreadsheet or a store's export is read, and keeps it.</summary>
internal static class MapCommand
{
    /// <summary>Rows of the file whose pieces are shown.</summary>
    private const int ShownRows = 3;

    public static Command Create(string name)
    {
        var file = new Argument<string>("FILE.csv") { Description = "A spreadsheet or an export with some orders in it." }.NamesSomething();
        var mapName = new Option<string?>("--name") { Description = "Name of the map. Default: the file's name without its numbers.", HelpName = "NAME" };
        var replace = new Option<bool>("--replace") { Description = "Overwrite a map of that name." };
        var show = new Option<bool>("--show") { Description = "Print the map and write nothing." };
        var templates = ShopOptions.TemplatesOption();
        var command = new Command(name, "Proposes a map that reads files like this one as orders, shows the first rows read with it, and saves it in imports.")
        {
            file, mapName, replace, show, templates,
        };
        command.SetAction(parsed => Run(
            parsed.GetValue(file)!, parsed.GetValue(mapName), parsed.GetValue(replace), parsed.GetValue(show), parsed.GetValue(templates)));
        return command;
    }

    private static int Run(string path, string? wanted, bool replace, bool show, string? templates)
    {
        if (ShopOptions.ReadCatalog(templates) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        if (wanted is not null && !wanted.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_'))
        {
            Say.Error($"--name \"{wanted}\": expected letters, digits and hyphens, such as web-store");
            return ExitCode.Usage;
        }

        if (!show && ShopFolders.Here.IsShipped(catalog.Folder))
        {
            Say.Error(
                "a map is kept in your shop's templates, and these are the program's own: make yours with tagend init, "
                + "then run this again; or add --show to see the map only");
            return ExitCode.Usage;
        }

        if (!replace && ShopMaps.AlreadyRead(path, catalog) is { } already)
        {
            Console.WriteLine(already);
            return ExitCode.Done;
        }

        var name = (wanted ?? MapProposal.NameFor(path)).ToLowerInvariant();
        var target = ShopMaps.PathOf(name, catalog);
        if (!show && !replace && File.Exists(target))
        {
            Say.Error($"{target} already exists and does not fit this file: add --replace to overwrite it, or --name NAME to keep both");
            return ExitCode.Usage;
        }

        var proposed = ShopMaps.Propose(path, OrderReader.Load(path), name, catalog, DateOption.Of(null));
        if (proposed.Proposal is not { } proposal)
        {
            Say.Problems(proposed.Problems);
            return ExitCode.Problems;
        }

        if (show)
        {
            Console.Write(proposal.Toml);
            return ExitCode.Done;
        }

        Write(proposed.Read!, proposal, catalog);
        Say.Problems(proposed.Problems);
        ShopMaps.Keep(proposal, target);
        Console.WriteLine($"{target}: written. Look through it, then run: tagend check {path}");
        return proposed.Problems.Any(p => p.Severity == Severity.Refusal) ? ExitCode.Problems : ExitCode.Done;
    }

    private static void Write(OrderFile file, MapProposal proposal, ShopCatalog catalog)
    {
        foreach (var row in file.Lines.GroupBy(l => l.Row.Line).Take(ShownRows))
        {
            var first = row.First();
            var who = new[] { first.Slip.Customer, first.Slip.Bow, first.Slip.Due.Length > 0 ? $"due {first.Slip.Due}" : "" }.Where(t => t.Length > 0);
            Console.WriteLine($"line {row.Key}: order {first.Order}{string.Concat(who.Select(t => $", {t}"))}");
            foreach (var line in row)
            {
                Console.WriteLine($"    {line.Piece}: {string.Join(", ", Parts(line, catalog))}");
            }
        }

        foreach (var remark in file.Remarks)
        {
            Console.WriteLine(remark);
        }

        Mention("Printed nowhere", proposal.Map.Never.Except(proposal.NotUnderstood));
        Mention("Not understood, and printed nowhere", proposal.NotUnderstood);
        foreach (var doubt in proposal.Doubts)
        {
            Console.WriteLine($"Please check: {doubt}");
        }
    }

    private static IEnumerable<string> Parts(OrderLine line, ShopCatalog catalog)
    {
        var unit = catalog.Shop.Unit;
        string? length = line.FinishedLength is { } finished ? LengthWriter.Mark(finished, unit)
            : line.BowLength is { } bow ? $"bow of {LengthWriter.Mark(bow, unit)}" : null;
        string?[] parts =
        [
            length,
            line.Kind,
            line.Strands is { } strands ? $"{strands} strands" : null,
            line.Material,
            line.Colors is { } colors ? string.Join(" and ", colors.Select(c => c.Name)) : null,
            line.Peep is { } peep ? $"peep at {LengthWriter.Mark(peep.Distance, unit)}" : null,
            line.CenterServing is { } center ? $"center serving {center.Text}" : null,
        ];
        return parts.OfType<string>();
    }

    private static void Mention(string what, IEnumerable<string> headers)
    {
        var all = string.Join(", ", headers);
        if (all.Length > 0)
        {
            Console.WriteLine($"{what}: {all}");
        }
    }
}
