using Tagend.Catalog;
using Tagend.Output;
using Tagend.Pages;
using Tagend.Pages.Parts;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Workshop.Books;
using Tagend.Workshop.Printing;
using Tagend.Workshop.Shops;

namespace Tagend.Station.Desk;

/// <summary>Which papers of which orders are wanted, and on what.</summary>
/// <param name="File">The order file.</param>
/// <param name="Orders">None for all that can be printed and were not.</param>
/// <param name="Kinds">By name; none for the usual ones.</param>
/// <param name="Used">Labels of the first sheet that were used or are spoiled, from 1; null where nothing was said, and it goes on where it was left.</param>
/// <param name="Printer">A print queue; empty for none.</param>
internal sealed record PaperWish(
    string File, IReadOnlyList<string> Orders, IReadOnlyList<string> Kinds, IReadOnlyList<int>? Used, string Printer);

/// <summary>A paper that was made: where it is, and the queue's name for its job.</summary>
/// <param name="Job">Null where it was not sent.</param>
/// <param name="Refusal">Why the queue did not take it, and what to do; null where it did, or none was asked.</param>
internal sealed record MadePaper(PrintedPaper Paper, string? Job, string? Refusal);

/// <summary>What became of papers that were wanted.</summary>
/// <param name="Removed">Files of an earlier, larger run that are gone.</param>
internal sealed record MadePapers(
    IReadOnlyList<MadePaper> Papers, IReadOnlyList<string> Orders, IReadOnlyList<Problem> Problems, BookEntry? Entry, BookFault? Fault, IReadOnlyList<string> Removed);

/// <summary>Draws papers to look at, and makes them.</summary>
internal sealed class PaperDesk(ShopDesk shop, OrderDesk orders)
{
    private const int MostDrawn = 4;
    private const int VolumePieces = 250;

    private readonly Lock _drawing = new();
    private readonly List<(string Key, DrawnPapers Papers)> _drawn = [];

    /// <summary>Where the papers of an order file are.</summary>
    public string FolderOf(string file) => Path.Combine(shop.Options.Folder, "papers", Path.GetFileNameWithoutExtension(file));

    /// <summary>The first label stock of the shop that has several on a sheet; null where all are rolls.</summary>
    public LabelStock? SheetStock => StocksOf(shop.Catalog).FirstOrDefault(s => s.LabelsPerPage > 1);

    /// <summary>The labels of its first sheet that are gone, by what was said, or by where earlier papers left off.</summary>
    public IReadOnlyList<int> UsedOf(IReadOnlyList<int>? said) =>
        said ?? (SheetStock is { } stock && shop.RunBook().KeptLabels([stock.Name]).TryGetValue(stock.Name, out var next) ? [.. Enumerable.Range(1, next - 1)] : []);

    /// <summary>The papers as they would be printed; null where the file is not there.</summary>
    /// <exception cref="TagendException">A template cannot be read.</exception>
    public DrawnPapers? Draw(PaperWish wish, CancellationToken stop)
    {
        if (orders.Open(wish.File) is not { } file)
        {
            return null;
        }

        var catalog = shop.Catalog;
        var key = $"{OrderDesk.SealOf(file.Bytes)} {catalog.GetHashCode()} {string.Join(',', wish.Orders)} {string.Join(',', wish.Kinds)} "
            + $"{string.Join(',', file.Reused)} {string.Join(',', UsedOf(wish.Used))} {wish.Printer} {shop.Today}";
        lock (_drawing)
        {
            if (_drawn.Find(d => d.Key == key).Papers is { } known)
            {
                return known;
            }

            var book = shop.RunBook();
            var report = shop.Check(file, book).Report;
            var drawn = DrawnPapers.Of([.. Wanted(report, wish).Select(s => s.Make())], catalog, PlanOf(wish, catalog, book), stop);
            _drawn.Add((key, drawn));
            _drawn.RemoveRange(0, Math.Max(0, _drawn.Count - MostDrawn));
            return drawn;
        }
    }

