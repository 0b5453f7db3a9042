using Tagend.Catalog;
using Tagend.Imports;
using Tagend.Measures;
using Tagend.Orders;
using Tagend.Pages.Sheet;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Specs.Explained;
using Tagend.Workshop.Books;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Checks;

/// <summary>How the numbers of a piece came about, or why that cannot be told.</summary>
/// <param name="Spec">Null where the piece cannot be built, or is not in the file.</param>
/// <param name="Steps">The steps in the order in which they were computed; none without a spec.</param>
/// <param name="Problems">The piece's problems; those of the whole file where it has no pieces.</param>
/// <param name="Missing">Says what there is instead, where the file has no such piece; null where it has.</param>
public sealed record PieceExplanation(
    BuildSpec? Spec, IReadOnlyList<ExplainedStep> Steps, IReadOnlyList<Problem> Problems, string? Missing);

/// <summary>Order files, computed with a shop's templates and what its builds teach.</summary>
/// <param name="Catalog">The shop's templates, with the fits of the job book.</param>
/// <param name="File">What the files say.</param>
/// <param name="Report">What was computed of it.</param>
public sealed record CheckedOrders(ShopCatalog Catalog, OrderFile File, SetReport Report)
{
    /// <summary>Of a season.</summary>
    private const int ManyRows = 10_000;

    /// <summary>Reads order files and computes their pieces, with all problems at once.</summary>
    /// <param name="paths">One or more; an order may have rows in several.</param>
    /// <param name="map">Which map to read the files by; null to choose by their headers.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="book">The job book whose builds and revisions are used; where it fails, it keeps the fault and the run goes on.</param>
    /// <param name="unit">The unit of what is printed; null for the shop's own.</param>
    /// <param name="date">The date of issue of new revisions.</param>
    /// <param name="reuse">Whether an order may be of another customer than the book has; null for never.</param>
    /// <exception cref="TagendException">A file is not there or cannot be read.</exception>
    public static CheckedOrders Read(
        IReadOnlyList<string> paths, MapWish? map, ShopCatalog catalog, RunBook book, LengthUnit? unit, DateOnly date, NumberReuse? reuse = null) =>
        Of(OrderFiles.Read(paths, catalog, map), catalog, book, unit, date, reuse ?? NumberReuse.Never);

    /// <summary>Reads an order file that is in memory and computes its pieces, as <see cref="Read(IReadOnlyList{string}, MapWish?, ShopCatalog, RunBook, LengthUnit?, DateOnly, NumberReuse?)"/> does.</summary>
    /// <param name="name">The name that messages have.</param>
    /// <param name="bytes">What the file says.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="book">The job book, as there.</param>
    /// <param name="date">The date of issue of new revisions.</param>
    /// <param name="reuse">Whether an order may be of another customer than the book has.</param>
    /// <param name="map">Which map to read the file by, as there.</param>
    public static CheckedOrders Read(
        string name, byte[] bytes, ShopCatalog catalog, RunBook book, DateOnly date, NumberReuse reuse, MapWish? map = null) =>
        Of(OrderFiles.Read(name, bytes, catalog, map), catalog, book, null, date, reuse);

    /// <summary>Orders that are refused because the job book has their number for another customer.</summary>
    public IReadOnlySet<string> Strangers { get; private init; } = new HashSet<string>();

    private static CheckedOrders Of(OrderFile file, ShopCatalog catalog, RunBook book, LengthUnit? unit, DateOnly date, NumberReuse reuse)
    {
        if (file.Rows.Count > ManyRows)
        {
            GC.Collect(); // gives back the files' bytes, which are as much as all that is kept of their rows
        }

        return book.WithIssues(catalog, file.Rows, reuse, (fits, issues) =>
        {
            var taught = catalog with { Fits = fits };
            var report = SetBuilder.Build(file, new SpecBuilder(taught, unit ?? catalog.Shop.Unit, date, issues));
            return new CheckedOrders(taught, file, report with { Ready = issues?.WithoutCancelled(report) ?? report.Ready })
            {
                Strangers = issues?.Strangers ?? new HashSet<string>(),
            };
        });
    }

    /// <summary>Whether something is not printed.</summary>
    public bool HasRefusals => Report.Problems.Any(p => p.Severity == Severity.Refusal);

    /// <summary>All that is wrong with the shop's texts of customer sheets.</summary>
    /// <exception cref="TagendException">A text or the logo cannot be read.</exception>
    public IReadOnlyList<Problem> CheckSheets() => CustomerSheet.Check(Catalog.Folder, Catalog.Shop.Logo);

    /// <summary>Whether one of some orders is not in the files.</summary>
    /// <returns>A sentence that names the first and says what there is instead; null where all are there.</returns>
    public string? MissingOrder(IEnumerable<string> orders)
    {
        var known = Report.Pieces.Select(p => p.Order).ToHashSet();
        return orders.FirstOrDefault(o => !known.Contains(o)) is { } missing
            ? $"there is no order {missing} in the file; there are {string.Join(", ", known.Order(StringComparer.Ordinal))}"
            : null;
    }

    /// <summary>Whether something that a run is for is not in the files.</summary>
    /// <returns>A sentence that names the first and says what there is instead; null where all is there.</returns>
    public string? Missing(OrderChoice choice) => MissingOrder(choice.Orders)
        ?? choice.Pieces.Where(c => !Report.Pieces.Any(p => p.Order == c.Order && p.Piece == c.Piece)).Select(Missing).FirstOrDefault();

    /// <summary>What is wrong, but for what is wrong with other orders alone.</summary>
    public IReadOnlyList<Problem> ProblemsOf(OrderChoice choice)
    {
        if (choice.IsAll)
        {
            return Report.Problems;
        }

        var ofOthers = Report.Pieces.Where(p => !choice.Has(p.Order)).SelectMany(p => p.Problems).ToHashSet();
        return [.. Report.Problems.Where(p => !ofOthers.Contains(p))];
    }

    /// <summary>How each number of a piece came about.</summary>
    public PieceExplanation Explain(PieceName name)
    {
        var pieces = Report.Pieces.Where(p => p.Order == name.Order && p.Piece == name.Piece).ToList();
        if (pieces.Count == 0)
        {
            return Report.Pieces.Count == 0
                ? new PieceExplanation(null, [], Report.Problems, null)
                : new PieceExplanation(null, [], [], Missing(name));
        }

        IReadOnlyList<Problem> problems = [.. pieces.SelectMany(p => p.Problems)];
        if (pieces.Find(p => p.Spec is not null) is not { Spec: { } spec })
        {
            return new PieceExplanation(null, [], problems, null);
        }

        var row = File.Rows.Index().First(r => r.Item.Order == name.Order && r.Item.Piece == name.Piece).Index;
        return new PieceExplanation(spec, [.. Explanation.Of(spec, File.Lines[row], Catalog)], problems, null);
    }

    private string Missing(PieceName name)
    {
        var pieces = Report.Pieces.Where(p => p.Order == name.Order).Select(p => p.Piece).Distinct().ToList();
        return pieces.Count > 0
            ? $"there is no piece {name.Piece} in order {name.Order}; there are {string.Join(", ", pieces)}"
            : $"there is no order {name.Order} in the file; there are {string.Join(", ", Report.Pieces.Select(p => p.Order).Distinct())}";
    }
}
