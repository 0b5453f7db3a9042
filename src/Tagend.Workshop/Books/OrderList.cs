using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Orders;

namespace Tagend.Workshop.Books;

/// <summary>How far an order has come.</summary>
public enum OrderState
{
    /// <summary>In an order file, and never printed.</summary>
    New,

    /// <summary>Printed, and no piece of it logged as built.</summary>
    Printed,

    /// <summary>A piece of it is to be made again.</summary>
    Remade,

    /// <summary>Some pieces are logged as built by their newest papers.</summary>
    PartBuilt,

    /// <summary>All pieces are logged as built by their newest papers, or have left the shop.</summary>
    Built,

    /// <summary>All pieces have left the shop.</summary>
    Shipped,

    /// <summary>None of it is to be made.</summary>
    Cancelled,
}

/// <summary>A piece of an order, and how far it has come.</summary>
/// <param name="Piece">Its name.</param>
/// <param name="Revision">Of its newest papers; 0 where it was never printed.</param>
/// <param name="Bench">Where it was built, else where it was printed; empty where that is not known.</param>
/// <param name="Who">Who built it; empty where it is not built, or that is not known.</param>
/// <param name="Reason">Why it is cancelled or to be made again; empty for all others.</param>
public sealed record ListedPiece(string Piece, PieceState State, int Revision, string Bench, string Who, string Reason);

/// <summary>An order, as far as the job book and an order file know it.</summary>
/// <param name="Order">Its number, in capitals.</param>
/// <param name="Due">The day; null where nothing is said, or it is no date.</param>
/// <param name="DueText">As written; empty where nothing is.</param>
/// <param name="Customer">Empty where none is given.</param>
/// <param name="Bow">Empty where none is given.</param>
/// <param name="Pieces">In the order of printing, then those that were never printed.</param>
public sealed record ListedOrder(
    string Order, OrderState State, DateOnly? Due, string DueText, string Customer, string Bow, ValueList<ListedPiece> Pieces)
{
    /// <summary>Who built pieces of it.</summary>
    public IEnumerable<string> Builders => Pieces.Select(p => p.Who).Where(w => w.Length > 0).Distinct();

    /// <summary>Where pieces of it were printed or built.</summary>
    public IEnumerable<string> Benches => Pieces.Select(p => p.Bench).Where(b => b.Length > 0).Distinct();

    /// <summary>Pieces in one of some states.</summary>
    public IEnumerable<ListedPiece> In(params IEnumerable<PieceState> states) => Pieces.Where(p => states.Contains(p.State));
}

/// <summary>The orders of a shop, and how far each has come.</summary>
public static class OrderList
{
    /// <summary>Lists what the book has, and what is in order files and was never printed.</summary>
    /// <param name="book">Null where there is none yet.</param>
    /// <param name="isOpenOnly">Without orders that are shipped or cancelled.</param>
    /// <param name="file">Null for the book alone.</param>
    /// <param name="style">Of dates in numbers.</param>
    /// <param name="today">A due date without a year is the nearest one to it.</param>
    /// <returns>The first due first; those without a day last; of one day, by order.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<ListedOrder> Of(IJobBook? book, bool isOpenOnly, OrderFile? file, DateStyle style, DateOnly today)
    {
        var ordered = (file?.Lines ?? []).GroupBy(l => l.Order).ToDictionary(o => o.Key, o => o.ToList());
        var printed = book?.Find(new JobSearch { IsOpen = isOpenOnly }).GroupBy(j => j.Order)
            .Select(o => Printed([.. o], ordered.GetValueOrDefault(o.Key) ?? [], book.Events, style, today)).ToList() ?? [];
        var known = printed.Select(o => o.Order).ToHashSet();
        var others = WithJobs(isOpenOnly ? book : null, ordered.Where(o => !known.Contains(o.Key)), o => o.Key);
        var fresh = others.Where(o => o.Jobs.Count == 0).Select(o => New(o.Item.Value, style, today)); // what has jobs is closed
        return [.. printed.Concat(fresh).OrderBy(o => o.Due ?? DateOnly.MaxValue).ThenBy(o => o.Order, StringComparer.Ordinal)];
    }

    /// <summary>Lists the orders of a file alone, and asks the book for these. One that the book has for another customer was never printed.</summary>
    /// <param name="book">Null where there is none yet.</param>
    /// <param name="file">Order files that were read.</param>
    /// <param name="style">How the shop writes dates in numbers.</param>
    /// <param name="today">A due date without a year is the nearest one to it.</param>
    /// <returns>In the order of the file.</returns>
    /// <exception cref="Problems.TagendException">The book cannot be used.</exception>
    public static IReadOnlyList<ListedOrder> OfFile(IJobBook? book, OrderFile file, DateStyle style, DateOnly today) =>
    [
        .. WithJobs(book, file.Lines.GroupBy(l => l.Order), o => o.Key).Select(o => o.Jobs.Count > 0 && !IsAnothers(o.Jobs, o.Item)
            ? Printed(o.Jobs, [.. o.Item], book!.Events, style, today)
            : New([.. o.Item], style, today)),
    ];

