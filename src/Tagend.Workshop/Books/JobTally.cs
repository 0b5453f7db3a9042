using Tagend.Jobs;
using Tagend.Measures;

namespace Tagend.Workshop.Books;

/// <summary>A customer with orders in a list.</summary>
/// <param name="Name">Empty where the orders have no name.</param>
/// <param name="Orders">By their numbers, each once.</param>
public sealed record ListedCustomer(string Name, ValueList<string> Orders);

/// <summary>Counts jobs as they are listed, so that no list has to be held: pieces, builds that were not struck, and whose they are.</summary>
public sealed class JobTally
{
    private readonly SortedDictionary<string, SortedSet<string>> _customers = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The jobs so far.</summary>
    public int Pieces { get; private set; }

    /// <summary>Their builds so far that were not struck.</summary>
    public int Builds { get; private set; }

    /// <summary>Whose they are, by name; those without a name last.</summary>
    public IReadOnlyList<ListedCustomer> Customers =>
        [.. _customers.OrderBy(c => c.Key.Length == 0).Select(c => new ListedCustomer(c.Key, c.Value.ToValueList()))];

    /// <summary>The same jobs, counted as they come.</summary>
    /// <param name="jobs">In any order.</param>
    public IEnumerable<PrintedJob> Follow(IEnumerable<PrintedJob> jobs)
    {
        foreach (var job in jobs)
        {
            Pieces++;
            Builds += job.Builds.Count(b => !b.IsStruck);
            if (!_customers.TryGetValue(job.Customer, out var orders))
            {
                _customers[job.Customer] = orders = new SortedSet<string>(StringComparer.Ordinal);
            }

            orders.Add(job.Order);
            yield return job;
        }
    }
}
