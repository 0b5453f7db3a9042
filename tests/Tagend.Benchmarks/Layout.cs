namespace Tagend.Benchmarks;

/// <summary>Where things are.</summary>
internal static class Layout
{
    /// <summary>The folder of Tagend.slnx.</summary>
    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Tagend.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no Tagend.slnx above the benchmarks");
        }

        return folder;
    }
}
