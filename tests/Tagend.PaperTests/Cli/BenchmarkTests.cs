using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>That the benchmark command runs. What it measures is for people.</summary>
public class BenchmarkTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    [Fact]
    public void Benchmark_OfAHandfulOfPages_MeasuresProgramFloorAndParts()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/time"), "GNU time is not installed");
        var floor = BuiltIn("Tagend.Floor");
        using var folder = TagendProgram.NewFolder();
        var said = OutsideTool.Run(Patience, BuiltIn("Tagend.Benchmarks"), "tiny", TagendProgram.Executable, floor, BuiltIn("Tagend.WebFloor"), folder["bench"]);
        Assert.True(said.ExitCode == 0, said.Output + said.Errors);
        var table = File.ReadAllText(folder["bench.md"]);
        Assert.EndsWith(table, said.Output, StringComparison.Ordinal);
        var rows = table.Split('\n').Where(l => l.StartsWith('|')).ToList();
        Assert.Equal(5, rows.Count(r => r.Contains("| 1.00 | the floor", StringComparison.Ordinal)));
        Assert.DoesNotContain(rows, r => r.StartsWith("| skipped | tagend", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Contains("12 megapixels, read |", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.StartsWith("| a frame of 1 megapixel with a tag", StringComparison.Ordinal));
    }

    private static string BuiltIn(string project) =>
        Path.Combine(TagendProgram.Root, "tests", project, "bin", new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name, "net10.0", project);
}
