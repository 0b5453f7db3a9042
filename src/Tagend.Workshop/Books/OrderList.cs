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

    /// <summary>Some pieces are logged as built by their newest papers.</summary>
    PartBuilt,

    /// <summary>All pieces are logged as built by their newest papers.</summary>
    Built,
}

/// <summary>An order, as far as the job book and an order file know it.</summary>
/// <param name="Order">The order's number, in capitals.</param>
/// <param name="State">How far it has come.</param>
/// <param name="Due">The day it is due; null where none is given, or what is given is no date.</param>
/// <param name="DueText">The day as it was written; empty where none was.</param>
/// <param name="Customer">Empty where none is given.</param>
/// <param name="Bow">Empty where none is given.</param>
/// <param name="Pieces">The pieces' names, in the order of printing.</param>
/// <param name="Unbuilt">The pieces whose newest papers have no build.</param>
/// <param name="Builders">Names or initials of those who built pieces of it, each once.</param>
public sealed record ListedOrder(
    string Order,
    OrderState State,
    DateOnly? Due,
    string DueText,
    string Customer,
    string Bow,
    ValueList<string> Pieces,
    ValueList<string> Unbuilt,
    ValueList<string> Builders);

/// <summary>The orders of a shop by the day they are due.</summary>
public static class OrderList
{
    /// <summary>Lists what the book has, and what is in order files and was never printed.</summary>
    /// <param name="jobs">All jobs, in the order of printing.</param>
    /// <param name="file">Order files that were read; null for the book alone.</param>
    /// <param name="style">How the shop writes dates in numbers.</param>
    /// <param name="today">The day from which a date without a year is counted.</param>
    /// <returns>The first due first; those without a day last; of one day, by order.</returns>
    public static IReadOnlyList<ListedOrder> Of(IEnumerable<PrintedJob> jobs, OrderFile? file, DateStyle style, DateOnly today)
    {
        var printed = jobs.GroupBy(j => j.Order).Select(o => Printed([.. o], style, today)).ToList();
        var known = printed.Select(o => o.Order).ToHashSet();
        var fresh = (file?.Lines ?? []).Where(l => !known.Contains(l.Order)).GroupBy(l => l.Order).Select(o => New([.. o], style, today));
        return [.. printed.Concat(fresh).OrderBy(o => o.Due ?? DateOnly.MaxValue).ThenBy(o => o.Order, StringComparer.Ordinal)];
    }

    private static ListedOrder Printed(List<PrintedJob> jobs, DateStyle style, DateOnly today)
    {
        var newest = jobs.GroupBy(j => j.Piece).Select(p => p.Last()).ToList();
        var unbuilt = newest.Where(j => j.Builds.Count == 0).Select(j => j.Piece).ToValueList();
        var due = jobs.FindLast(j => j.Due.Length > 0)?.Due ?? "";
        return new ListedOrder(
            jobs[0].Order,
            unbuilt.Count == 0 ? OrderState.Built : unbuilt.Count < newest.Count ? OrderState.PartBuilt : OrderState.Printed,
            DueDate.Read(due, style, today),
            due,
            jobs.FindLast(j => j.Customer.Length > 0)?.Customer ?? "",
            jobs.FindLast(j => j.Bow.Length > 0)?.Bow ?? "",
            newest.Select(j => j.Piece).ToValueList(),
            unbuilt,
            newest.SelectMany(j => j.Builds).Select(b => b.Built.Who).Where(w => w.Length > 0).Distinct().ToValueList());
    }

    private static ListedOrder New(List<OrderLine> lines, DateStyle style, DateOnly today)
    {
        var (slip, pieces) = (lines[0].Slip, lines.Select(l => l.Piece).ToValueList());
        return new ListedOrder(
            lines[0].Order, OrderState.New, DueDate.Read(slip.Due, style, today), slip.Due, slip.Customer, slip.Bow, pieces, pieces, []);
    }
}