    /// <summary>The last papers of an order that name a customer, where that is somebody else; null where it is not, or nobody is named.</summary>
    /// <param name="printed">All of the order.</param>
    /// <param name="customer">Whom it is ordered for; may be empty.</param>
    internal static PrintedJob? LastOfAnother(IEnumerable<PrintedJob> printed, string customer) =>
        customer.Length > 0 && printed.Where(j => j.Customer.Length > 0).MaxBy(j => j.Number) is { } last
            && !last.Customer.Equals(customer, StringComparison.OrdinalIgnoreCase)
            ? last
            : null;

    /// <summary>The word that a state has on the terminal and in JSON.</summary>
    public static string Word(OrderState state) => state switch
    {
        OrderState.New => "new",
        OrderState.Printed => "printed",
        OrderState.Remade => "remade",
        OrderState.PartBuilt => "part-built",
        OrderState.Built => "built",
        OrderState.Shipped => "shipped",
        OrderState.Cancelled => "cancelled",
        _ => throw new InvalidOperationException($"no word for {state}"),
    };

    /// <summary>The pieces of an order as they are by their newest papers.</summary>
    /// <param name="jobs">All of the order, in the order of printing.</param>
    /// <param name="eventsOf">The log of an order.</param>
    public static ValueList<ListedPiece> Pieces(IReadOnlyList<PrintedJob> jobs, Func<string, IReadOnlyList<BookEvent>> eventsOf)
    {
        var newest = jobs.GroupBy(j => j.Piece).Select(p => p.Last()).ToList();
        var log = newest.Exists(j => j.State is PieceState.Cancelled or PieceState.Remade) ? eventsOf(jobs[0].Order) : [];
        return newest.Select(job =>
        {
            var (state, build) = (job.State, job.Standing.LastOrDefault());
            return new ListedPiece(
                job.Piece, state, job.Revision, build?.Bench is { Length: > 0 } bench ? bench : job.Bench, build?.Built.Who ?? "", ReasonOf(job.Piece, state, log));
        }).ToValueList();
    }

    /// <summary>Orders, each with all that the book has of it in the order of printing; the book is asked for many at once.</summary>
    private static IEnumerable<(TOrder Item, List<PrintedJob> Jobs)> WithJobs<TOrder>(IJobBook? book, IEnumerable<TOrder> orders, Func<TOrder, string> numberOf) =>
        orders.Chunk(IJobBook.OrdersAtOnce).SelectMany(some =>
        {
            var jobs = (book?.JobsOf([.. some.Select(numberOf)]) ?? []).ToLookup(j => j.Order);
            return some.Select(o => (o, jobs[numberOf(o)].ToList()));
        });

    /// <summary>Whether a number was last printed for somebody else than it is ordered for.</summary>
    private static bool IsAnothers(IEnumerable<PrintedJob> printed, IEnumerable<OrderLine> ordered) =>
        LastOfAnother(printed, ordered.FirstOrDefault(l => l.Slip.Customer.Length > 0)?.Slip.Customer ?? "") is not null;

    private static string ReasonOf(string piece, PieceState state, IReadOnlyList<BookEvent> log) => state switch
    {
        PieceState.Cancelled => BookLog.Last(log, piece, EventKind.Cancelled)?.Note.Reason ?? "",
        PieceState.Remade => BookLog.Last(log, piece, EventKind.Remade)?.Note.Reason ?? "",
        _ => "",
    };

    private static ListedOrder Printed(
        List<PrintedJob> jobs, List<OrderLine> ordered, Func<string, IReadOnlyList<BookEvent>> eventsOf, DateStyle style, DateOnly today)
    {
        var pieces = Pieces(jobs, eventsOf);
        var unprinted = ordered.Select(l => l.Piece).Except(pieces.Select(p => p.Piece)).Select(Unprinted);
        var due = jobs.FindLast(j => j.Due.Length > 0)?.Due ?? "";
        ValueList<ListedPiece> all = pieces.Concat(unprinted).ToValueList();
        return new ListedOrder(
            jobs[0].Order,
            StateOf(all),
            DueDate.Read(due, style, today),
            due,
            jobs.FindLast(j => j.Customer.Length > 0)?.Customer ?? "",
            jobs.FindLast(j => j.Bow.Length > 0)?.Bow ?? "",
            all);
    }

    private static OrderState StateOf(IEnumerable<ListedPiece> pieces)
    {
        var states = pieces.Select(p => p.State).Where(s => s != PieceState.Cancelled).ToHashSet();
        return states.Count == 0 ? OrderState.Cancelled
            : states.Contains(PieceState.Remade) ? OrderState.Remade
            : states.SetEquals([PieceState.Shipped]) ? OrderState.Shipped
            : states.SetEquals([PieceState.New]) ? OrderState.New
            : !states.Overlaps([PieceState.Built, PieceState.Shipped]) ? OrderState.Printed
            : states.Overlaps([PieceState.New, PieceState.Printed]) ? OrderState.PartBuilt
            : OrderState.Built;
    }

    private static ListedOrder New(List<OrderLine> lines, DateStyle style, DateOnly today)
    {
        var slip = lines[0].Slip;
        return new ListedOrder(
            lines[0].Order, OrderState.New, DueDate.Read(slip.Due, style, today), slip.Due, slip.Customer, slip.Bow,
            lines.Select(l => Unprinted(l.Piece)).ToValueList());
    }

    private static ListedPiece Unprinted(string piece) => new(piece, PieceState.New, 0, "", "", "");
}
