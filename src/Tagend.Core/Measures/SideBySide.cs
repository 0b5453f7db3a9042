namespace Tagend.Measures;

/// <summary>Work on long lists by all cores at once.</summary>
public static class SideBySide
{
    // Long enough to keep the cores busy, short enough that what is made of them is little: the collector moves what is held.
    private const int AtOnce = 32;

    // Of what is only fetched, which takes less time than a start of the other core.
    private const int ManyAtOnce = 256;

    /// <summary>What becomes of each item, in the list's order; while the caller looks at some, the next ones are worked on.</summary>
    /// <remarks>Few results are held at a time; short lists are worked off on the caller's thread.</remarks>
    /// <param name="items">Read from any thread.</param>
    /// <param name="work">Runs on any thread. It must not throw.</param>
    public static IEnumerable<TResult> Select<T, TResult>(IReadOnlyList<T> items, Func<T, TResult> work)
    {
        if (items.Count < AtOnce)
        {
            foreach (var item in items)
            {
                yield return work(item);
            }

            yield break;
        }

        var (next, started) = (0, new Queue<Task<TResult[]>>());
        StartOneMoreThanCores();
        while (started.TryDequeue(out var share))
        {
            var results = share.GetAwaiter().GetResult();
            StartOneMoreThanCores();
            foreach (var result in results)
            {
                yield return result;
            }
        }

        // No core waits while the caller looks at what is done.
        void StartOneMoreThanCores()
        {
            for (; next < items.Count && started.Count <= Environment.ProcessorCount; next += AtOnce)
            {
                var first = next;
                started.Enqueue(Task.Run(() => Worked(items, first, work)));
            }
        }
    }

    /// <summary>The same items in their order, the next ones fetched by another core while the caller looks at some.</summary>
    /// <param name="items">Gone through once, on one thread after the other; what it throws, the caller gets where the item would be.</param>
    public static IEnumerable<T> Ahead<T>(IEnumerable<T> items)
    {
        using var shares = items.Chunk(ManyAtOnce).GetEnumerator();
        if (!shares.MoveNext())
        {
            yield break;
        }

        for (var share = shares.Current; share is not null;)
        {
            var next = share.Length < ManyAtOnce ? null : Task.Run(() => shares.MoveNext() ? shares.Current : null);
            try
            {
                foreach (var item in share)
                {
                    yield return item;
                }
            }
            finally
            {
                Task.WhenAny(next ?? Task.CompletedTask).Wait(); // a caller that leaves takes nothing from under it
            }

            share = next?.GetAwaiter().GetResult();
        }
    }

    private static TResult[] Worked<T, TResult>(IReadOnlyList<T> items, int first, Func<T, TResult> work)
    {
        var results = new TResult[Math.Min(AtOnce, items.Count - first)];
        for (var i = 0; i < results.Length; i++)
        {
            results[i] = work(items[first + i]);
        }

        return results;
    }
}
