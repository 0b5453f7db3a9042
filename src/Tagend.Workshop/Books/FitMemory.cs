using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Books;

/// <summary>What the builds of one job book teach, for as long as none of them changes: thousands of builds are read for it. May be used by several threads.</summary>
public sealed class FitMemory
{
    private readonly Lock _keeping = new();
    private (string Builds, ShopCatalog Catalog, ValueList<FittedTakeUp> Fits)? _kept;

    /// <summary>The fits of all builds of a book that are enough for one, whether or not they serve a piece.</summary>
    public static ValueList<FittedTakeUp> Read(IJobBook book, ShopCatalog catalog) =>
        TakeUpFit.All(BuildPoint.Of(book.Built()), catalog).Select(f => f.Fit).OfType<FittedTakeUp>().ToValueList();

    /// <summary>The same, read again only where a build or the catalog is another.</summary>
    public ValueList<FittedTakeUp> Of(IJobBook book, ShopCatalog catalog)
    {
        var builds = book.StateOfBuilds(); // before they are read: what is logged in between is seen the next time
        lock (_keeping)
        {
            if (_kept is { } kept && kept.Builds == builds && ReferenceEquals(kept.Catalog, catalog))
            {
                return kept.Fits;
            }
        }

        var fits = Read(book, catalog);
        lock (_keeping)
        {
            _kept = (builds, catalog, fits);
        }

        return fits;
    }
}
