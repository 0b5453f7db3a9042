using Tagend.Catalog;
using Tagend.Imports;
using Tagend.Jobs;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Desk;

/// <summary>The shop, as its folder and its job book have it at this moment. May be used by several threads.</summary>
internal sealed class ShopDesk(StationOptions options)
{
    private static readonly MapWish Maps =
        new(null, "take all but one of them out of imports in the templates folder", _ => "press Read my own columns, and one is made");

    private readonly Lock _reading = new();
    private readonly FitMemory _fits = new();
    private (DateTime Newest, int Files)? _read;
    private TemplatesReading? _templates;

    public StationOptions Options { get; } = options;

    /// <summary>Whether the shop has templates of its own: before, it must be asked what only it knows.</summary>
    public bool IsBegun => File.Exists(Path.Combine(Options.Templates, "shop.toml"));

    /// <summary>The templates with all their problems; read again where a file of them has changed.</summary>
    /// <exception cref="TagendException">They are not there, or a file cannot be read.</exception>
    public TemplatesReading Templates
    {
        get
        {
            lock (_reading)
            {
                var state = StateOf(Options.Templates);
                if (_templates is null || _read != state)
                {
                    (_templates, _read) = (ShopTemplates.Read(Options.Templates), state);
                }

                return _templates;
            }
        }
    }

    /// <summary>The templates where nothing is wrong with them.</summary>
    /// <exception cref="TagendException">Something is: all of it, in sentences.</exception>
    public ShopCatalog Catalog => Templates.Catalog ?? throw new TagendException(string.Join("\n", Templates.Problems));

    public DateOnly Today => DateOnly.FromDateTime(Options.Clock.GetLocalNow().DateTime);

    /// <summary>The job book of one piece of work, which goes on without it where the book fails.</summary>
    public RunBook RunBook() => new(Options.Book, Options.Clock, Options.Bench, _fits);

    /// <summary>An order file of the desk, computed.</summary>
    /// <param name="book">The job book whose builds and revisions are used.</param>
    /// <exception cref="TagendException">A template cannot be read.</exception>
    public CheckedOrders Check(DeskFile file, RunBook book) => CheckedOrders.Read(file.Name, file.Bytes, Catalog, book, Today, new NumberReuse(file.IsReused, ""), Maps);

    /// <summary>Uses the job book, and begins one where there is none.</summary>
    /// <exception cref="TagendException">It cannot be used, or none is wanted.</exception>
    public T WithBook<T>(Func<IJobBook, T> use)
    {
        using var book = (Options.Book ?? throw new TagendException("the station was started without a job book: start it again with one"))
            .OpenOrBegin(Options.Clock, Options.Bench);
        return use(book);
    }

    /// <summary>How far the orders of a file have come; as if nothing was printed where the book fails: a run on orders says so itself.</summary>
    public IReadOnlyDictionary<string, ListedOrder> Listed(OrderFile file)
    {
        try
        {
            using var book = Options.Book?.OpenExisting(Options.Clock);
            return List(book);
        }
        catch (TagendException)
        {
            return List(null);
        }

        Dictionary<string, ListedOrder> List(IJobBook? book) =>
            OrderList.OfFile(book, file, Catalog.Shop.Dates, Today).ToDictionary(o => o.Order);
    }

    private static (DateTime Newest, int Files) StateOf(string folder)
    {
        // The job book is beside the templates, and changes with every piece of work.
        var files = Directory.Exists(folder)
            ? new DirectoryInfo(folder).EnumerateFiles("*", SearchOption.AllDirectories).Where(f => !f.Name.StartsWith("tagend-jobs", StringComparison.Ordinal)).ToList()
            : [];
        return (files.Count == 0 ? default : files.Max(f => f.LastWriteTimeUtc), files.Count);
    }
}
