namespace Tagend.Tests;

/// <summary>Where the project's own files are.</summary>
public static class TestFiles
{
    /// <summary>The folder that holds Tagend.slnx.</summary>
    public static string Root { get; } = FindRoot();

    public static string Templates => Path.Combine(Root, "templates");

    public static string DemoOrders => Path.Combine(Root, "demo-orders");

    /// <summary>The demo shop's own files.</summary>
    public static string DemoShop => Path.Combine(DemoOrders, "shop");

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Tagend.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no Tagend.slnx above the tests");
        }

        return folder;
    }
}
