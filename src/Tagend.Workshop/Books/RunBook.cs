using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Workshop.Books;

/// <summary>What was entered in a job book.</summary>
/// <param name="Book">The book's address.</param>
/// <param name="Added">The number of pieces that are new in it.</param>
/// <param name="Known">The number of pieces that it had already, letter for letter.</param>
public sealed record BookEntry(string Book, int Added, int Known);

/// <summary>Why a job book was not used.</summary>
/// <param name="Reason">What is wrong with it, and what to do.</param>
/// <param name="Consequence">What the run went on without.</param>
public sealed record BookFault(string Reason, string Consequence);

/// <summary>The job book of a run on orders, which goes on without it where the book fails: papers come first.</summary>
/// <param name="address">Null where no book is wanted.</param>
/// <param name="clock">The clock that dates what is entered.</param>
/// <param name="bench">Where the run is, kept with what is entered; empty where benches have no names.</param>
/// <param name="fits">What is known of the book's builds from runs before; null for a program that makes one run.</param>
public sealed class RunBook(JobBookAddress? address, TimeProvider clock, string bench = "", FitMemory? fits = null)
{
    private const string WithoutFits = "nothing is entered in it, and take-up is as shop.toml says";

    /// <summary>The first thing the book failed at, after which the run leaves it alone; null for nothing.</summary>
    public BookFault? Fault { get; private set; }

    /// <summary>What the book's builds teach; nothing where there is no book yet, or it failed.</summary>
    public ValueList<FittedTakeUp> Fits(ShopCatalog catalog) => Guarded(WithoutFits, () =>
    {
        using var book = address?.OpenExisting(clock, bench);
        return book is null ? [] : FitsOf(book, catalog);
    }) ?? [];

    /// <summary>Uses what the book's builds teach, and what it has of orders that were printed before, while work is done that asks for it.</summary>
    /// <param name="rows">Of the orders that the work asks for.</param>
    /// <param name="reuse">Whether an order may be of a customer other than the book has.</param>
    /// <param name="read">Gets no fits, and null, where there is no book yet, or it failed.</param>
    internal T WithIssues<T>(ShopCatalog catalog, IReadOnlyList<RowName> rows, NumberReuse reuse, Func<ValueList<FittedTakeUp>, BookIssues?, T> read)
    {
        using var holder = Guarded(WithoutFits, () => new Holder(address?.OpenExisting(clock, bench)));
        return holder?.Book is { } book && Guarded(WithoutFits, () => FitsOf(book, catalog)) is { } fits
            ? read(fits, new BookIssues(JobsOf, rows, reuse))
            : read([], null);

        IReadOnlyList<PrintedJob> JobsOf(IReadOnlyCollection<string> some) =>
            Guarded("revisions are as the order says", () => holder!.Book!.JobsOf(some)) ?? [];
    }

    private ValueList<FittedTakeUp> FitsOf(IJobBook book, ShopCatalog catalog) => fits?.Of(book, catalog) ?? FitMemory.Read(book, catalog);

    /// <summary>The shop's spools that are in use; none where there is no book yet, or it failed.</summary>
    /// <param name="bench">Whose spools are taken first, by its name.</param>
    public IReadOnlyList<ShelfSpool> Shelf(string bench) => Guarded("the pull sheet names no spools", () =>
    {
        using var book = address?.OpenExisting(clock);
        return book is null ? [] : SpoolShelf.InUse(book.Spools, bench);
    }) ?? [];

    /// <summary>All that the book has of an order, in the order of printing; nothing where there is no book, or it failed.</summary>
    internal IReadOnlyList<PrintedJob> JobsOf(string order) => Guarded("papers are as their tags say, and nothing is entered in it", () =>
    {
        using var book = address?.OpenExisting(clock, bench);
        return book?.JobsOf([order]) ?? [];
    }) ?? [];

    /// <summary>Enters what was printed.</summary>
    /// <returns>Null where there was nothing to enter, or the book failed.</returns>
    public BookEntry? Record(IEnumerable<BuildSet> sets)
    {
        var builds = sets.SelectMany(s => s.Builds).ToList();
        if (address is null || builds.Count == 0)
        {
            return null;
        }

        return Guarded("what is printed is not entered in it", () =>
        {
            using var book = address.OpenOrBegin(clock, bench);
            var added = book.Record(builds);
            return new BookEntry(address.Text, added, builds.Count - added);
        });
    }

    /// <summary>Keeps where this bench's part-used sheets of label stocks go on.</summary>
    /// <param name="next">The next free label by the stock's name.</param>
    public void KeepLabels(IReadOnlyDictionary<string, int> next)
    {
        if (address is null || next.Count == 0)
        {
            return;
        }

        Guarded("the next free label of a sheet is not kept", () =>
        {
            using var book = address.OpenOrBegin(clock, bench);
            foreach (var (stock, label) in next)
            {
                book.KeepLabel(stock, label);
            }

            return next;
        });
    }

    /// <summary>Where this bench's part-used sheets of label stocks go on, by the stock's name; without those that were not begun.</summary>
    public IReadOnlyDictionary<string, int> KeptLabels(IEnumerable<string> stocks) => Guarded("sheets of labels start at their first label", () =>
    {
        using var book = address?.OpenExisting(clock, bench);
        return stocks.Distinct().Select(s => (Stock: s, Next: book?.NextLabel(s))).Where(s => s.Next is not null).ToDictionary(s => s.Stock, s => s.Next!.Value);
    }) ?? [];

    private sealed record Holder(IJobBook? Book) : IDisposable
    {
        public void Dispose() => Book?.Dispose();
    }

    private T? Guarded<T>(string consequence, Func<T> use)
        where T : class
    {
        if (Fault is not null)
        {
            return null;
        }

        try
        {
            return use();
        }
        catch (TagendException e)
        {
            Fault = new BookFault(e.Message, consequence);
            return null;
        }
    }
}
