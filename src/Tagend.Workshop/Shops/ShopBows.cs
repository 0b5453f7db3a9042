using System.Text;
using Tagend.Bows;
using Tagend.Catalog;
using Tagend.Jobs;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;

namespace Tagend.Workshop.Shops;

/// <summary>The bows in a shop's templates folder.</summary>
public static class ShopBows
{
    /// <summary>Reads the bow book, with all its problems at once.</summary>
    /// <exception cref="TagendException">A file cannot be opened.</exception>
    public static (BowBook Book, IReadOnlyList<Problem> Problems) Read(ShopCatalog catalog)
    {
        var problems = new List<Problem>();
        return (BowBook.Read(catalog.Folder, catalog.Shop.Unit, catalog.Colors, problems), problems);
    }

    /// <summary>The newest issue of each piece of an order, as the job book has them.</summary>
    /// <exception cref="TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<BuildSpec> Printed(string order, IJobBook book) =>
    [
        .. book.Find(new JobSearch { Order = order }).GroupBy(j => j.Piece).Select(p => TagReader.Read(p.Last().Tag))
            .OfType<TagReading.Piece>().Select(p => p.Spec),
    ];

    /// <summary>Keeps pieces as a bow.</summary>
    /// <param name="bow">The bow's name as its owner writes it.</param>
    /// <param name="specs">The pieces, one at least.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="mayReplace">Whether a bow of the same name is written over.</param>
    /// <returns>The file's path; null where there is one of that name and it may not be replaced.</returns>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public static string? Keep(string bow, IReadOnlyList<BuildSpec> specs, ShopCatalog catalog, bool mayReplace)
    {
        var known = Read(catalog).Book.Find(bow);
        var name = known?.Name ?? FileName(bow);
        var path = Path.Combine(catalog.Folder, BowBook.Folder, $"{name}.toml");
        if (!mayReplace && (known is not null || File.Exists(path)))
        {
            return null;
        }

        AtomicFiles.Write([new NewFile(path, stream => stream.Write(Encoding.UTF8.GetBytes(BowText.Of(bow, specs, catalog))))]);
        return path;
    }

    private static string FileName(string bow)
    {
        var words = string.Concat(bow.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return string.Join('-', words) is { Length: > 0 } name ? name : "bow";
    }
}
