using SkiaSharp;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>output-samples are what demo-orders print; ./build.sh samples makes them again.</summary>
public class SamplesTests
{
    private const string Date = "2026-03-14";

    [Theory]
    [InlineData("demo", "demo")]
    [InlineData("demo-mm", "demo-mm")]
    [InlineData("strips", "demo", "--order", "1001", "--only", "strips")]
    public void OutputSamples_AnyDemo_AreCurrent(string name, string file, params string[] choice)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = Path.Combine(TagendProgram.Root, "demo-orders", $"{file}.csv");
        TagendProgram.Run(["print", orders, "--out", folder.Path, "--date", Date, "--preview", "90", .. choice]);
        var samples = Path.Combine(TagendProgram.Root, "output-samples", name);
        Assert.Equal(Names(samples), Names(folder.Path));
        Assert.All(Directory.GetFiles(samples, "*.pdf"), f =>
            Assert.Equal(File.ReadAllBytes(f), File.ReadAllBytes(folder[Path.GetFileName(f)])));
        Assert.All(Directory.GetFiles(samples, "*.png"), f => AssertSamePicture(f, folder[Path.GetFileName(f)]));
    }

    [Fact]
    public void OutputSamples_Mistakes_AreCurrent()
    {
        var said = TagendProgram.RunIn(TagendProgram.Root, "check", "demo-orders/mistakes.csv", "--date", Date);
        var sample = File.ReadAllLines(Path.Combine(TagendProgram.Root, "output-samples", "mistakes.txt"));
        Assert.Equal(Sorted(sample), Sorted((said.Output + said.Errors).TrimEnd('\n').Split('\n'))); // two streams, joined as they came
        static IEnumerable<string> Sorted(IEnumerable<string> lines) => lines.Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string?> Names(string folder) =>
        Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal);

    /// <summary>The same dots; a few shades of difference are another processor's rounding.</summary>
    private static void AssertSamePicture(string expected, string actual)
    {
        const int MostShades = 8;
        using var first = SKBitmap.Decode(expected);
        using var second = SKBitmap.Decode(actual);
        Assert.Equal((first.Width, first.Height), (second.Width, second.Height));
        var differing = first.Pixels.Zip(second.Pixels).Count(p => Math.Abs(p.First.Red - p.Second.Red) > MostShades);
        Assert.True(differing == 0, $"{Path.GetFileName(expected)}: {differing} dots differ; ./build.sh samples makes it again");
    }
}
