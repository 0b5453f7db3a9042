using Tagend.Measures;
using Tagend.Orders;
using Tagend.Problems;

namespace Tagend.Specs;

/// <summary>Makes sets of the pieces of one order. A set with a problem is withheld whole.</summary>
public sealed class SetBuilder
{
    private readonly OrderFile _file;
    private readonly SpecBuilder _specs;
    private readonly List<Problem> _ofPieces = [];
    private readonly List<Problem> _ofSets = [];
    private readonly HashSet<int> _unmade = [];

    /// <summary>The rows of an order by their indexes; an empty order is that of broken rows that name none.</summary>
    private readonly record struct CheckedRows(string Order, IEnumerable<int> Rows, IEnumerable<int> Broken);

    private readonly record struct Findings(Problem[] OfPieces, Problem[] OfSet, int[] Unmade);

    private SetBuilder(OrderFile file, SpecBuilder specs) => (_file, _specs) = (file, specs);

    /// <summary>Computes every spec for its problems, set by set, and lets go of it.</summary>
    public static SetReport Build(OrderFile file, SpecBuilder specs) => new SetBuilder(file, specs).Report();

    private SetReport Report()
    {
        var sets = Enumerable.Range(0, _file.Rows.Count).ToLookup(i => _file.Rows[i].Order);
        var broken = _file.BrokenLines.Index().ToLookup(l => l.Item.Order, l => l.Index);
        List<CheckedRows> all =
        [
            .. sets.Select(s => new CheckedRows(s.Key, s, broken[s.Key])),
            .. broken.Where(b => !sets.Contains(b.Key)).Select(b => new CheckedRows(b.Key, [], b)),
        ];
        foreach (var found in SideBySide.Select(all, Check))
        {
            _ofPieces.AddRange(found.OfPieces);
            _ofSets.AddRange(found.OfSet);
            _unmade.UnionWith(found.Unmade);
        }

        IReadOnlyList<Problem> problems =
        [
            .. _file.Problems.Concat(_ofPieces).Concat(_ofSets).OrderBy(p => _file.Position(p.At.File)).ThenBy(p => p.At.Line),
        ];
        var byLine = problems.ToLookup(p => (p.At.File, p.At.Line));
        var withheld = _file.Rows
            .Where(row => byLine[(row.File, row.Line)].Any(p => p.Severity == Severity.Refusal))
            .Select(row => row.Order)
            .Concat(_file.BrokenRows.Select(row => row.Order))
            .Concat(_file.BrokenOrders)
            .ToHashSet();
        Func<IGrouping<string, int>, BuildSet> make = Make;
        return new SetReport(
            Pieces(byLine),
            [.. sets.Where(set => !withheld.Contains(set.Key)).Select(set => new ReadySet(set, make))],
            [.. withheld.Order(StringComparer.Ordinal)],
            problems);
    }

    private Findings Check(CheckedRows rows)
    {
        var (pieces, ofPieces, unmade) = (new List<SetPiece>(), new List<Problem>(), new List<int>());
        var lines = new List<OrderLine>();
        foreach (var i in rows.Rows)
        {
            var line = _file.Lines[i];
            lines.Add(line);
            if (_specs.Build(line, ofPieces) is { } spec)
            {
                pieces.Add(new SetPiece(line, spec));
            }
            else
            {
                unmade.Add(i);
            }
        }

        foreach (var line in rows.Broken.Select(i => _file.BrokenLines[i]))
        {
            lines.Add(line);
            if (_specs.Examine(line, ofPieces) is { } spec && pieces.TrueForAll(p => p.Spec.Piece != spec.Piece))
            {
                pieces.Add(new SetPiece(line, spec));
            }
        }

        if (rows.Broken.Any())
        {
            (lines, pieces) = (InOrder(lines, l => l), InOrder(pieces, p => p.Line));
        }

        return new Findings([.. ofPieces], rows.Order.Length == 0 ? [] : OfSet(rows, lines, pieces, unmade.Count), [.. unmade]);
    }

    /// <summary>What is wrong with the rows of one order together.</summary>
    private Problem[] OfSet(CheckedRows rows, List<OrderLine> lines, List<SetPiece> pieces, int unmade)
    {
        var isWhole = unmade == 0 && !_file.BrokenOrders.Contains(rows.Order);
        List<Problem> ofSet =
        [
            .. SetChecks.Systems(lines.Where(l => l.Piece.Length > 0).Select(l => (l, _specs.PlanOf(l)))),
            .. SetChecks.Of(pieces, isWhole, _specs.Plans),
        ];
        if (lines.Find(l => l.Row[OrderColumn.Due] is not null) is { } dated && _specs.DueOf(dated.Slip.Due) is null)
        {
            var message = _specs.EitherDue(dated.Slip.Due) is var (first, second) ? OrderWording.TwoDates(first, second) : OrderWording.NoDate;
            ofSet.Add(dated.Row.Problem(OrderColumn.Due, message, Severity.Warning));
        }

        return [.. ofSet];
    }

    /// <summary>As the files have them; those of one row stay in their order.</summary>
    private List<T> InOrder<T>(List<T> items, Func<T, OrderLine> lineOf) =>
        [.. items.OrderBy(i => _file.Position(lineOf(i).Row.File)).ThenBy(i => lineOf(i).Row.Line)];

    private MadeList<PieceReport> Pieces(ILookup<(string File, int Line), Problem> problems)
    {
        // Rows by their index, and after them the broken ones.
        var (rows, broken) = (_file.Rows, _file.BrokenRows);
        int[] all = [.. Enumerable.Range(0, rows.Count + broken.Count).OrderBy(i => _file.Position(NameOf(i).File)).ThenBy(i => NameOf(i).Line)];
        return new MadeList<PieceReport>(all.Length, i =>
        {
            var name = NameOf(all[i]);
            var isMade = all[i] < rows.Count && !_unmade.Contains(all[i]);
            return new PieceReport(name, [.. problems[(name.File, name.Line)]], isMade ? new Lazy<Build>(() => Make(all[i])) : null);
        });

        RowName NameOf(int i) => i < rows.Count
            ? rows[i]
            : broken[i - rows.Count];
    }

    private BuildSet Make(IGrouping<string, int> set) => new(set.Key, set.Select(Make).ToValueList());

    private Build Make(int row)
    {
        var line = _file.Lines[row];
        return new Build(_specs.Build(line, [])!, line.Slip) { SupersededBy = _specs.SupersededBy(line) };
    }
}
