using System.Text;
using Tagend.Catalog;
using Tagend.Imports;
using Tagend.Orders;
using Tagend.Output;
using Tagend.Problems;
using Tagend.Specs;

namespace Tagend.Workshop.Shops;

/// <summary>A proposed map, and what the file it was proposed from becomes by it.</summary>
/// <param name="Proposal">Null where none could be made; the problems say why.</param>
/// <param name="Read">The file, read by it; null without a proposal.</param>
/// <param name="Problems">What is wrong with the file, or with its rows as the map reads them.</param>
public sealed record ProposedMap(MapProposal? Proposal, OrderFile? Read, IReadOnlyList<Problem> Problems);

/// <summary>The maps in a shop's templates folder.</summary>
public static class ShopMaps
{
    /// <summary>Proposes a map for a file, and reads the file by it.</summary>
    /// <param name="path">A spreadsheet or an export as CSV.</param>
    /// <param name="bytes">What it says.</param>
    /// <param name="name">The name the map gets.</param>
    /// <param name="catalog">The shop's templates.</param>
    /// <param name="today">The date of issue of the specs that are tried.</param>
    public static ProposedMap Propose(string path, byte[] bytes, string name, ShopCatalog catalog, DateOnly today)
    {
        var problems = new List<Problem>();
        if (MapProposal.Of(path, bytes, name, catalog.Plans, catalog.Shop.Unit, problems) is not { } proposal)
        {
            return new ProposedMap(null, null, problems);
        }

        var own = new OwnColumns(new Dictionary<string, string>());
        var file = OrderReader.Read([(path, bytes)], catalog.Shop.Unit, new MapChoice(_ => [proposal.Map], own, MapWish.ByHeader with { Name = name }), catalog.Colors);
        var report = SetBuilder.Build(file, new SpecBuilder(catalog, catalog.Shop.Unit, today));
        return new ProposedMap(proposal, file, report.Problems);
    }

    /// <summary>Why no map is needed for a file: it has our own columns, or a map reads it already. Null where one is needed.</summary>
    /// <exception cref="TagendException">The file cannot be read.</exception>
    public static string? AlreadyRead(string path, ShopCatalog catalog)
    {
        var isByMap = false;
        var choice = new MapChoice(
            problems =>
            {
                isByMap = true;
                return MapReader.ReadAll(catalog.Folder, problems);
            },
            new OwnColumns(catalog.Shop.Columns),
            MapWish.ByHeader);
        var file = OrderReader.Read([path], catalog.Shop.Unit, choice, catalog.Colors);
        return file.Remarks is [var remark] ? $"{remark}. Add --replace to propose another map anyway"
            : file.Rows.Count > 0 && !isByMap ? $"{path} has the columns of our own order file, and needs no map"
            : null;
    }

    /// <summary>A name for the map of a file that no other map has.</summary>
    public static string NewNameFor(string path, ShopCatalog catalog)
    {
        var name = MapProposal.NameFor(path);
        return Enumerable.Range(1, int.MaxValue).Select(n => n == 1 ? name : FormattableString.Invariant($"{name}-{n}")).First(n => !File.Exists(PathOf(n, catalog)));
    }

    /// <summary>Where a map is kept.</summary>
    public static string PathOf(string name, ShopCatalog catalog) => Path.Combine(catalog.Folder, MapReader.Folder, $"{name}.toml");

    /// <summary>Writes a proposed map to the shop's templates folder.</summary>
    /// <exception cref="TagendException">It cannot be written.</exception>
    public static void Keep(MapProposal proposal, string path)
    {
        AtomicFiles.Write([new NewFile(path, stream => stream.Write(Encoding.UTF8.GetBytes(proposal.Toml)))]);
    }
}
