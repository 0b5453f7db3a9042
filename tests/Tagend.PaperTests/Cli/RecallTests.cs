using System.Text.Json;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>A printed tag brings the spec back, through an outside renderer and the program's own camera.</summary>
public class RecallTests
{
    private const string Date = "2026-03-14";

    [Theory]
    [InlineData("demo.csv", 203)]
    [InlineData("demo.csv", 300)]
    [InlineData("demo-mm.csv", 203)]
    public void Recall_PicturesOfAllTags_BringBackEveryFieldOfEveryPiece(string file, int dpi)
    {
        using var folder = TagendProgram.NewFolder();
        var orders = Path.Combine(TagendProgram.Root, "demo-orders", file);
        TagendProgram.Run("print", orders, "--out", folder.Path, "--only", "tags", "--date", Date);
        OutsideTool.Run("pdftoppm", "-r", $"{dpi}", "-png", folder["tags.pdf"], folder["tag"]);
        var recalled = TagendProgram.Run(["recall", "--json", .. Directory.GetFiles(folder.Path, "*.png")]);
        Assert.Equal((0, ""), (recalled.ExitCode, recalled.Errors));

        using var printed = JsonDocument.Parse(TagendProgram.Run("check", orders, "--json", "--date", Date).Output);
        using var read = JsonDocument.Parse(recalled.Output);
        var specs = read.RootElement.EnumerateArray().SelectMany(s => s.GetProperty("specs").EnumerateArray()).ToList();
        foreach (var piece in printed.RootElement.EnumerateArray())
        {
            var spec = specs.First(s => Name(s) == Name(piece));
            Assert.All(spec.EnumerateObject(), field =>
                Assert.True(JsonElement.DeepEquals(piece.GetProperty(field.Name), field.Value), $"{Name(piece)}: {field}"));
        }
    }

    [Fact]
    public void Recall_TextAndScannerLines_ShowTheSameSpec()
    {
        var text = OneTagText();
        var fromText = TagendProgram.Run("recall", text);
        var fromScanner = TagendProgram.RunWithInput($"\n{text}\r\n", "recall", "-");
        Assert.Equal((0, 0), (fromText.ExitCode, fromScanner.ExitCode));
        Assert.Equal(fromText.Output, fromScanner.Output);
        Assert.Contains("post setting", fromText.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Recall_DamagedTag_SaysSoWithFour()
    {
        var said = TagendProgram.Run("recall", OneTagText().Replace("*STRING*", "*STRANG*", StringComparison.Ordinal));
        Assert.Equal(4, said.ExitCode);
        Assert.Contains("the tag is damaged or was mistyped", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Recall_ForeignCode_SaysSoWithFour()
    {
        var said = TagendProgram.RunWithInput("https://example.org/\n", "recall", "-");
        Assert.Equal(4, said.ExitCode);
        Assert.Contains("this is not a Tagend tag", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Recall_PictureWithoutACode_SaysSoWithFourAndAnEmptyList()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "sheets");
        OutsideTool.Run("pdftoppm", "-r", "60", "-f", "1", "-l", "1", "-singlefile", "-png", folder["sheets.pdf"], folder["sheet"]);
        var said = TagendProgram.Run("recall", "--json", folder["sheet.png"]);
        Assert.Equal(4, said.ExitCode);
        Assert.Equal("[]", said.Output.Trim());
    }

    [Fact]
    public void Recall_NoPicture_SaysSoWithFive() =>
        Assert.Equal(5, TagendProgram.Run("recall", TagendProgram.DemoOrders).ExitCode);

    private static string OneTagText()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder.Path, "--only", "tags", "--preview", "300");
        var picture = Directory.GetFiles(folder.Path, "*.png").Order(StringComparer.Ordinal).ElementAt(1);
        using var read = JsonDocument.Parse(TagendProgram.Run("recall", "--json", picture).Output);
        return read.RootElement[0].GetProperty("text").GetString()!;
    }

    private static string Name(JsonElement piece) =>
        $"{piece.GetProperty("order").GetString()}/{piece.GetProperty("piece").GetString()}";
}
