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
        IReadOnlyList<SetUp> setUps = [.. builds.Select(b => SetUp.Of(b.Spec))];
        var order = SetUpOrder.Of(setUps);
        return new BuildOrder(
            SetUpOrder.Steps(order.Taken, setUps).Select(step => new BuildStep(builds[step.Index], step.Mounted, step.MovesPosts)).ToValueList(),
            order.ChangesAsGiven);
    }
}
