using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>A spool on the shelf or at a bench, with something left on it.</summary>
/// <param name="IsMounted">It is at this bench now, and is taken before others.</param>
public sealed record ShelfSpool(ReceivedSpool Spool, Length Left, bool IsMounted);

/// <summary>The builds from one on are made from this spool.</summary>
/// <param name="From">The build's order and piece; null for the first that takes of the stock.</param>
public sealed record SpoolStart(ReceivedSpool Spool, string? From);

/// <summary>Which spools a stock is taken from in a batch.</summary>
/// <param name="Spools">In the order they are begun; none where there is no spool that holds the first build.</param>
/// <param name="ShortFrom">The first build, as order and piece, that no spool holds as a whole; null where all are held.</param>
/// <param name="Short">What those builds take together.</param>
public sealed record SpoolTake(ValueList<SpoolStart> Spools, string? ShortFrom, Length Short);

/// <summary>Which spools a batch is built from, build by build in the order of the builds.</summary>
/// <remarks>
/// A build is made from one spool of each stock, for strands are not joined: where what is left on a spool does not hold
/// the next build, another one is begun. Mounted spools come first, then opened ones, then those that came first.
/// </remarks>
public sealed class SpoolPlan
{
    private readonly Dictionary<(StockKind Kind, string Name, string Color), Taking> _takings = [];
    private readonly List<Place> _shelf;

    /// <param name="shelf">All spools that are not finished.</param>
    public SpoolPlan(IEnumerable<ShelfSpool> shelf) => _shelf =
    [
        .. shelf.OrderByDescending(s => s.IsMounted).ThenByDescending(s => s.Left < s.Spool.Length).ThenBy(s => s.Spool.Number)
            .Select(s => new Place(s.Spool) { Left = s.Left }),
    ];

    /// <summary>Takes what one build needs; called in the order of the builds.</summary>
    public void Add(string order, string piece, IEnumerable<StockNeed> needs)
    {
        foreach (var need in needs.Where(n => _shelf.Exists(s => s.Spool.Serves(n))))
        {
            var key = (need.Kind, need.Name, need.Color);
            if (!_takings.TryGetValue(key, out var taking))
            {
                _takings[key] = taking = new Taking();
            }

            Take(taking, $"{order}/{piece}", need);
        }
    }

    /// <returns>Null where the shop keeps no spools of the stock.</returns>
    public SpoolTake? Of(StockNeed need) => _takings.TryGetValue((need.Kind, need.Name, need.Color), out var taking)
        ? new SpoolTake(taking.Starts.ToValueList(), taking.ShortFrom, taking.Short)
        : null;

    private void Take(Taking taking, string build, StockNeed need)
    {
        var spool = taking.Current is { } current && current.Left >= need.Length
            ? current
            : _shelf.Find(s => s.Spool.Serves(need) && s.Left >= need.Length);
        if (spool is null)
        {
            taking.ShortFrom ??= build;
            taking.Short += need.Length;
            return;
        }

        if (spool != taking.Current)
        {
            taking.Starts.Add(new SpoolStart(spool.Spool, taking.Starts.Count == 0 && taking.ShortFrom is null ? null : build));
            taking.Current = spool;
        }

        spool.Left -= need.Length;
    }

    private sealed class Place(ReceivedSpool spool)
    {
        public ReceivedSpool Spool => spool;

        public Length Left { get; set; }
    }

    private sealed class Taking
    {
        public List<SpoolStart> Starts { get; } = [];

        public Place? Current { get; set; }

        public string? ShortFrom { get; set; }

        public Length Short { get; set; }
    }
}
