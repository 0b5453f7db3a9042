using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>What each column of a source's file is, by its header and its cells.</summary>
/// <param name="unit">Of a length that names none.</param>
internal sealed class ColumnGuess(SourceSample sample, MapDraft draft, LengthUnit unit)
{
    /// <summary>Columns that only a string has, where a row holds several pieces.</summary>
    private static readonly string[] OfTheString =
        [OrderColumn.Peep, OrderColumn.NockPoint, OrderColumn.CenterServing, OrderColumn.SpeedNocks, OrderColumn.NockGroove];

    private bool _hasOrder;

    public void Fill()
    {
        ChooseUnit();
        var meanings = sample.Columns.Select(c => (Column: c, Meaning: MeaningOf(c))).ToList();
        _hasOrder = meanings.Exists(m => m.Meaning.Column == OrderColumn.Order);
        foreach (var (column, meaning) in meanings)
        {
            Place(column, meaning);
        }

        OfTheRightPiece();
        JoinColors(meanings);
        draft.Blank =
        [
            .. SampledColumn.MeansNothing.Where(b => sample.Columns.Any(c =>
                c.Cells.Contains(b, StringComparer.OrdinalIgnoreCase)
                && draft.Columns.Exists(d => d.Header == c.Header && d.Targets.TrueForAll(t => t.Column != MapTarget.Never)))),
        ];
    }

    /// <summary>The other unit, where columns of lengths can be none in the shop's.</summary>
    private void ChooseUnit()
    {
        var other = unit == LengthUnit.Inch ? LengthUnit.Millimeter : LengthUnit.Inch;
        var lengths = sample.Columns
            .Where(c => HeaderWords.Read(c.Header) is { Column: OrderColumn.FinishedLength } or { Column: null, Pieces.Count: > 0 })
            .ToList();
        if (!lengths.Exists(c => c.AreLengths(unit)) && lengths.Exists(c => c.AreLengths(other)))
        {
            draft.Unit = unit = other;
            draft.Doubts.Add(ImportWording.OtherUnit(other));
        }
    }

    private HeaderMeaning MeaningOf(SampledColumn column)
    {
        var meaning = HeaderWords.Read(column.Header);
        if (column.AreAddresses)
        {
            return meaning with { Column = MapTarget.Never };
        }

        // Some stores call the order's number its name.
        return meaning.Column == OrderColumn.Customer && column.AreNumbers && !_hasOrder
            ? meaning with { Column = OrderColumn.Order }
            : meaning;
    }

    private void Place(SampledColumn column, HeaderMeaning meaning)
    {
        if (meaning.Column is not (OrderColumn.Notes or MapTarget.Never) && TryTakeOptions(column))
        {
            return;
        }

        var name = meaning.Column ?? (meaning.Pieces.Count > 0 && column.AreLengths(unit) ? OrderColumn.FinishedLength : null);
        switch (name)
        {
            case null:
                draft.NotUnderstood.Add(column.Header);
                draft.Never(column.Header);
                return;
            case HeaderWords.Paid:
                // Told by the rows that are left out.
                return;
            case HeaderWords.BowType:
                draft.Columns.Add((column.Header, [new MapTarget("string", OrderColumn.Kind)]));
                return;
            case OrderColumn.FinishedLength when column.Cells.Count > 0 && !column.AreLengths(unit):
                draft.Doubts.Add(ImportWording.NoLengths(column.Header, column.Cells[0]));
                draft.Never(column.Header);
                return;
            default:
                var targets = TargetsOf(name, meaning.Pieces);
                if (name == OrderColumn.Colors && meaning.Number is not null)
                {
                    return;
                }

                if (name is not (OrderColumn.Notes or MapTarget.Never) && targets.Exists(draft.Has))
                {
                    draft.Doubts.Add(ImportWording.SecondColumn(column.Header, targets.Find(draft.Has)));
                    draft.Never(column.Header);
                    return;
                }

                draft.Columns.Add((column.Header, targets));
                return;
        }
    }

