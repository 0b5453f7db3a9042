using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Queue;

/// <summary>The program sends jobs to the spooler and printer of CUPS.</summary>
public sealed class PrintQueueTests(Spooler spooler) : IClassFixture<Spooler>
{
    // PWG 5101.1-2013: letter, A4 and A5 by their names; half letter is invoice; labels by their own size.
    [Theory]
    [InlineData("cards", "letter", "cards", "na_invoice_5.5x8.5in")]
    [InlineData("cards", "a4", "cards", "iso_a5_148x210mm")]
    [InlineData("sheets", "letter", "sheets", "na_letter_8.5x11in")]
    [InlineData("sheets", "a4", "sheets", "iso_a4_210x297mm")]
    [InlineData("tags", "letter", "tags", "custom_roll-3x2_3x2in")]
    public void Document_OfAJob_ArrivesByteForByteUnscaledOnItsPaper(string only, string paper, string name, string media)
    {
        using var folder = TagendProgram.NewFolder();
        var order = paper == "letter" ? "1001" : "1002"; // the job's name tells it from the others
        var said = spooler.RunTagend(
            "print", TagendProgram.DemoOrders, "--order", order, "--only", only, "--paper", paper, "--bag-labels", "roll-3x2",
            "--out", folder.Path, "--printer", Spooler.AsIs);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        Assert.Matches($@"{name}\.pdf: sent to as-is, job as-is-\d+\n", said.Output);
        var (document, attributes) = spooler.Arrived($"Tagend {name}, {order}");
        Assert.Equal(File.ReadAllBytes(folder[$"{name}.pdf"]), File.ReadAllBytes(document));
        Assert.Equal("none", attributes["IPP_PRINT_SCALING"]);
        Assert.Equal(media, attributes["IPP_MEDIA"]);
    }

    /// <summary>
    /// Through the filters of a driverless queue, which find the size by its name and might scale, turn or shift the page.
    /// 1 1/4 in are 253.75 dots: the page has 254.
    /// </summary>
    [Fact]
    public void Label_ThroughFilters_ArrivesWithItsSizeAndTheSameDots()
    {
        using var folder = TagendProgram.NewFolder();
        var said = spooler.RunTagend(
            "print", TagendProgram.DemoOrders, "--order", "1003", "--only", "tags", "--dpi", "203",
            "--bag-labels", "roll-4x2", "--loop-labels", "roll-3x1.25", "--out", folder.Path, "--printer", Spooler.Driverless);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));
        foreach (var (stock, size) in new[] { ("roll-4x2", "x-dimension=10160 y-dimension=5080"), ("roll-3x1.25", "x-dimension=7620 y-dimension=3175") })
        {
            var (document, attributes) = spooler.Arrived($"Tagend tags-{stock}, 1003");
            Assert.Contains($"media-size={{{size}}}", attributes["IPP_MEDIA_COL"], StringComparison.Ordinal);
            Assert.Equal(Dots(folder[$"tags-{stock}.pdf"]), Dots(document));
        }
    }

    [Fact]
    public void Printers_AreNamed()
    {
        var said = spooler.RunTagend("print", "--printers");
        Assert.Equal((0, "as-is\ndriverless\n", ""), (said.ExitCode, said.Output, said.Errors));
    }

    [Fact]
    public void Queue_ThatIsNone_IsRefusedInItsOwnWordsAndTheFilesAreThere()
    {
        using var folder = TagendProgram.NewFolder();
        var said = spooler.RunTagend(
            "print", TagendProgram.DemoOrders, "--order", "1001", "--only", "cards", "--out", folder.Path, "--printer", "nowhere");
        Assert.Equal(5, said.ExitCode);
        Assert.Contains("did not take", said.Errors, StringComparison.Ordinal);
        Assert.Contains("The printer or class does not exist", said.Errors, StringComparison.Ordinal);
        Assert.True(File.Exists(folder["cards.pdf"]));
    }

    /// <summary>The pages at a label printer's resolution, one bit a dot.</summary>
    private static List<byte[]> Dots(string pdf)
    {
        using var sample = new Sample();
        Assert.Equal(0, OutsideTool.Run("pdftoppm", "-r", "203", "-mono", "-aa", "no", "-aaVector", "no", pdf, sample.Place("page")).ExitCode);
        return [.. Directory.GetFiles(Path.GetDirectoryName(sample.Place("page"))!, "page*").Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];
    }
}
