using System.Numerics;

namespace Tagend.Specs;

/// <summary>Finds the order of different set-ups with the fewest changes from one to the next.</summary>
/// <remarks>
/// A shortest open path with one-way costs. Few set-ups: exact, by Held and Karp 1962. More: nearest neighbor from
/// several starts, then pieces of the path are moved or turned around while that helps and the bounded work lasts.
/// The same set-ups in the same order always give the same path.
/// </remarks>
internal sealed class BuildRoute
{
    /// <summary>So many set-ups are put into the best order there is.</summary>
    public const int MostExact = 12;

    /// <summary>Comparisons of two set-ups, in all; some nanoseconds each.</summary>
    private const long MostWork = 40_000_000;

    private const int MostStarts = 8;

    private readonly int _count;
    private readonly int _words;
    private readonly ulong[] _spools;
    private readonly long[] _posts;
    private long _work;

    private BuildRoute(IReadOnlyList<SetUp> setUps)
    {
        var numbers = new Dictionary<Spool, int>();
        foreach (var spool in setUps.SelectMany(s => s.Spools))
        {
            numbers.TryAdd(spool, numbers.Count);
        }

        _count = setUps.Count;
        _words = (numbers.Count / 64) + 1;
        _spools = new ulong[_count * _words];
        _posts = [.. setUps.Select(s => s.Posts!.Value.Nanometers)];
        foreach (var (i, setUp) in setUps.Index())
        {
            foreach (var spool in setUp.Spools)
            {
                _spools[(i * _words) + (numbers[spool] / 64)] |= 1UL << (numbers[spool] % 64);
            }
        }
    }

    /// <summary>The set-ups' indexes in the order to take them.</summary>
    public static IReadOnlyList<int> Shortest(IReadOnlyList<SetUp> setUps)
    {
        var route = new BuildRoute(setUps);
        return setUps.Count switch
        {
            0 => [],
            <= MostExact => route.Exact(),
            _ => route.Search(setUps),
        };
    }

    /// <summary>Changes between two set-ups; from nothing where the first is below 0.</summary>
    private int Cost(int from, int to)
    {
        _work++;
        var changes = from < 0 || _posts[from] != _posts[to] ? 1 : 0;
        for (var w = 0; w < _words; w++)
        {
            var mounted = from < 0 ? 0 : _spools[(from * _words) + w];
            changes += BitOperations.PopCount(_spools[(to * _words) + w] & ~mounted);
        }

        return changes;
    }

    private int CostOf(int[] path)
    {
        var sum = Cost(-1, path[0]);
        for (var i = 1; i < path.Length; i++)
        {
            sum += Cost(path[i - 1], path[i]);
        }

        return sum;
    }

    private int[] Exact()
    {
        // best[set, last]: fewest changes that visit a set of set-ups and end at one of them. Of equally good ones the
        // later of the given set-ups comes last, so that as much as can be stays in the given order.
        var all = 1 << _count;
        var best = new int[all, _count];
        var before = new int[all, _count];
        for (var set = 1; set < all; set++)
        {
            for (var last = 0; last < _count; last++)
            {
                var rest = set & ~(1 << last);
                best[set, last] = rest == 0 ? Cost(-1, last) : int.MaxValue;
                for (var from = 0; (set & (1 << last)) != 0 && from < _count; from++)
                {
                    if ((rest & (1 << from)) != 0 && best[rest, from] + Cost(from, last) is var sum && sum <= best[set, last])
                    {
                        (best[set, last], before[set, last]) = (sum, from);
                    }
                }
            }
        }

        var path = new int[_count];
        var left = all - 1;
        var at = Enumerable.Range(0, _count).Reverse().MinBy(last => best[left, last]);
        for (var i = _count - 1; i >= 0; i--)
        {
            path[i] = at;
            (left, at) = (left & ~(1 << at), before[left, at]);
        }

        return path;
    }

    private int[] Search(IReadOnlyList<SetUp> setUps)
    {
        int[] asGiven = [.. Enumerable.Range(0, _count)];
        int[] sorted =
        [
            .. asGiven
                .OrderBy(i => string.Join('\n', setUps[i].Spools.Select(s => $"{s.Material} {s.Color}")), StringComparer.Ordinal)
                .ThenBy(i => _posts[i]),
        ];
        var best = CostOf(sorted) < CostOf(asGiven) ? sorted : asGiven;
        var starts = Math.Min(MostStarts, _count);
        for (var s = 0; s < starts && _work + ((long)_count * _count / 2) < MostWork / 2; s++)
        {
            var path = FromNearestToNearest(s * _count / starts);
            best = CostOf(path) < CostOf(best) ? path : best;
        }

        new PathBetterment(best, Cost, () => _work < MostWork).Run();
        return best;
    }

    private int[] FromNearestToNearest(int start)
    {
        var path = new int[_count];
        var left = Enumerable.Range(0, _count).ToList();
        left.RemoveAt(start);
        path[0] = start;
        for (var i = 1; i < _count; i++)
        {
            var (nearest, least) = (0, int.MaxValue);
            for (var j = 0; j < left.Count && least > 0; j++)
            {
                var cost = Cost(path[i - 1], left[j]);
                (nearest, least) = cost < least ? (j, cost) : (nearest, least);
            }

            path[i] = left[nearest];
            left.RemoveAt(nearest);
        }

        return path;
    }
}
