using SkiaSharp;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>output-samples are what demo-orders print; ./build.sh samples makes them again.</summary>
public class SamplesTests
{
    private const string Date = "2026-03-14";

    private static readonly string[] InLanguage = ["--only", "sheets", "--order", "1001", "--order", "1005", "--order", "1007", "--paper", "a4", "--language"];

    public static TheoryData<string, string, string[]> Prints => new()
    {
        { "demo", "demo", ["--preview", "90"] },
        { "demo-mm", "demo-mm", ["--preview", "90", "--units", "mm", "--paper", "a4"] },
        { "strips", "demo", ["--preview", "90", "--order", "1001", "--only", "strips"] },
        { "sheets-de", "demo", [.. InLanguage, "de"] },
        { "sheets-es", "demo", [.. InLanguage, "es"] },
        { "sheets-fr", "demo", [.. InLanguage, "fr"] },
    };

    [Theory]
    [MemberData(nameof(Prints))]
    public void OutputSamples_AnyPrint_AreCurrent(string name, string demo, string[] options)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = Path.Combine(TagendProgram.Root, "demo-orders", $"{demo}.csv");
        TagendProgram.Run(["print", orders, "--templates", TagendProgram.DemoShop, "--out", folder.Path, "--date", Date, .. options]);
        var samples = Path.Combine(TagendProgram.Root, "output-samples", name);
        Assert.Equal(Names(samples), Names(folder.Path));
        Assert.All(Directory.GetFiles(samples, "*.pdf"), f =>
            Assert.Equal(File.ReadAllBytes(f), File.ReadAllBytes(folder[Path.GetFileName(f)])));
        Assert.All(Directory.GetFiles(samples, "*.png"), f => AssertSamePicture(f, folder[Path.GetFileName(f)]));
    }

    /// <summary>What stands on the pages, in words: a change of a layout or a text shows in a diff.</summary>
    [Fact]
    public void OutputSamples_Texts_AreThoseOfTheirFiles()
    {
        var samples = Path.Combine(TagendProgram.Root, "output-samples");
        var files = Directory.GetFiles(samples, "*.pdf", SearchOption.AllDirectories);
        var texts = files.ToDictionary(
            f => Path.Combine(samples, "text", $"{Path.GetFileName(Path.GetDirectoryName(f))}-{Path.GetFileNameWithoutExtension(f)}.txt"));

        Assert.Equal(texts.Keys.Order(StringComparer.Ordinal), Directory.GetFiles(Path.Combine(samples, "text")).Order(StringComparer.Ordinal));
        Assert.All(texts, text => Assert.Equal(
            LinesOf(File.ReadAllText(text.Key)),
            LinesOf(OutsideTool.Run("pdftotext", "-layout", "-enc", "UTF-8", text.Value, "-").Output)));
    }

    /// <summary>Without the widths of gaps, which another version of the tool may see otherwise.</summary>
    private static IEnumerable<string> LinesOf(string text) => text.Split('\n')
        .Select(line => string.Join(' ', line.Split((char[])[' ', '\f', '\r'], StringSplitOptions.RemoveEmptyEntries)))
        .Where(line => line.Length > 0);

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
