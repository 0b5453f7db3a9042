using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>docs/IMPORTS.md and docs/BOWS.md as a new user would follow them, with the files as they are.</summary>
public sealed class ImportTests
{
    private static readonly string Examples = Path.Combine(TagendProgram.Root, "docs", "imports");

    [Theory]
    [InlineData("shop-sheet", "3 sets ready, 0 withheld; 0 problems, 0 warnings", "3 rows read by imports/shop-sheet.toml; left out: 1 unpaid")]
    [InlineData("web-store", "3 sets ready, 0 withheld; 0 problems, 0 warnings", "5 rows read by imports/web-store.toml; left out: 2 other goods, 1 unpaid")]
    public void Map_OfAnExample_ReadsItFromACleanStart(string name, string ready, string read)
    {
        using var folder = TagendProgram.NewFolder();
        File.Copy(Path.Combine(Examples, $"{name}.csv"), folder[$"{name}.csv"]);

        var first = TagendProgram.RunIn(folder.Path, "check", $"{name}.csv");
        Assert.Equal(3, first.ExitCode);
        Assert.Contains($"tagend map {name}.csv proposes one", first.Errors, StringComparison.Ordinal);
        Assert.Equal(2, TagendProgram.RunIn(folder.Path, "map", $"{name}.csv").ExitCode); // the program's own templates are not the shop's

        Assert.Equal(0, TagendProgram.RunIn(folder.Path, "init", "templates").ExitCode);
        var map = TagendProgram.RunIn(folder.Path, "map", $"{name}.csv");
        Assert.Equal((0, ""), (map.ExitCode, map.Errors));
        Assert.Equal(File.ReadAllText(Path.Combine(Examples, $"{name}.toml")), File.ReadAllText(folder[$"templates/imports/{name}.toml"]));

        var check = TagendProgram.RunIn(folder.Path, "check", $"{name}.csv");
        Assert.Equal((0, $"{name}.csv: {read}\n"), (check.ExitCode, check.Errors));
        Assert.EndsWith($"{ready}\n", check.Output, StringComparison.Ordinal);
        Assert.Equal(0, TagendProgram.RunIn(folder.Path, "map", $"{name}.csv").ExitCode); // read already
    }

    [Fact]
    public void Print_BothExamplesAtOnce_PrintsTheirSets()
    {
        using var folder = TagendProgram.NewFolder();
        Assert.Equal(0, TagendProgram.RunIn(folder.Path, "init", "templates").ExitCode);
        Directory.CreateDirectory(folder["templates/imports"]);
        foreach (var file in Directory.EnumerateFiles(Examples))
        {
            var isMap = file.EndsWith(".toml", StringComparison.Ordinal);
            File.Copy(file, folder[isMap ? $"templates/imports/{Path.GetFileName(file)}" : Path.GetFileName(file)]);
        }

        var print = TagendProgram.RunIn(folder.Path, "print", "shop-sheet.csv", "web-store.csv", "--out", "out");
        Assert.Equal(0, print.ExitCode);
        Assert.Contains("6 sets printed, 0 not printed", print.Output, StringComparison.Ordinal);
        var cards = OutsideTool.Run("pdftotext", folder["out/cards.pdf"], "-").Output;
        Assert.DoesNotContain("example.org", cards, StringComparison.Ordinal);
        Assert.Contains("Demo customer 1", cards, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("IMPORTS.md", "docs/imports/shop-sheet.toml")]
    [InlineData("IMPORTS.md", "docs/imports/web-store.toml")]
    [InlineData("BOWS.md", "templates/bows/demo-hybrid-34.toml")]
    public void Page_ShowsTheExample_AsItIs(string page, string example) => Assert.Contains(
        $"```toml\n{File.ReadAllText(Path.Combine(TagendProgram.Root, example))}```",
        File.ReadAllText(Path.Combine(TagendProgram.Root, "docs", page)),
        StringComparison.Ordinal);

    [Fact]
    public void OrdersByBow_OfThePage_AreWholeSets()
    {
        using var folder = TagendProgram.NewFolder();
        var lines = File.ReadLines(Path.Combine(TagendProgram.Root, "docs", "BOWS.md")).Select(l => l.Trim());
        var orders = lines.SkipWhile(l => !l.StartsWith("order,", StringComparison.Ordinal)).TakeWhile(l => l.Length > 0);
        var check = TagendProgram.RunIn(folder.Path, "check", folder.Write("orders.csv", string.Join('\n', orders)));
        Assert.Equal((0, ""), (check.ExitCode, check.Errors));
        Assert.EndsWith("2 sets ready, 0 withheld; 0 problems, 0 warnings\n", check.Output, StringComparison.Ordinal);
    }
}
