namespace Tagend.Measures;

/// <summary>Work on long lists by all cores at once.</summary>
public static class SideBySide
{
    // Long enough to keep the cores busy, short enough that what is made of them is little.
    private const int AtOnce = 256;

    /// <summary>What becomes of each item, in the list's order. Few results are held at a time; short lists are worked off on the caller's thread.</summary>
    /// <param name="items">Read from any thread.</param>
    /// <param name="work">Runs on any thread. It must not throw.</param>
    public static IEnumerable<TResult> Select<T, TResult>(IReadOnlyList<T> items, Func<T, TResult> work)
    {
        for (var first = 0; first < items.Count; first += AtOnce)
        {
            var (start, results) = (first, new TResult[Math.Min(AtOnce, items.Count - first)]);
            if (results.Length < AtOnce)
            {
                for (var i = 0; i < results.Length; i++)
                {
                    results[i] = work(items[start + i]);
                }
            }
            else
            {
                Parallel.For(0, results.Length, i => results[i] = work(items[start + i]));
            }

            foreach (var result in results)
            {
                yield return result;
            }
        }
    }
}
