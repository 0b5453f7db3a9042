using Tagend.Jobs;
using Tagend.Orders;
using Tagend.Problems;
using Tagend.Specs;
using Tagend.Tags;
using Tagend.Workshop.Readings;

namespace Tagend.Workshop.Books;

/// <summary>Which issue of a piece an order's spec is, by what the job book has of the order.</summary>
/// <param name="jobsOf">All jobs of some orders, in the order of printing. Asked while the orders are read first.</param>
/// <param name="rows">Of all orders, which are asked for in this order but where they are worked on side by side.</param>
/// <param name="reuse">Whether an order may be of a customer other than the book has.</param>
internal sealed class BookIssues(
    Func<IReadOnlyCollection<string>, IReadOnlyList<PrintedJob>> jobsOf, IReadOnlyList<RowName> rows, NumberReuse reuse) : IIssues
{
    /// <summary>Shares of orders, as many as cores work on, and some; then they are forgotten, and a season that is printed again takes no more memory.</summary>
    private static readonly int KeptShares = Environment.ProcessorCount + 2;

    private static readonly ILookup<string, PrintedJob> None = Array.Empty<PrintedJob>().ToLookup(j => j.Piece);

    private readonly Dictionary<(string Order, string Piece), Issue> _issues = [];
    private readonly Dictionary<string, ILookup<string, PrintedJob>> _jobs = [];
    private readonly Queue<string[]> _shares = [];
    private readonly HashSet<string> _new = []; // to the book
    private readonly HashSet<string> _checked = []; // a set's rows have one customer
    private readonly HashSet<string> _strangers = [];
    private readonly HashSet<PieceName> _cancelled = [];
    private int _coming; // the first row that was not looked at

    /// <param name="Kept">The tag of the spec as it was printed, where the same papers are printed again: a spec takes four times as much.</param>
    /// <param name="SupersededBy">The newest revision, where this is an older one.</param>
    private sealed record Issue(int Revision, DateOnly Date, string? Kept, int? SupersededBy = null);

    public void CheckOrder(OrderLine line, ICollection<Problem> problems)
    {
        lock (_jobs)
        {
            if (_checked.Add(line.Order))
            {
                CheckCustomer(line, JobsOf(line.Order), problems);
            }
        }
    }

    BuildSpec IIssues.Issue(OrderLine line, BuildSpec spec, ICollection<Problem> problems)
    {
        Issue? issue;
        lock (_jobs)
        {
            if (_new.Contains(spec.Order))
            {
                return spec;
            }

            // A spec is made again whenever it is printed, on any thread; what it is was settled when it was read first.
            if (!_issues.TryGetValue((spec.Order, spec.Piece), out issue))
            {
                _issues[(spec.Order, spec.Piece)] = issue = Decide(line, spec, problems);
            }
        }

        return issue.Kept is { } tag && TagReader.Read(tag) is TagReading.Piece { Spec: var printed }
            ? printed
            : spec with { Revision = issue.Revision, Date = issue.Date };
    }

    public int? SupersededBy(string order, string piece)
    {
        lock (_jobs)
        {
            return _issues.GetValueOrDefault((order, piece))?.SupersededBy;
        }
    }

    /// <summary>Orders that the book has for another customer, and that may not be.</summary>
    public IReadOnlySet<string> Strangers => _strangers;

    /// <summary>The sets without the pieces that are cancelled.</summary>
    public IReadOnlyList<ReadySet> WithoutCancelled(SetReport report)
    {
        if (_cancelled.Count == 0)
        {
            return report.Ready;
        }

        var kept = report.Pieces.Select(p => new PieceName(p.Order, p.Piece)).Where(p => !_cancelled.Contains(p)).ToLookup(p => p.Order, p => p.Piece);
        var touched = _cancelled.Select(p => p.Order).ToHashSet();
        return [.. report.Ready.Select(set => touched.Contains(set.Order) ? set.Only(kept[set.Order].ToHashSet()) : set).Where(set => set.Pieces > 0)];
    }

    private ILookup<string, PrintedJob> JobsOf(string order)
    {
        if (!IsFetched(order))
        {
            Fetch([order, .. Coming().Where(o => o != order && !_checked.Contains(o) && !IsFetched(o)).Distinct().Take(IJobBook.OrdersAtOnce - 1)]);
        }

        return _jobs.GetValueOrDefault(order, None);
    }

    private bool IsFetched(string order) => _new.Contains(order) || _jobs.ContainsKey(order);

    private void Fetch(string[] share)
    {
        if (_shares.Count == KeptShares)
        {
            Array.ForEach(_shares.Dequeue(), order => _jobs.Remove(order));
        }

        var found = jobsOf(share).ToLookup(j => j.Order);
        foreach (var order in share)
        {
            if (found.Contains(order))
            {
                _jobs[order] = found[order].ToLookup(j => j.Piece);
            }
            else
            {
                _new.Add(order);
            }
        }

        _shares.Enqueue(share);
    }

    private IEnumerable<string> Coming()
    {
        while (_coming < rows.Count)
        {
            yield return rows[_coming++].Order;
        }
    }

    private Issue Decide(OrderLine line, BuildSpec spec, ICollection<Problem> problems)
    {
        var ofOrder = JobsOf(spec.Order);
        if (ofOrder[spec.Piece].LastOrDefault() is not { } newest || TagReader.Read(newest.Tag) is not TagReading.Piece { Spec: var printed })
        {
            return new Issue(spec.Revision, spec.Date, null);
        }

        if (newest.State == PieceState.Cancelled && _cancelled.Add(new PieceName(spec.Order, spec.Piece)))
        {
            SayCancelled(line, newest, ofOrder, problems);
        }

        // An order that names a revision which was superseded since is printed as what it was, and says so.
        if (line.Revision is { } wanted && wanted < newest.Revision
            && ofOrder[spec.Piece].LastOrDefault(j => j.Revision == wanted) is { } older
            && TagReader.Read(older.Tag) is TagReading.Piece { Spec: var then } && SpecChange.Of(then, spec).Count == 0)
        {
            problems.Add(Warning(line, OrderColumn.Revision, Superseded.Sentence(newest)));
            return new Issue(wanted, older.Issued, Kept(older, then, spec), newest.Revision);
        }

        var (was, now) = (newest.Customer, line.Slip.Customer);
        var isOthers = was.Length > 0 && now.Length > 0 && !was.Equals(now, StringComparison.OrdinalIgnoreCase);
        IReadOnlyList<string> changes = [.. SpecChange.Of(printed, spec), .. isOthers ? [$"customer {now} (was {was})"] : Array.Empty<string>()];
        if (changes.Count == 0)
        {
            return line.Revision > newest.Revision
                ? new Issue(line.Revision.Value, spec.Date, null)
                : new Issue(newest.Revision, newest.Issued, Kept(newest, printed, spec));
        }

        var revision = Math.Max(newest.Revision + 1, line.Revision ?? 1);
        problems.Add(Warning(line, OrderColumn.Piece, Superseded.NewIssue(revision, newest, changes)));
        return new Issue(revision, spec.Date, null);
    }

    /// <summary>The tag as it was printed, so that it is the same letter for letter; not where it is in other units, or says less than today's do.</summary>
    private static string? Kept(PrintedJob job, BuildSpec printed, BuildSpec now) =>
        printed.Unit == now.Unit && printed.EndLoops is not null ? job.Tag : null;

    /// <summary>An order that is cancelled as a whole is told of once, at its first piece.</summary>
    private void SayCancelled(OrderLine line, PrintedJob newest, ILookup<string, PrintedJob> ofOrder, ICollection<Problem> problems)
    {
        var isWhole = ofOrder.All(piece => piece.Last().State == PieceState.Cancelled);
        if (!isWhole || _cancelled.Count(p => p.Order == newest.Order) == 1)
        {
            problems.Add(Warning(line, isWhole ? OrderColumn.Order : OrderColumn.Piece, Superseded.Cancelled));
        }
    }

    private void CheckCustomer(OrderLine line, ILookup<string, PrintedJob> ofOrder, ICollection<Problem> problems)
    {
        var now = line.Slip.Customer;
        if (OrderList.LastOfAnother(ofOrder.SelectMany(j => j), now) is not { } last || reuse.IsMeant(line.Order, now))
        {
            return;
        }

        _strangers.Add(line.Order);
        problems.Add(line.Row.Problem(OrderColumn.Order, Superseded.OtherCustomer(last, now, reuse)));
    }

    private static Problem Warning(OrderLine line, string column, string message) => line.Row.Problem(column, message, Severity.Warning);
}
