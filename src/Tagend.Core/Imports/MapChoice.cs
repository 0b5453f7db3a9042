using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Imports;

/// <summary>Our own columns, or the map whose headers a file has.</summary>
/// <param name="maps">Of the shop.</param>
/// <param name="name">Of the only map to read by; null to choose by the header.</param>
public sealed class MapChoice(IReadOnlyList<SourceMap> maps, OrderFormat own, string? name) : OrderFormat
{
    internal override IOrderLayout? LayoutOf(string file, OrderRecord header, List<Problem> problems)
    {
        if (name is not null)
        {
            return Named(name, file, header, problems);
        }

        var ofOwn = new List<Problem>();
        if (own.LayoutOf(file, header, ofOwn) is { } layout)
        {
            return layout;
        }

        var fitting = maps.Where(m => Missing(m, header).Count == 0).OrderByDescending(m => m.Needed().Count).ToList();
        if (fitting.Count == 0)
        {
            problems.AddRange(NoneFits(file, header, ofOwn));
            return null;
        }

        if (fitting.Count > 1 && fitting[0].Needed().Count == fitting[1].Needed().Count)
        {
            problems.Add(OfHeader(file, header, ImportWording.SeveralFit([.. fitting.Select(m => m.Name)])));
            return null;
        }

        return MapLayout.TryRead(file, header, fitting[0], problems);
    }

    private MapLayout? Named(string wanted, string file, OrderRecord header, List<Problem> problems)
    {
        if (maps.FirstOrDefault(m => m.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)) is not { } map)
        {
            problems.Add(OfHeader(file, header, ImportWording.NoMap(wanted, [.. maps.Select(m => m.Name)])));
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
    private IEnumerable<Problem> NoneFits(string file, OrderRecord header, IReadOnlyList<Problem> ofOwn)
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

        string[] needed = [OrderColumn.Order, OrderColumn.Piece, OrderColumn.FinishedLength];
        return ofOwn.Count(p => needed.Contains(p.At.Column)) < 2
            ? ofOwn
            : [OfHeader(file, header, ImportWording.NotOurs(file, maps.Count))];
    }

    private static Problem OfHeader(string file, OrderRecord header, string message) =>
        new(new Place(file, header.Line), null, message);

    private static List<string> Missing(SourceMap map, OrderRecord header) =>
        [.. map.Needed().Where(needed => Headers.IndexOf(header.Cells, needed) < 0)];
}
