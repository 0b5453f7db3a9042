using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Commands;

/// <summary>The job book of a run on orders, which goes on without it where the book fails: papers come first.</summary>
/// <param name="address">Null where no book is wanted.</param>
internal sealed class RunBook(JobBookAddress? address)
{
    /// <summary>The book failed, as was said.</summary>
    public bool HasFailed { get; private set; }

    /// <summary>What the book's builds teach; nothing where there is no book yet.</summary>
    public ValueList<FittedTakeUp> Fits(ShopCatalog catalog)
    {
        return Guarded<ValueList<FittedTakeUp>>([], () =>
        {
            using var book = address?.OpenExisting(TimeProvider.System);
            var fits = TakeUpFit.All(BuildPoint.Of(book?.Built() ?? []), catalog);
            return fits.Where(f => f.Fit is not null).Select(f => f.Fit!).ToValueList();
        });
    }

    /// <summary>Enters what was printed.</summary>
    /// <returns>What to say of it; null for nothing.</returns>
    public string? Record(IEnumerable<BuildSet> sets)
    {
        var builds = sets.SelectMany(s => s.Builds).ToList();
        if (address is null || builds.Count == 0 || HasFailed)
        {
            return null;
        }

        return Guarded<string?>(null, () =>
        {
            using var book = address.OpenOrBegin(TimeProvider.System);
            var added = book.Record(builds);
            return added == builds.Count
                ? $"{address.Text}: {Counted.Of(added, "piece")} entered in the job book"
                : $"{address.Text}: {Counted.Of(added, "piece")} entered in the job book, {builds.Count - added} in it already";
        });
    }

    private T Guarded<T>(T without, Func<T> use)
    {
        try
        {
            return use();
        }
        catch (TagendException e)
        {
            HasFailed = true;
            Console.Error.WriteLine($"tagend: {e.Message}");
            Console.Error.WriteLine("tagend: went on without the job book: nothing is entered in it, and take-up is as shop.toml says");
            return without;
        }
    }
}
