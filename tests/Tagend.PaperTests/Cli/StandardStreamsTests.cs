using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>Standard streams that are closed, full, or read by a terminal.</summary>
public sealed class StandardStreamsTests
{
    private const string Full = "tagend: standard output cannot be written (the disk is full): make sure that there is space where it goes\n";

    /// <summary>In the shell's words; with the exit code of a run that works, and of one on orders with a mistake.</summary>
    public static TheoryData<string, int, int> Streams => new()
    {
        { "<&-", 0, 3 },
        { ">&-", 0, 3 },
        { "2>&-", 0, 3 },
        { "<&- >&- 2>&-", 0, 3 },
        { "2>/dev/full", 0, 3 },
        { ">/dev/full", 5, 5 },
        { ">/dev/full 2>/dev/full", 5, 5 },
    };

    [Theory]
    [MemberData(nameof(Streams))]
    public void Print_WithStreamsThatAreClosedOrFull_PrintsAndItsExitCodeSaysSo(string streams, int whole, int mistaken)
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "there is no device that is full");
        using var folder = TagendProgram.NewFolder();
        var said = Shell(streams, "print", TagendProgram.DemoOrders, "--order", "1001", "--only", "cards", "--out", folder.Path, "--job-book", folder["book.db"]);
        Assert.Equal((whole, whole == 5 && !streams.Contains("2>", StringComparison.Ordinal) ? Full : ""), (said.ExitCode, said.Errors));
        Assert.True(File.Exists(folder["cards.pdf"]));
        Assert.Equal("SQLite format 3\0", File.ReadAllText(folder["book.db"])[..16]);
        var mistakes = folder.Write("orders.csv", "order,piece,kind,finished_length\n1,string,compound-string,6o\n");
        Assert.Equal(mistaken, Shell(streams, "check", mistakes).ExitCode);
        Assert.Equal(2, Shell(streams, "nonsense").ExitCode);
    }

    /// <summary>Random numbers of the runtime's own were read as a scanner's lines.</summary>
    [Theory]
    [InlineData("recall", "-")]
    [InlineData("built")]
    public void ScannersLines_WhereStandardInputIsClosed_AreNone(params string[] command)
    {
        using var folder = TagendProgram.NewFolder();
        var said = Shell("<&-", [.. command, "--job-book", folder["none.db"]]);
        Assert.Equal(4, said.ExitCode);
        Assert.StartsWith("standard input: no", said.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void TextsFromOutside_AreShownWithNumbersInPlaceOfWhatATerminalObeys()
    {
        const string Evil = "\u001B]0;x\a\u001B[2J\b\u202E";
        const string Shown = "\\u001B]0;x\\u0007\\u001B[2J\\u0008\\u202E";
        var foreign = TagendProgram.Run("recall", $"*{Evil}");
        Assert.Contains($"it says \"*{Shown}\"", foreign.Errors, StringComparison.Ordinal);
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", $"order,piece,kind,finished_length\n1{Evil},string,compound-string,60{Evil}\n");
        List<Said> said = [foreign, TagendProgram.Run("check", orders), TagendProgram.Run("check", orders + Evil), TagendProgram.Run(Evil)];
        Assert.All(said, s => Assert.DoesNotContain(s.Output + s.Errors, c => char.IsControl(c) && c != '\n'));
    }

    private static Said Shell(string streams, params IReadOnlyList<string> arguments) =>
        OutsideTool.Run("sh", ["-c", $"exec \"$@\" {streams}", "sh", TagendProgram.Executable, .. arguments]);
}
