using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>Our own columns, or the map whose headers a file has.</summary>
/// <param name="read">Reads the shop's maps when a header is not ours, and adds their mistakes to the problems.</param>
/// <param name="wish">Which map to read by, and what to say where none can be chosen.</param>
public sealed class MapChoice(Func<List<Problem>, IReadOnlyList<SourceMap>> read, OrderFormat own, MapWish wish) : OrderFormat
{
    private IReadOnlyList<SourceMap>? _maps;

    internal override IOrderLayout? LayoutOf(string file, OrderRecord header, List<Problem> problems)
    {
        var ofOwn = new List<Problem>();
        var ofUs = wish.Name is null ? own.LayoutOf(file, header, ofOwn) : null;
        if (ofUs is not null and not OrderHeader { IsByBow: true })
        {
            return ofUs;
        }

        var maps = _maps ??= read(problems);
        if (wish.Name is { } name)
        {
            return Named(name, maps, file, header, problems);
        }

        var fitting = maps.Where(m => Missing(m, header).Count == 0).OrderByDescending(m => m.Needed().Count).ToList();
        if (fitting.Count == 0 && ofUs is OrderHeader byBow && byBow.Titles.All(t => HeaderWords.Read(t).Pieces.Count == 0))
        {
            return byBow;
        }

        if (fitting.Count == 0)
        {
            problems.AddRange(NoneFits(maps, file, header, ofOwn));
            return null;
        }

        if (fitting.Count > 1 && fitting[0].Needed().Count == fitting[1].Needed().Count)
        {
            problems.Add(OfHeader(file, header, ImportWording.SeveralFit([.. fitting.Select(m => m.Name)], wish.Choose)));
            return null;
        }

        return MapLayout.TryRead(file, header, fitting[0], problems);
    }

    private MapLayout? Named(
        string wanted, IReadOnlyList<SourceMap> maps, string file, OrderRecord header, List<Problem> problems)
    {
        if (maps.FirstOrDefault(m => m.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)) is not { } map)
        {
            problems.Add(OfHeader(file, header, ImportWording.NoMap(wanted, [.. maps.Select(m => m.Name)], wish.Propose("FILE"))));
            return null;
        }

        if (Missing(map, header) is { Count: > 0 } missing)
        {
            problems.Add(OfHeader(file, header, ImportWording.Lacks(map.Name, missing)));
            return null;
        }

        return MapLayout.TryRead(file, header, map, problems);
    }

    /// <summary>What is wrong with a header that is neither ours nor of any map: as ours where it is nearly that.</summary>
    private List<Problem> NoneFits(
        IReadOnlyList<SourceMap> maps, string file, OrderRecord header, List<Problem> ofOwn)
    {
        var nearest = maps
            .Select(m => (Map: m, Missing: Missing(m, header)))
            .Where(m => m.Missing.Count <= m.Map.Needed().Count / 2)
            .OrderBy(m => m.Missing.Count)
            .ToList();
        if (nearest.Count > 0)
        {
            return [OfHeader(file, header, ImportWording.Lacks(nearest[0].Map.Name, nearest[0].Missing))];
        }

        // A column of lengths of one piece is no slip of the pen in ours.
        string[] needed = [OrderColumn.Order, OrderColumn.Piece, OrderColumn.FinishedLength];
        return ofOwn.Count(p => needed.Contains(p.At.Column)) < 2 && ofOwn.Count > 0
            && !header.Cells.Any(t => HeaderWords.Read(t) is { Pieces.Count: > 0, Column: null or OrderColumn.FinishedLength })
            ? ofOwn
            : [OfHeader(file, header, ImportWording.NotOurs(maps.Count, wish.Propose(file)))];
    }

    private static Problem OfHeader(string file, OrderRecord header, string message) =>
        new(new Place(file, header.Line), null, message);

    private static List<string> Missing(SourceMap map, OrderRecord header) =>
        [.. map.Needed().Where(needed => Headers.IndexOf(header.Cells, needed) < 0)];
}
