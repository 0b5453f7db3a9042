using System.CommandLine;
using Tagend.Bows;
using Tagend.Catalog;
using Tagend.Options;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Streams;
using Tagend.Workshop;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Readings;
using Tagend.Workshop.Shops;

namespace Tagend.Commands;

/// <summary><c>tagend bow</c>: lists the bow book, or keeps pieces as a bow of it.</summary>
internal static class BowCommand
{
    public static Command Create(string name)
    {
        var options = new BowOptions();
        var command = new Command(name, "Lists the bows of the bow book, or keeps pieces that were ordered or built as a bow of that name.");
        options.AddTo(command);
        command.SetAction(parsed => Run(options, parsed));
        return command;
    }

    private static int Run(BowOptions options, ParseResult parsed)
    {
        if (options.Shop.ReadCatalog(parsed) is not { } catalog)
        {
            return ExitCode.Problems;
        }

        if (parsed.GetValue(options.Name) is not { } name)
        {
            return List(catalog);
        }

        if (name.Trim().Length == 0 || !ShownText.IsShown(name))
        {
            Say.Error("expected the bow's name, such as \"Owner's bow 1\"");
            return ExitCode.Usage;
        }

        if (ShopFolders.Here.IsShipped(catalog.Folder))
        {
            Say.Error("a bow is kept in your shop's templates, and these are the program's own: make yours with tagend init, then run this again");
            return ExitCode.Usage;
        }

        var specs = options.SpecsOf(parsed, catalog, out var error);
        if (specs.Count == 0)
        {
            Say.Error(error ?? "say which pieces: --order NUMBER, from the job book or with --from ORDERS.csv; or --tag TAG");
            return ExitCode.Usage;
        }

        if (specs.GroupBy(s => s.Piece).FirstOrDefault(p => p.Count() > 1) is { } twice)
        {
            Say.Error($"there are {twice.Count()} pieces called {twice.Key}: give one tag of each piece");
            return ExitCode.Usage;
        }

        if (ShopBows.Keep(name.Trim(), specs, catalog, parsed.GetValue(options.Replace)) is not { } path)
        {
            Say.Error($"there is already a bow {name} in the book: add --replace to overwrite it");
            return ExitCode.Usage;
        }

        Console.WriteLine($"{path}: {Counted.Of(specs.Count, "piece")} kept as {name.Trim()}: {string.Join(", ", specs.Select(s => s.Piece))}. From now on an order of it needs only bow, colors and customer");
        return ExitCode.Done;
    }

    private static int List(ShopCatalog catalog)
    {
        var (book, problems) = ShopBows.Read(catalog);
        foreach (var bow in book.Bows)
        {
            var also = bow.Also.Count > 0 ? $" (also {string.Join("; ", bow.Also)})" : "";
            Console.WriteLine($"{bow.Bow}{also}: {string.Join(", ", bow.Pieces.Select(Shown))}");
        }

        Console.WriteLine(Counted.Of(book.Bows.Count, "bow"));
        Say.Problems(problems);
        return problems.Count > 0 ? ExitCode.Problems : ExitCode.Done;
    }

    private static string Shown(BowPiece piece) =>
        $"{piece.Name} {piece.Cells.GetValueOrDefault(OrderColumn.FinishedLength) ?? $"of {piece.Cells[OrderColumn.BowLength]}"}";
}

/// <summary>The options of <c>bow</c>.</summary>
internal sealed class BowOptions
{
    private readonly Option<string?> _order = new("--order")
    {
        Description = "Keep the pieces of this order, from the job book or from the file that --from names.",
        HelpName = "NUMBER",
    };

    private readonly Option<string?> _from =
        new Option<string?>("--from") { Description = "The order file to take the order from.", HelpName = "ORDERS.csv" }.NamesSomething();

    private readonly Option<string[]> _tags = new Option<string[]>("--tag")
    {
        Description = "Keep the pieces of these tags: pictures, or a tag's text in quotes.",
        HelpName = "TAG",
    }.NamesSomething();

    public Argument<string?> Name { get; } = new("NAME")
    {
        Description = "The bow's name. Without one, the book is listed.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public Option<bool> Replace { get; } = new("--replace") { Description = "Overwrite a bow of that name." };

    public BookOptions Shop { get; } = new();

    public void AddTo(Command command)
    {
        command.Arguments.Add(Name);
        foreach (var option in new Option[] { _order, _from, _tags, Replace })
        {
            command.Options.Add(option);
        }

        Shop.AddTo(command);
    }

    /// <summary>The pieces that are to be kept; none, with what is wrong, where they cannot be had.</summary>
    public IReadOnlyList<BuildSpec> SpecsOf(ParseResult parsed, ShopCatalog catalog, out string? error)
    {
        error = null;
        if (parsed.GetValue(_tags) is { Length: > 0 } tags)
        {
            var scans = tags.SelectMany(t => TagScan.Read(t, TextReader.Null)).ToList();
            error = scans.Find(s => s.Message is not null) is { } unread ? $"{unread.Source}: {unread.Message}" : null;
            return error is null ? [.. scans.SelectMany(s => s.Specs)] : [];
        }

        if (parsed.GetValue(_order) is not { } text)
        {
            return [];
        }

        var order = NameReader.TryReadOrder(text, out var read, out _) ? read : text;
        var specs = parsed.GetValue(_from) is { } path ? Ordered(path, order, catalog) : Printed(parsed, order, catalog);
        error = specs.Count == 0 ? $"there is no order {order} without a problem in {parsed.GetValue(_from) ?? "the job book"}" : null;
        return specs;
    }

    private static List<BuildSpec> Ordered(string path, string order, ShopCatalog catalog)
    {
        var orders = CheckedOrders.Read([path], MapOption.Of(null), catalog, new RunBook(null, TimeProvider.System), null, DateOption.Of(null));
        Say.Problems(orders.Report.Pieces.Where(p => p.Order == order).SelectMany(p => p.Problems).Where(p => p.Severity == Severity.Refusal).Distinct());
        return [.. orders.Report.Ready.Where(s => s.Order == order).SelectMany(s => s.Make().Builds).Select(b => b.Spec)];
    }

    private IReadOnlyList<BuildSpec> Printed(ParseResult parsed, string order, ShopCatalog catalog)
    {
        using var book = Shop.Open(parsed, catalog);
        return ShopBows.Printed(order, book);
    }
}
