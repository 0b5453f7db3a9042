namespace Tagend.Options;

/// <summary>The name of the bench a run is at: as the environment says, else the machine's.</summary>
internal static class BenchName
{
    private const string Variable = "TAGEND_BENCH";

    public static string Here => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } name ? name : Environment.MachineName.ToLowerInvariant();
}