    /// <summary>Writes the papers, enters them in the job book, and sends them where a queue is named.</summary>
    /// <exception cref="TagendException">There is no such file, or the papers cannot be written.</exception>
    public MadePapers Make(PaperWish wish, CancellationToken stop)
    {
        var file = orders.Open(wish.File) ?? throw OrderDesk.NoFile(wish.File);
        var catalog = shop.Catalog;
        var book = shop.RunBook();
        var report = shop.Check(file, book).Report;
        var sets = Wanted(report, wish);
        if (sets.Count == 0)
        {
            throw new TagendException("None of these sets can be printed: mend them among the orders, or choose others.") { Blame = Blame.WrongValue };
        }

        using var batch = new PrintBatch(catalog, PlanOf(wish, catalog, book));
        var papers = new List<PrintedPaper>();
        var (printed, problems) = (new List<string>(), new List<Problem>());
        var (added, known) = (0, 0);
        BookEntry? entry = null;
        foreach (var volume in batch.Print(PrintBatch.VolumesOf(sets, VolumePieces), stop))
        {
            book.KeepLabels(volume.Printed.NextLabels);
            papers.AddRange(volume.Printed.Papers);
            printed.AddRange(volume.Printed.Sets.Select(s => s.Order));
            problems.AddRange(volume.Printed.Problems);
            if (book.Record(volume.Printed.Sets) is { } recorded)
            {
                (added, known) = (added + recorded.Added, known + recorded.Known);
                entry = recorded with { Added = added, Known = known };
            }
        }

        return new MadePapers([.. papers.Select(p => Send(p, wish.Printer))], printed, problems, entry, book.Fault, [.. batch.Removed]);
    }

    private static MadePaper Send(PrintedPaper paper, string printer)
    {
        if (printer.Length == 0)
        {
            return new MadePaper(paper, null, null);
        }

        try
        {
            return new MadePaper(paper, PrintQueue.Send(printer, paper.Path, paper.Title, paper.Paper), null);
        }
        catch (TagendException e)
        {
            return new MadePaper(paper, null, e.Message);
        }
    }

    private static List<ReadySet> Wanted(SetReport report, PaperWish wish) =>
        [.. report.Ready.Where(s => wish.Orders.Count == 0 || wish.Orders.Contains(s.Order))];

    private static IEnumerable<LabelStock> StocksOf(ShopCatalog catalog) =>
        new[] { catalog.Shop.LoopStock, catalog.Shop.BagStock }.Select(s => LabelStocks.Named(s, catalog));

    private PrintPlan PlanOf(PaperWish wish, ShopCatalog catalog, RunBook book)
    {
        List<IPageKind> kinds = [.. PageKinds.All.Where(k => wish.Kinds.Count > 0 ? wish.Kinds.Contains(k.Name) : k.IsUsual)];
        var paper = catalog.Shop.Paper;
        var others = StocksOf(catalog).Select(s => s.Name).Where(n => n != SheetStock?.Name);
        return new PrintPlan
        {
            Folder = FolderOf(wish.File),
            Kinds = kinds,
            Setting = new PageSetting
            {
                Paper = paper,
                BagStock = LabelStocks.Named(catalog.Shop.BagStock, catalog),
                LoopStock = LabelStocks.Named(catalog.Shop.LoopStock, catalog),
                Use = new SheetUse(1, UsedOf(wish.Used).ToHashSet()) { Kept = book.KeptLabels(others) },
                StripStock = StripStock.Sheet(paper.Sheet),
                Scale = wish.Printer.Length > 0 ? PrinterScales.Of(wish.Printer, catalog.Folder) : null,
                HasOnePaperADocument = wish.Printer.Length > 0,
            },
            Shelf = kinds.Exists(k => k.Name == "pulls") ? book.Shelf("") : [],
            VolumePieces = VolumePieces,
        };
    }
}
