using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Pages;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Tests.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Checks;
using Tagend.Workshop.Printing;

namespace Tagend.Tests.Workshop;

/// <summary>A folder for what a test prints, and orders to print; gone after the test.</summary>
internal sealed class WorkshopFolder : IDisposable
{
    public const string Header = "order,piece,kind,finished_length,material,strands,colors,customer\n";

    /// <summary>A set of two pieces and one of one.</summary>
    public const string Orders = Header
        + "1001,string,compound-string,60 1/4,hmpe-0145,24,black:12 red:12,Demo customer 1\n"
        + "1001,buss,buss-cable,38 1/2,hmpe-0145,24,black:12 red:12,Demo customer 1\n"
        + "1002,string,compound-string,57 5/8,hmpe-0145,24,blue,Demo customer 2\n";

    public string Path { get; } = Directory.CreateTempSubdirectory("tagend-workshop-").FullName;

    public string this[string file] => System.IO.Path.Combine(Path, file);

    /// <summary>Names of the files there are, in order.</summary>
    public IReadOnlyList<string> Files =>
        [.. Directory.GetFiles(Path).Select(f => System.IO.Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    public RunBook Book => new(new SqliteAddress(this["book.db"]), TimeProvider.System);

    public static RunBook NoBook => new(null, TimeProvider.System);

    public CheckedOrders Check(string orders = Orders, RunBook? book = null)
    {
        var path = this["orders.csv"];
        File.WriteAllText(path, orders);
        var made = CheckedOrders.Read([path], null, SpecFixture.Catalog, book ?? NoBook, null, SpecFixture.Date);
        File.Delete(path);
        return made;
    }

    public PrintPlan Plan(PaperSet? paper = null, params string[] kinds)
    {
        var (catalog, set) = (SpecFixture.Catalog, paper ?? PaperSet.Letter);
        return new PrintPlan
        {
            Folder = Path,
            Kinds = [.. PageKinds.All.Where(k => kinds.Length > 0 ? kinds.Contains(k.Name) : k.IsUsual)],
            Setting = new PageSetting
            {
                Paper = set,
                BagStock = catalog.Stocks[catalog.Shop.BagStock],
                LoopStock = catalog.Stocks[catalog.Shop.LoopStock],
                StripStock = StripStock.Sheet(set.Sheet),
            },
            VolumePieces = 250,
        };
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}

/// <summary>A job book on a disk that is gone.</summary>
internal sealed class BrokenAddress() : JobBookAddress("broken.db")
{
    public const string Reason = "broken.db: the disk is gone; look for it";

    public int Tries { get; private set; }

    public override IJobBook? OpenExisting(TimeProvider clock, string bench = "") => OpenOrBegin(clock);

    public override IJobBook OpenOrBegin(TimeProvider clock, string bench = "")
    {
        Tries++;
        throw new TagendException(Reason);
    }

    public override T Fill<T>(TimeProvider clock, Func<IJobBook, T> fill) => fill(OpenOrBegin(clock));
}