    private static List<MapTarget> TargetsOf(string column, IReadOnlyList<string> pieces) =>
        pieces.Count == 0 || !MapTarget.TryRead($"{pieces[0]}.{column}", out _, out _)
            ? [new MapTarget(null, column)]
            : [.. pieces.Select(p => new MapTarget(p, column))];

    /// <summary>A column whose cells hold several labels of known meaning.</summary>
    private bool TryTakeOptions(SampledColumn column)
    {
        var labels = column.Cells.SelectMany(LabelsIn).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(l => (Label: l, Meaning: HeaderWords.Read(l)))
            .ToList();
        var known = labels.FindAll(l => l.Meaning.Column is not null || l.Meaning.Pieces.Count > 0);
        var withTwo = column.Cells.Count(c => LabelsIn(c).Count() > 1);
        if (known.Count < 2 || withTwo * 2 < column.Cells.Count)
        {
            return false;
        }

        var options = new List<(string, List<MapTarget>)>();
        foreach (var (label, meaning) in known)
        {
            var name = meaning.Column is null or HeaderWords.BowType or HeaderWords.Paid
                ? meaning.Column is null ? OrderColumn.FinishedLength : OrderColumn.Notes
                : meaning.Column;
            if (name != OrderColumn.FinishedLength || new SampledColumn(label, [.. column.Cells.SelectMany(c => TextsOf(c, label))]).AreLengths(unit))
            {
                options.Add((label, TargetsOf(name, meaning.Pieces)));
            }
        }

        draft.Options[column.Header] = options;
        return true;
    }

    private static IEnumerable<string> TextsOf(string cell, string label) =>
        OptionText.Read(cell, [label]).Where(p => p.IsKnown).Select(p => p.Text);

    /// <summary>The labels in an option text: before a colon, or a word that is known before a number.</summary>
    private static IEnumerable<string> LabelsIn(string cell)
    {
        foreach (var (label, text, _) in OptionText.Read(cell, []))
        {
            if (label.Length > 0)
            {
                yield return label;
                continue;
            }

            var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var digit = Array.FindIndex(words, w => char.IsDigit(w[0]));
            var before = digit > 0 ? string.Join(' ', words[..digit]) : "";
            if (before.Length > 0 && HeaderWords.Read(before).Column is not null)
            {
                yield return before;
            }
        }
    }

    /// <summary>Where rows hold several pieces: what only a string has is the string's, and a bare cable's is of all cables.</summary>
    private void OfTheRightPiece()
    {
        var pieces = draft.Pieces();
        if (pieces.Count == 0)
        {
            return;
        }

        foreach (var targets in draft.Columns.Select(c => c.Targets).Concat(draft.Options.Values.SelectMany(o => o).Select(o => o.Targets)))
        {
            var all = targets.SelectMany(t => Of(t, pieces)).ToList();
            targets.Clear();
            targets.AddRange(all);
        }
    }

    private static IEnumerable<MapTarget> Of(MapTarget target, List<string> pieces)
    {
        if (target.Piece is null && OfTheString.Contains(target.Column) && pieces.Contains("string"))
        {
            return [target with { Piece = "string" }];
        }

        var cables = pieces.Where(p => p != "string" && !p.StartsWith("yoke", StringComparison.Ordinal)).ToList();
        return target.Piece == HeaderWords.Cable && !pieces.Contains(HeaderWords.Cable) && cables.Count > 0
            ? cables.Select(p => target with { Piece = p })
            : [target];
    }

    /// <summary>Colors in columns of their own, one strand color each.</summary>
    private void JoinColors(List<(SampledColumn Column, HeaderMeaning Meaning)> meanings)
    {
        foreach (var group in meanings
            .Where(m => m.Meaning is { Column: OrderColumn.Colors, Number: not null })
            .SelectMany(m => TargetsOf(OrderColumn.Colors, m.Meaning.Pieces).Select(t => (Target: t, m.Column.Header)))
            .GroupBy(m => m.Target))
        {
            foreach (var target in Of(group.Key, draft.Pieces()).Where(t => !draft.Has(t)))
            {
                draft.Joins[target] = string.Join('/', group.Select(g => $"{{{g.Header}}}"));
            }
        }
    }
}
