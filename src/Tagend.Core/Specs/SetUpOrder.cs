using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What stands at the jig for a build.</summary>
/// <param name="Spools">In order of color.</param>
/// <param name="Posts">On the tape, outside to outside; null for posts that are not set.</param>
internal sealed record SetUp(ValueList<Spool> Spools, Length? Posts)
{
    public static SetUp None { get; } = new([], null);

    public static SetUp Of(BuildSpec spec)
    {
        var spools = new List<Spool>();
        foreach (var share in spec.Layup.Colors)
        {
            var spool = new Spool(spec.Bundle.Material, share.Color);
            if (!spools.Contains(spool))
            {
                spools.Add(spool);
            }
        }

        spools.Sort((a, b) => string.CompareOrdinal(a.Color, b.Color));
        return new SetUp(spools.ToValueList(), spec.Posts.Tape);
    }

    /// <summary>Its spools that the set-up before it does not have.</summary>
    public ValueList<Spool> MountedAfter(SetUp before)
    {
        var mounted = new List<Spool>();
        foreach (var spool in Spools)
        {
            if (!before.Spools.Contains(spool))
            {
                mounted.Add(spool);
            }
        }

        return mounted.ToValueList();
    }

    /// <summary>How many spools are mounted after another set-up, and one for posts that move.</summary>
    public int ChangesAfter(SetUp before)
    {
        var changes = Posts == before.Posts ? 0 : 1;
        foreach (var spool in Spools)
        {
            changes += before.Spools.Contains(spool) ? 0 : 1;
        }

        return changes;
    }
}

/// <summary>An order of set-ups with few changes from one to the next.</summary>
/// <param name="Taken">Their indexes, in the order to take them.</param>
internal sealed record SetUpOrder(IReadOnlyList<int> Taken, int Changes, int ChangesAsGiven)
{
    /// <returns>As given where nothing is gained.</returns>
    public static SetUpOrder Of(IReadOnlyList<SetUp> setUps)
    {
        int[] asGiven = [.. Enumerable.Range(0, setUps.Count)];
        var given = ChangesOf(asGiven, setUps);

        // Between equal set-ups nothing is changed, and a detour never saves a change: they stay together.
        var groups = asGiven.GroupBy(i => setUps[i]).ToList();
        var route = BuildRoute.Nearest([.. groups.Select(group => group.Key)]);
        int[] best = [.. route.SelectMany(i => groups[i])];
        var changes = ChangesOf(best, setUps);
        return changes < given ? new SetUpOrder(best, changes, given) : new SetUpOrder(asGiven, given, given);
    }

    /// <summary>What is changed before each: its spools that the one before it did not use, and whether the posts move.</summary>
    /// <param name="taken">Indexes of set-ups.</param>
    public static IEnumerable<(int Index, ValueList<Spool> Mounted, bool MovesPosts)> Steps(
        IReadOnlyList<int> taken, IReadOnlyList<SetUp> setUps)
    {
        var before = SetUp.None;
        foreach (var i in taken)
        {
            var setUp = setUps[i];
            yield return (i, setUp.MountedAfter(before), setUp.Posts != before.Posts);
            before = setUp;
        }
    }

    private static int ChangesOf(int[] taken, IReadOnlyList<SetUp> setUps)
    {
        var (changes, before) = (0, SetUp.None);
        foreach (var i in taken)
        {
            changes += setUps[i].ChangesAfter(before);
            before = setUps[i];
        }

        return changes;
    }
}
