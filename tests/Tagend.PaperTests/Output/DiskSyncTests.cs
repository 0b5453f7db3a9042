using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Output;

/// <summary>The program on a disk that fails when bytes or names are forced to it, by strace's fault injection.</summary>
public sealed class DiskSyncTests
{
    private const string Broken = "cannot be written (Input/output error); choose another folder or try again";
    private const string Full = "the disk is full; free some space and run again";

    /// <summary>What fails to be forced, the file or the names in its folder.</summary>
    public static TheoryData<string, bool, string> Faults => new()
    {
        { "EIO", true, Broken },
        { "ENOSPC", true, Full },
        { "EDQUOT", true, Full },
        { "EIO", false, Broken },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Ruler_OnADiskThatFails_SaysSo(string error, bool isFile, string reason)
    {
        using var folder = TagendProgram.NewFolder();
        var path = folder.Write("ruler.pdf", "old");
        var said = Run(error, isFile ? [] : ["-P", folder.Path], "ruler", "--out", folder.Path);
        Assert.Equal((5, $"tagend: {(isFile ? path : folder.Path)}: {reason}\n"), (said.ExitCode, said.Errors));
        Assert.Equal(isFile, File.ReadAllText(path) == "old");
        Assert.Equal([path], Directory.GetFileSystemEntries(folder.Path));
    }

    [Theory]
    [InlineData("EIO")]
    [InlineData("ENOSPC")]
    public void Print_OnADiskThatFails_PrintsNothing(string error)
    {
        using var folder = TagendProgram.NewFolder();
        var said = Run(error, [], "print", TagendProgram.DemoOrders, "--order", "1001", "--job-book", "none", "--out", folder["out"]);
        Assert.Equal(5, said.ExitCode);
        Assert.Empty(Directory.GetFileSystemEntries(folder["out"]));
    }

    private static Said Run(string error, string[] where, params string[] arguments)
    {
        var said = OutsideTool.Run(
            "strace",
            [
                "-f", "-qq", "-o", "/dev/null", .. where, "-e", "trace=fsync", "-e", $"inject=fsync:error={error}",
                TagendProgram.Executable, .. arguments,
            ]);
        Assert.SkipWhen(said.Errors.Contains("ptrace", StringComparison.Ordinal), "strace may not trace here");
        return said;
    }
}
