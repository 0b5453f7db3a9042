using System.CommandLine;
using Tagend.Catalog;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Checks;

namespace Tagend.Commands;

/// <summary>The options that every command on orders has, and what they are for: reading templates and orders.</summary>
/// <param name="isOneFile">Of orders; else one or more.</param>
internal sealed class ShopOptions(bool isOneFile = false)
{
    private const string TemplatesFolder = "templates";

    public Argument<string[]> Orders { get; } = new("ORDERS.csv")
    {
        Description = "The order file, or several: with our own columns, or those of one of the shop's maps.",
        Arity = isOneFile ? ArgumentArity.ExactlyOne : ArgumentArity.OneOrMore,
    };

    private Option<string?> Map { get; } = new("--map")
    {
        Description = "The map to read the files by, from imports in the templates. Default: the one whose headers they have.",
        HelpName = "NAME",
    };

    public Option<string?> Templates { get; } = TemplatesOption();

    public Option<string?> Units { get; } =
        new Option<string?>("--units") { Description = "Print lengths in inches or millimeters.", HelpName = "in|mm" }
            .AcceptOnlyFromAmong("in", "mm");

    public Option<DateOnly?> Date { get; } = DateOption.Create("--date", "The date printed on the pages. Default: today.");

    private Option<string?> JobBookFile { get; } = JobBookOption.Create();

    /// <summary>The job book of this run, once the orders have been read.</summary>
    public RunBook Book { get; private set; } = new(null);

    public static Option<string?> TemplatesOption() => new("--templates")
    {
        Description = "The shop's templates folder. Default: ./templates, else the one that comes with the program.",
        HelpName = "DIR",
    };

    public void AddTo(Command command)
    {
        command.Arguments.Add(Orders);
        command.Options.Add(Map);
        command.Options.Add(Templates);
        command.Options.Add(Units);
        command.Options.Add(Date);
        command.Options.Add(JobBookFile);
    }

    /// <summary>The catalog in the folder named, or found; null, with its problems on standard error, where it has mistakes.</summary>
    public static ShopCatalog? ReadCatalog(string? folder)
    {
        var problems = new List<Problem>();
        var catalog = CatalogReader.Read(TemplatesFolderOf(folder), problems);
        Report(problems);
        return catalog;
    }

    public static string ShippedTemplates => Path.Combine(AppContext.BaseDirectory, TemplatesFolder);

    public static void Report(IEnumerable<Problem> problems)
    {
        foreach (var problem in problems)
        {
            Console.Error.WriteLine(problem);
        }
    }

    /// <summary>The catalog and the orders, with the problems of both on standard error; null where the catalog has mistakes.</summary>
    public (ShopCatalog Catalog, SetReport Report)? Read(ParseResult parsed)
    {
        if (ReadQuietly(parsed) is not var (catalog, _, report))
        {
            return null;
        }

        Report(report.Problems);
        return (catalog, report);
    }

    /// <summary>The same and the file as read, leaving the problems of the orders to the caller.</summary>
    public (ShopCatalog Catalog, OrderFile Orders, SetReport Report)? ReadQuietly(ParseResult parsed)
    {
        if (ReadCatalog(parsed.GetValue(Templates)) is not { } catalog)
        {
            return null;
        }

        var unit = parsed.GetValue(Units) switch
        {
            "in" => LengthUnit.Inch,
            "mm" => LengthUnit.Millimeter,
            _ => catalog.Shop.Unit,
        };
        var date = DateOf(parsed.GetValue(Date));
        Book = new RunBook(JobBookOption.AddressOf(parsed.GetValue(JobBookFile), catalog.Folder));
        catalog = catalog with { Fits = Book.Fits(catalog) };
        var orders = OrderFiles.Read(parsed.GetValue(Orders)!, catalog, parsed.GetValue(Map));
        foreach (var remark in orders.Remarks)
        {
            Console.Error.WriteLine(remark);
        }

        return (catalog, orders, SetBuilder.Build(orders, new SpecBuilder(catalog, unit, date)));
    }

    /// <summary>The folder named, else ./templates, else the one that comes with the program.</summary>
    public static string TemplatesFolderOf(string? folder) =>
        folder ?? (Directory.Exists(TemplatesFolder) ? TemplatesFolder : ShippedTemplates);

    /// <summary>The date given, else today's.</summary>
    public static DateOnly DateOf(DateOnly? given) =>
        given ?? DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime);
}
