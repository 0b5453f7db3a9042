using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What became of one row of an order file.</summary>
/// <param name="Spec">Null where a problem refuses the piece.</param>
public sealed record PieceReport(
    string Order, string Piece, int Line, BuildSpec? Spec, OrderSlip Slip, IReadOnlyList<Problem> Problems)
{
    /// <summary>The row as read; null where it could not be.</summary>
    public OrderLine? Ordered { get; init; }
}

/// <summary>What became of a file of orders.</summary>
/// <param name="Pieces">Every row that names a piece, in the file's order.</param>
/// <param name="Sets">Ready to print, in the file's order.</param>
/// <param name="Withheld">Orders with a problem in any of their pieces.</param>
/// <param name="Problems">All of the file and all of its specs, in the file's order.</param>
public sealed record SetReport(
    IReadOnlyList<PieceReport> Pieces,
    IReadOnlyList<BuildSet> Sets,
    IReadOnlyList<string> Withheld,
    IReadOnlyList<Problem> Problems);

/// <summary>Makes sets of the pieces of one order. A set with a problem is withheld whole.</summary>
public static class SetBuilder
{
    public static SetReport Build(OrderFile file, SpecBuilder specs)
    {
        var problems = new List<Problem>(file.Problems);
        var byLine = file.Problems.ToLookup(p => p.At.Line);
        var pieces = file.BrokenRows
            .Select(row => new PieceReport(row.Order, row.Piece, row.Line, null, OrderSlip.Blank, [.. byLine[row.Line]]))
            .ToList();
        foreach (var line in file.Lines)
        {
            var found = new List<Problem>();
            var spec = specs.Build(line, found);
            pieces.Add(new PieceReport(line.Order, line.Piece, line.Row.Line, spec, line.Slip, [.. byLine[line.Row.Line], .. found])
            {
                Ordered = line,
            });
            problems.AddRange(found);
        }

        pieces.Sort((a, b) => a.Line.CompareTo(b.Line));
        var withheld = pieces.Where(p => p.Spec is null).Select(p => p.Order).Concat(file.BrokenOrders).ToHashSet();
        var sets = pieces
            .Where(p => !withheld.Contains(p.Order))
            .GroupBy(p => p.Order)
            .Select(g => new BuildSet(g.Key, g.Select(p => new Build(p.Spec!, p.Slip)).ToValueList()));
        return new SetReport(
            pieces,
            [.. sets],
            [.. withheld.Order(StringComparer.Ordinal)],
            [.. problems.OrderBy(p => p.At.Line)]);
    }
}
