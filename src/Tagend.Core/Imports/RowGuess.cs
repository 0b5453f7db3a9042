using Tagend.Orders;

namespace Tagend.Imports;

/// <summary>Which rows of a source's file are left out, and which cells say the same as the row above.</summary>
internal sealed class RowGuess(SourceSample sample, MapDraft draft)
{
    private static readonly string[] MeansPaid = ["paid", "yes", "y", "true", "x", "1", "complete", "completed", "paid in full"];

    public void Fill()
    {
        foreach (var column in sample.Columns.Where(c => HeaderWords.Read(c.Header).Column == HeaderWords.Paid))
        {
            var paid = column.Distinct().Where(c => MeansPaid.Contains(c, StringComparer.OrdinalIgnoreCase)).Select(c => c.ToLowerInvariant()).ToList();
            if (paid.Count == 0)
            {
                draft.Never(column.Header);
                draft.Doubts.Add(ImportWording.NoPaid(column.Header, column.Distinct().Take(5)));
                continue;
            }

            draft.LeaveOut.Insert(0, new LeftOutRows(column.Header, null, paid, "unpaid"));
        }

        draft.Carry = Carried();
    }

    /// <summary>Columns of the whole order that an export fills in its first row only.</summary>
    private List<string> Carried()
    {
        var order = draft.Columns.Find(c => c.Targets.Contains(new MapTarget(null, OrderColumn.Order))).Header;
        if (order is null)
        {
            return [];
        }

        var headers = sample.Columns.Select(c => c.Header).ToList();
        var at = headers.IndexOf(order);
        var sets = sample.Rows.Where(r => r[at].Length > 0).GroupBy(r => r[at]).Where(g => g.Count() > 1).ToList();
        string[] ofTheOrder = [OrderColumn.Bow, OrderColumn.DrawWeight];
        return
        [
            .. headers.Where((h, i) =>
                (draft.LeaveOut.Exists(l => l.Header == h)
                    || draft.Columns.Exists(c => c.Header == h && c.Targets.Exists(t => t.Piece is null && ofTheOrder.Contains(t.Column))))
                && sets.Count > 0
                && sets.Exists(g => g.First()[i].Length > 0)
                && sets.TrueForAll(g => g.Skip(1).All(r => r[i].Length == 0))),
        ];
    }
}
