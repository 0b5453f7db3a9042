using Tagend.Measures;

namespace Tagend.Specs;

/// <summary>Strand material of one color, as it is mounted at the jig.</summary>
public sealed record Spool(string Material, string Color);

/// <summary>A build and what is changed at the jig before it.</summary>
/// <param name="Mounted">Its spools that the build before it did not use.</param>
/// <param name="MovesPosts">The posts stand at another mark of the tape.</param>
public sealed record BuildStep(Build Build, ValueList<Spool> Mounted, bool MovesPosts)
{
    public int Changes => Mounted.Count + (MovesPosts ? 1 : 0);
}

/// <summary>The order of builds with the fewest changes of spools and posts, from a bench with nothing set up.</summary>
/// <param name="ChangesAsOrdered">What the same builds take in the order they were given.</param>
public sealed record BuildOrder(ValueList<BuildStep> Steps, int ChangesAsOrdered)
{
    public int Changes => Steps.Sum(step => step.Changes);

    /// <summary>Fewest changes where the builds need up to <see cref="BuildRoute.MostExact"/> different set-ups; few beyond.</summary>
    /// <returns>Never more changes than the builds take as given, whose order stays where nothing is gained.</returns>
    public static BuildOrder Of(IReadOnlyList<Build> builds)
    {
        var asOrdered = StepsOf(builds);
        var changes = asOrdered.Sum(step => step.Changes);

        // Between equal set-ups nothing is changed, and a detour never saves a change: they stay together.
        var groups = builds.GroupBy(SetUp.Of).ToList();
        var route = BuildRoute.Shortest([.. groups.Select(group => group.Key)]);
        var best = StepsOf([.. route.SelectMany(i => groups[i])]);
        return new BuildOrder(best.Sum(step => step.Changes) < changes ? best : asOrdered, changes);
    }

    private static ValueList<BuildStep> StepsOf(IReadOnlyList<Build> builds)
    {
        var steps = new List<BuildStep>(builds.Count);
        var before = SetUp.None;
        foreach (var build in builds)
        {
            var setUp = SetUp.Of(build);
            steps.Add(new BuildStep(build, setUp.Spools.Except(before.Spools).ToValueList(), setUp.Posts != before.Posts));
            before = setUp;
        }

        return steps.ToValueList();
    }
}

/// <summary>What stands at the jig for a build.</summary>
/// <param name="Spools">In order of color.</param>
/// <param name="Posts">On the tape, outside to outside; null for posts that are not set.</param>
internal sealed record SetUp(ValueList<Spool> Spools, Length? Posts)
{
    public static SetUp None { get; } = new([], null);

    public static SetUp Of(Build build) => new(
        build.Spec.Layup.Colors
            .Select(share => new Spool(build.Spec.Bundle.Material, share.Color))
            .Distinct()
            .OrderBy(spool => spool.Color, StringComparer.Ordinal)
            .ToValueList(),
        build.Spec.Posts.Tape);
}
