using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

public class PrintTests
{
    [Fact]
    public void Print_Demo_WritesPdfsThatQpdfPasses()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal(
            ["cards.pdf", "pulls.pdf", "sheets.pdf", "tags.pdf"],
            Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        OutsideTool.CheckPdfs(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Print_SecondRun_GivesTheSameBytes()
    {
        using var folder = TagendProgram.NewFolder();
        string[] arguments = ["print", TagendProgram.DemoOrders, "--out", folder.Path, "--date", "2026-03-14"];
        TagendProgram.Run(arguments);
        var first = Directory.GetFiles(folder.Path).ToDictionary(f => f, File.ReadAllBytes);
        TagendProgram.Run(arguments);
        Assert.Equal(first.Keys.Order(StringComparer.Ordinal), Directory.GetFiles(folder.Path).Order(StringComparer.Ordinal));
        Assert.All(first, f => Assert.Equal(f.Value, File.ReadAllBytes(f.Key)));
    }

    [Theory]
    [InlineData("letter", "cards.pdf", "396 x 612 pts")]
    [InlineData("letter", "sheets.pdf", "612 x 792 pts (letter)")]
    [InlineData("a4", "cards.pdf", "419.53 x 595.28 pts")]
    [InlineData("a4", "sheets.pdf", "595.28 x 841.89 pts (A4)")]
    public void Print_Paper_IsAsAsked(string paper, string file, string size)
    {
        // ISO 216 and ANSI/ASME Y14.1, as pdfinfo names them.
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--paper", paper);
        Assert.Contains(size, OutsideTool.Run("pdfinfo", folder[file]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_OnlyAndOrder_PrintNoMore()
    {
        using var folder = TagendProgram.NewFolder();
        var order = FirstOrder();
        var said = TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "cards", "--order", order.ToLowerInvariant());
        Assert.Equal(0, said.ExitCode);
        Assert.Equal(["cards.pdf"], Directory.GetFiles(folder.Path).Select(Path.GetFileName));
        Assert.Contains("1 set printed, 0 not printed", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_Units_ChangeTheUnitOnPaper()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--units", "mm", "--only", "cards");
        var text = OutsideTool.Run("pdftotext", "-layout", folder["cards.pdf"], "-").Output;
        Assert.Contains(" mm", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d/\d+ in\b", text);
    }

    [Fact]
    public void Print_Pulls_SayWhatCheckSaysAndListEveryPieceOnce()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--templates", TagendProgram.DemoShop, "--out", folder.Path, "--only", "pulls", "--units", "mm");
        var page = OutsideTool.Run("pdftotext", "-layout", folder["pulls.pdf"], "-").Output;
        var check = TagendProgram.Run("check", TagendProgram.DemoOrders, "--templates", TagendProgram.DemoShop, "--units", "mm").Output;
        var totals = Regex.Matches(check, @"^  (?<name>\S+) +(?<color>\S+) +(?:color +)?(?<meters>\d+\.\d m) +\d+ spool", RegexOptions.Multiline);
        Assert.True(totals.Count > 15);
        Assert.All(totals, t => Assert.Matches($@"{t.Groups["name"]} +{t.Groups["color"]} +{Regex.Escape(t.Groups["meters"].Value)}", page));
        Assert.Equal(18, Regex.Count(page, @"^ +\d+ +\d{4} +(string|buss|control|cable \d|yoke \d) .* (hmpe|polyester)-", RegexOptions.Multiline));
    }

    [Fact]
    public void Print_Mistakes_PrintsTheGoodSetAndSaysThree()
    {
        using var folder = TagendProgram.NewFolder();
        var mistakes = Path.Combine(TagendProgram.Root, "demo-orders", "mistakes.csv");
        var said = TagendProgram.Run("print", mistakes, "--out", folder["out"]);
        Assert.Equal(3, said.ExitCode);
        Assert.Contains("1 set printed", said.Output, StringComparison.Ordinal);
        Assert.True(said.Errors.Count(c => c == '\n') >= 12);

        var strict = TagendProgram.Run("print", mistakes, "--out", folder["strict"], "--strict");
        Assert.Equal(3, strict.ExitCode);
        Assert.False(Directory.Exists(folder["strict"]));
    }

    private static string FirstOrder()
    {
        using var pieces = JsonDocument.Parse(TagendProgram.Run("check", TagendProgram.DemoOrders, "--json").Output);
        return pieces.RootElement[0].GetProperty("order").GetString()!;
    }
}
