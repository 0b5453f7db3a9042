using Xunit;

namespace Tagend.PaperTests.Cli;

public class StripsTests
{
    [Fact]
    public void Strips_AreOnlyPrintedWhenAskedFor()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["usual"], "--order", "1005");
        Assert.False(File.Exists(Path.Combine(folder["usual"], "strips.pdf")));
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["strips"], "--order", "1005", "--only", "strips");
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Equal(["strips.pdf"], Directory.GetFiles(folder["strips"]).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("2 in", "144 x ")]
    [InlineData("50mm", "141.73 x ")]
    public void Strips_OnARoll_AreAsWideAsTheRoll(string roll, string width)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run(
            "print", TagendProgram.DemoOrders, "--out", folder.Path, "--order", "1005", "--only", "strips", "--roll", roll, "--positions", "jig");
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Contains(width, OutsideTool.Run("pdfinfo", folder["strips.pdf"]).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--roll", "1in", "--roll \"1in\": expected the width of the roll with its unit, from 50 mm to 36 in")]
    [InlineData("--roll", "wide", "--roll \"wide\": expected the width of the roll with its unit, from 50 mm to 36 in")]
    [InlineData("--positions", "here", "--positions \"here\": expected finished or jig")]
    public void Strips_AskedForWrongly_AreAnErrorOfUsage(string option, string value, string expected)
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--only", "strips", option, value);
        Assert.Equal(2, said.ExitCode);
        Assert.Contains(expected, said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void Strips_ThroughMistakesInPrintersToml_SayTheLineAndTheRemedy()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.RunIn(folder.Path, "init", "templates");
        folder.Write(Path.Combine("templates", "printers.toml"), "[\"office\"]\nacross = \"15 mm\"\nalong = \"150 mm\"\n");
        var said = TagendProgram.RunIn(
            folder.Path, "print", TagendProgram.DemoOrders, "--only", "strips", "--printer", "office", "--out", folder["out"]);
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("printers.toml:2: [office] across \"15 mm\"", said.Errors, StringComparison.Ordinal);
        Assert.Contains("delete it and measure the printers again", said.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }
}
