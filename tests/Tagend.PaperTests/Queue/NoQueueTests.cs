using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Queue;

public sealed class NoQueueTests
{
    private static readonly Dictionary<string, string> NoPrograms = new() { ["PATH"] = "/nonexistent" };

    [Fact]
    public void Print_OnASystemWithoutAQueue_SaysHowToPrintByHand()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.RunWith(
            NoPrograms, "print", TagendProgram.DemoOrders, "--order", "1001", "--only", "cards", "--out", folder.Path, "--printer", "any");
        Assert.Equal(5, said.ExitCode);
        Assert.Equal(
            $"tagend: this system has no print queue (lp of CUPS is not installed): open {folder["cards.pdf"]} in a PDF viewer and print it on "
            + "half letter at actual size: 100 %, no fit, shrink or scaling to the page\n",
            said.Errors);
        Assert.True(File.Exists(folder["cards.pdf"]));
    }

    [Fact]
    public void Printers_OnASystemWithoutAQueue_SaysSo()
    {
        var said = TagendProgram.RunWith(NoPrograms, "print", "--printers");
        Assert.Equal(5, said.ExitCode);
        Assert.StartsWith("tagend: this system has no print queue (lpstat of CUPS is not installed)", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Printers_WithAProgramOfThatNameInTheCurrentFolder_DoNotRunIt()
    {
        using var folder = TagendProgram.NewFolder();
        OutsideTool.Run("chmod", "+x", folder.Write("lpstat", "#!/bin/sh\ntouch run; echo queue\n"));
        foreach (var path in new[] { "/nonexistent", "", ".:/nonexistent" })
        {
            var said = TagendProgram.RunIn(folder.Path, new Dictionary<string, string> { ["PATH"] = path }, "print", "--printers");
            Assert.Equal((5, ""), (said.ExitCode, said.Output));
            Assert.False(File.Exists(folder["run"]));
        }
    }
}
