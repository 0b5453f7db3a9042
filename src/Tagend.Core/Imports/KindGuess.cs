using Tagend.Catalog;
using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>Which plan each piece of a source's file is built by, and which of its goods are no pieces.</summary>
internal sealed class KindGuess(SourceSample sample, MapDraft draft, IReadOnlyDictionary<string, PiecePlan> plans)
{
    private static readonly MapTarget Item = new(null, OrderColumn.Piece);

    public void Fill()
    {
        OfBowTypes();
        OfPieceColumns();
        if (draft.Columns.Find(c => c.Targets.Contains(Item)) is { Header: { } header } column)
        {
            OfItems(header, column.Targets);
        }
    }

    private void OfBowTypes()
    {
        var target = new MapTarget("string", OrderColumn.Kind);
        foreach (var (header, targets) in draft.Columns.Where(c => c.Targets.Contains(target)).ToList())
        {
            if (!draft.Pieces().Contains("string"))
            {
                targets.Clear();
                targets.Add(new MapTarget(null, OrderColumn.Notes));
                continue;
            }

            var values = draft.Values[target.ToString()] = [];
            foreach (var type in CellsOf(header))
            {
                if (PlanOf("string", $"string {type}") is { } plan)
                {
                    values[type] = plan.Name;
                }
                else
                {
                    draft.Doubts.Add(ImportWording.NoPlanFor($"{header} \"{type}\"", $"[values.\"{target}\"]", PlansOf("string")));
                }
            }
        }
    }

    /// <summary>Pieces with columns of their own: the plan goes without saying, or is a constant of the source.</summary>
    private void OfPieceColumns()
    {
        var pieces = draft.Pieces();
        var isCompound = pieces.Exists(p => p is "buss" or "control" or "yoke");
        foreach (var piece in pieces)
        {
            var target = new MapTarget(piece, OrderColumn.Kind);
            if (draft.Has(target))
            {
                continue;
            }

            var word = piece.Split(' ')[0];
            if ((PlanOf(word, word) ?? (isCompound && word == "string" ? plans.GetValueOrDefault("compound-string") : null)) is { } plan)
            {
                draft.Constants[target] = plan.Name;
                if (word == "string")
                {
                    draft.Doubts.Add(ImportWording.TakenFor(piece, plan.Name, "[constants]"));
                }
            }
            else
            {
                draft.Doubts.Add(ImportWording.NoPlanFor(piece, "[constants]", PlansOf(word)));
            }
        }
    }

    /// <summary>Goods by name: each is a piece of a kind, or is left out.</summary>
    private void OfItems(string header, List<MapTarget> targets)
    {
        var (pieces, kinds, others) = (new Dictionary<string, string>(), new Dictionary<string, string>(), new List<string>());
        var kind = new MapTarget(null, OrderColumn.Kind);
        var isOfCompounds = CellsOf(header).Any(c => HeaderWords.Pieces(c).Any(p => p is "buss" or "control"));
        foreach (var item in CellsOf(header))
        {
            var words = HeaderWords.Pieces(item).Where((p, _) => p != HeaderWords.Cable || HeaderWords.Pieces(item).Count == 1).ToList();
            if (!HasLength(header, item))
            {
                others.Add(item);
                continue;
            }

            if (words.Count != 1)
            {
                draft.Doubts.Add(ImportWording.WhichPiece(item));
                continue;
            }

            pieces[item] = words[0];
            if (PlanOf(words[0], item) is { } plan)
            {
                kinds[item] = plan.Name;
            }
            else if (words[0] == "string" && isOfCompounds && plans.ContainsKey("compound-string"))
            {
                kinds[item] = "compound-string";
                draft.Doubts.Add(ImportWording.TakenFor(item, "compound-string", "[values.kind]"));
            }
            else
            {
                draft.Doubts.Add(ImportWording.NoPlanFor($"\"{item}\"", "[values.kind]", PlansOf(words[0])));
            }
        }

        if (!draft.Has(kind))
        {
            targets.Add(kind);
            draft.Values[OrderColumn.Kind] = kinds;
        }

        draft.Values[OrderColumn.Piece] = pieces;
        if (others.Count > 0)
        {
            draft.LeaveOut.Add(new LeftOutRows(header, [.. others.Select(LeftOutRows.Exactly)], null, "other goods"));
        }
    }

    /// <summary>Whether a row of an item holds a length, in a column or an option.</summary>
    private bool HasLength(string header, string item)
    {
        var headers = sample.Columns.Select(c => c.Header).ToList();
        var at = headers.IndexOf(header);
        var rows = sample.Rows.Where(r => r[at].Equals(item, StringComparison.OrdinalIgnoreCase)).ToList();
        var columns = draft.Columns.Where(c => c.Targets.Exists(IsLength)).Select(c => headers.IndexOf(c.Header)).ToList();
        return rows.Exists(r => columns.Exists(i => r[i].Length > 0)
            || draft.Options.Any(o => OptionText.Read(r[headers.IndexOf(o.Key)], [.. o.Value.Select(l => l.Label)])
                .Any(p => o.Value.Exists(l => l.Label == p.Label && l.Targets.Exists(IsLength)))));

        static bool IsLength(MapTarget target) => target.Column is OrderColumn.FinishedLength or OrderColumn.BowLength;
    }

    /// <summary>The plan whose whole name stands in a text, the longest one; else the only plan there is for the piece.</summary>
    private PiecePlan? PlanOf(string piece, string text)
    {
        var named = plans.Values.Where(p => p.Name.Split('-').All(w => HeaderWords.Has(text, w))).OrderByDescending(p => p.Name.Length).FirstOrDefault();
        return named ?? (PlansOf(piece) is [var only] ? plans[only] : null);
    }

    private List<string> PlansOf(string piece) =>
        [.. plans.Keys.Where(name => name.Split('-').Contains(piece)).Order(StringComparer.Ordinal)];

    private IEnumerable<string> CellsOf(string header) =>
        sample.Columns.First(c => c.Header == header).Distinct();
}
