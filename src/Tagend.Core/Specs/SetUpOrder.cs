using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>What stands at the jig for a build.</summary>
/// <param name="Spools">In order of color.</param>
/// <param name="Posts">On the tape, outside to outside; null for posts that are not set.</param>
internal sealed record SetUp(ValueList<Spool> Spools, Length? Posts)
{
    public static SetUp None { get; } = new([], null);

    public static SetUp Of(BuildSpec spec) => new(
        spec.Layup.Colors
            .Select(share => new Spool(spec.Bundle.Material, share.Color))
            .Distinct()
            .OrderBy(spool => spool.Color, StringComparer.Ordinal)
            .ToValueList(),
        spec.Posts.Tape);
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
            yield return (i, setUp.Spools.Except(before.Spools).ToValueList(), setUp.Posts != before.Posts);
            before = setUp;
        }
    }

    private static int ChangesOf(int[] taken, IReadOnlyList<SetUp> setUps) =>
        Steps(taken, setUps).Sum(step => step.Mounted.Count + (step.MovesPosts ? 1 : 0));
}
