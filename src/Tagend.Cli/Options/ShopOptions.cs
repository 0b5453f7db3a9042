using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Streams;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Shops;

namespace Tagend.Options;

/// <summary>The options that every command on orders has, and what they are for: reading templates and orders.</summary>
/// <param name="isOneFile">Of orders; else one or more.</param>
internal sealed class ShopOptions(bool isOneFile = false)
{
    private readonly Argument<string[]> _orders = new Argument<string[]>("ORDERS.csv")
    {
        Description = "One or more order files, with Tagend's own columns or those of one of the shop's maps.",
        Arity = isOneFile ? ArgumentArity.ExactlyOne : ArgumentArity.OneOrMore,
        CustomParser = result => [.. result.Tokens.Select(t => t.Value)], // the library reads no list of one
    }.NamesSomething();

    private readonly Option<string?> _map = new("--map")
    {
        Description = "The map to read the files with, from imports in the templates. Default: the one that matches their headers.",
        HelpName = "NAME",
    };

    private readonly Option<string?> _templates = TemplatesOption();

    private readonly Option<string?> _units =
        new Option<string?>("--units") { Description = "Print lengths in inches or millimeters.", HelpName = "in|mm" }
            .TakesOneOf("in", "mm");

    private readonly Option<DateOnly?> _date = DateOption.Create("--date", "The date printed on the pages. Default: today.");
    private readonly Option<string?> _jobBook = JobBookOption.Create();

    private readonly Option<bool> _replace = new("--replace")
    {
        Description = "Reuse an order number that the job book has for another customer.",
    };

    public static Option<string?> TemplatesOption() => new Option<string?>("--templates")
    {
        Description = "The shop's templates folder. Default: ./templates, else your own that tagend init made, else the program's.",
        HelpName = "DIR",
    }.NamesSomething();

    public void AddTo(Command command)
    {
        command.Arguments.Add(_orders);
        command.Options.Add(_map);
        command.Options.Add(_templates);
        command.Options.Add(_units);
        command.Options.Add(_date);
        command.Options.Add(_jobBook);
        command.Options.Add(_replace);
    }

    /// <summary>The catalog in the folder named, or found; null, with its problems on standard error, where it has mistakes.</summary>
    public static ShopCatalog? ReadCatalog(string? folder)
    {
        var templates = ShopFolders.Here.Templates(folder);
        if (ShopFolders.Here.BookBesideProgram is { } book && ShopFolders.Here.IsShipped(templates))
        {
            Console.Error.WriteLine($"Your job book is beside the program ({book}), where a new version may replace it: tagend init --move takes it to your own folder.");
        }

        var reading = ShopTemplates.Read(templates);
        if (reading.Problems.Count > 0)
        {
            Console.Error.WriteLine($"in the templates folder {templates}:");
        }

        Say.Problems(reading.Problems);
        return reading.Catalog;
    }

    /// <summary>
    /// The orders and the job book of the run; null where the templates have mistakes. What is wrong with templates and book
    /// is on standard error, the problems of the orders are left to the caller.
    /// </summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="begin">What needs nothing but the templates folder, and can be begun before it is read.</param>
    public (CheckedOrders Orders, RunBook Book)? Read(ParseResult parsed, Action<string>? begin = null)
    {
        var templates = ShopFolders.Here.Templates(parsed.GetValue(_templates));
        begin?.Invoke(templates);
        if (ReadCatalog(templates) is not { } catalog)
        {
            return null;
        }

        LengthUnit? unit = parsed.GetValue(_units) switch
        {
            "in" => LengthUnit.Inch,
            "mm" => LengthUnit.Millimeter,
            _ => null,
        };
        var book = new RunBook(JobBookOption.AddressOf(parsed.GetValue(_jobBook), catalog.Folder), TimeProvider.System, BenchName.Here);
        var reuse = new NumberReuse((_, _) => parsed.GetValue(_replace), _replace.Name);
        var orders = CheckedOrders.Read(parsed.GetValue(_orders)!, MapOption.Of(parsed.GetValue(_map)), catalog, book, unit, DateOption.Of(parsed.GetValue(_date)), reuse);
        Say.Fault(book);
        foreach (var remark in orders.File.Remarks)
        {
            Console.Error.WriteLine(remark);
        }

        return (orders, book);
    }
}
