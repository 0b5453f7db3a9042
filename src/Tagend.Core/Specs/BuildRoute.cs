using System.Numerics;

namespace Tagend.Specs;

/// <summary>Puts different set-ups into an order of few changes: from each to the nearest that is left.</summary>
/// <remarks>The same set-ups in the same order always give the same path; of equally near ones the earlier is taken.</remarks>
internal sealed class BuildRoute
{
    private readonly int _count;
    private readonly int _words;
    private readonly ulong[] _spools;
    private readonly long[] _posts;

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

    /// <summary>The set-ups' indexes in the order to take them, the first given first.</summary>
    public static IReadOnlyList<int> Nearest(IReadOnlyList<SetUp> setUps) => new BuildRoute(setUps).FromNearestToNearest();

    /// <summary>Changes from one set-up to another: spools to mount, and the posts where they move.</summary>
    private int Cost(int from, int to)
    {
        var changes = _posts[from] != _posts[to] ? 1 : 0;
        for (var w = 0; w < _words; w++)
        {
            changes += BitOperations.PopCount(_spools[(to * _words) + w] & ~_spools[(from * _words) + w]);
        }

        return changes;
    }

    private int[] FromNearestToNearest()
    {
        var path = new int[_count];
        var left = Enumerable.Range(1, Math.Max(0, _count - 1)).ToList();
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
