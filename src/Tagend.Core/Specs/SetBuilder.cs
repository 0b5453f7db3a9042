using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>What became of one row of an order file.</summary>
/// <param name="Spec">Null where the piece cannot be built by itself.</param>
/// <param name="Problems">Of the row, of its spec, and of the piece among its set.</param>
public sealed record PieceReport(
    string Order, string Piece, int Line, BuildSpec? Spec, OrderSlip Slip, IReadOnlyList<Problem> Problems);

/// <summary>What became of a file of orders.</summary>
/// <param name="Pieces">Every row that names a piece, in the file's order.</param>
/// <param name="Sets">Ready to print, in the file's order.</param>
/// <param name="Withheld">Orders with a problem in any of their pieces, or in the set as a whole.</param>
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
        var made = file.Lines.Select(line => Make(line, specs)).ToList();
        var incomplete = made.Where(m => m.Spec is null).Select(m => m.Line.Order).Concat(file.BrokenOrders).ToHashSet();
        var ofSets = made
            .Where(m => m.Spec is not null)
            .Select(m => new SetPiece(m.Line, m.Spec!))
            .GroupBy(p => p.Line.Order)
            .SelectMany(set => SetChecks.Of([.. set], !incomplete.Contains(set.Key), specs.Plans))
            .ToLookup(p => p.At.Line);
        var byLine = file.Problems.ToLookup(p => p.At.Line);
        var pieces = file.BrokenRows
            .Select(row => new PieceReport(row.Order, row.Piece, row.Line, null, OrderSlip.Blank, [.. byLine[row.Line]]))
            .Concat(made.Select(m => Report(m, [.. byLine[m.Line.Row.Line], .. m.Problems, .. ofSets[m.Line.Row.Line]])))
            .OrderBy(p => p.Line)
            .ToList();
        var withheld = pieces
            .Where(p => p.Spec is null || p.Problems.Any(problem => problem.Severity == Severity.Refusal))
            .Select(p => p.Order)
            .Concat(file.BrokenOrders)
            .ToHashSet();
        var sets = pieces
            .Where(p => !withheld.Contains(p.Order))
            .GroupBy(p => p.Order)
            .Select(g => new BuildSet(g.Key, g.Select(p => new Build(p.Spec!, p.Slip)).ToValueList()));
        var problems = file.Problems.Concat(made.SelectMany(m => m.Problems)).Concat(ofSets.SelectMany(p => p));
        return new SetReport(
            pieces,
            [.. sets],
            [.. withheld.Order(StringComparer.Ordinal)],
            [.. problems.OrderBy(p => p.At.Line)]);
    }

    private static Made Make(OrderLine line, SpecBuilder specs)
    {
        var problems = new List<Problem>();
        return new Made(line, specs.Build(line, problems), problems);
    }

    private static PieceReport Report(Made made, IReadOnlyList<Problem> problems) =>
        new(made.Line.Order, made.Line.Piece, made.Line.Row.Line, made.Spec, made.Line.Slip, problems);

    private sealed record Made(OrderLine Line, BuildSpec? Spec, IReadOnlyList<Problem> Problems);
}
