using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>Large batches: volumes of whole sets, written one after the other, each whole.</summary>
public class BatchTests
{
    [Fact]
    public void Print_Volumes_AreWholeSetsInNumberedFiles()
    {
        using var folder = TagendProgram.NewFolder();
        var said = TagendProgram.Run("print", TagendProgram.DemoOrders, "--only", "cards,tags", "--volume", "5", "--out", folder.Path);
        Assert.Equal((0, ""), (said.ExitCode, said.Errors));

        // Sets of 3 + 2, 3, 5, and 1 + 1 + 3 pieces; a card has two sides.
        Assert.Equal([10, 6, 10, 10], Enumerable.Range(1, 4).Select(i => Pages(folder[$"cards-00{i}.pdf"])));
        Assert.Equal([7, 4, 6, 8], Enumerable.Range(1, 4).Select(i => Pages(folder[$"tags-00{i}.pdf"])));
        Assert.Equal(8, Directory.GetFiles(folder.Path).Length);
        Assert.Contains("volume 4 of 4: 18 of 18 pieces", said.Output, StringComparison.Ordinal);
        Assert.Contains("7 sets printed, 0 not printed", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Print_VolumesThatHoldAll_IsOneFile()
    {
        using var folder = TagendProgram.NewFolder();
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--only", "cards", "--volume", "18", "--out", folder.Path);
        Assert.Equal(["cards.pdf"], Directory.GetFiles(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Print_StoppedAmidTheBatch_LeavesWholeFilesAndSaysWhere()
    {
        Assert.SkipUnless(File.Exists("/bin/kill") || File.Exists("/usr/bin/kill"), "there is no kill to send Ctrl-C with");
        Assert.SkipWhen(IgnoresInterrupts(), "Ctrl-C is ignored by what runs the tests, and so by all that it starts, as a shell has it in the background");
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", Season(sets: 6000));
        using var process = TagendProgram.Start(folder.Path, "print", orders, "--only", "cards", "--volume", "60", "--out", folder["out"]);
        Assert.StartsWith("volume 1 of 100: 60 of 6000 pieces", process.StandardOutput.ReadLine(), StringComparison.Ordinal);
        Process.Start("kill", ["-INT", $"{process.Id}"]).WaitForExit();
        process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(1)));
        Assert.Equal(130, process.ExitCode);
        Assert.Matches(@"stopped; volumes 1 to \d+ of 100 are whole, up to order S\d{4}", process.StandardError.ReadToEnd());
        var files = Directory.GetFiles(folder["out"]); // hidden ones too
        Assert.InRange(files.Length, 1, 99);
        Assert.All(files, f => Assert.Matches(@"cards-\d{3}\.pdf$", f));
        OutsideTool.CheckPdfs(files);
        Assert.All(files, f => Assert.Equal(2 * 60, Pages(f)));
    }

    /// <summary>Pages of a volume are on disk before it is whole.</summary>
    [Fact]
    public void Print_VolumesOnAFullDisk_SaysSoAndLeavesNothing()
    {
        using var folder = TagendProgram.NewFolder();
        var orders = folder.Write("orders.csv", Season(sets: 400));
        var said = OutsideTool.Run(
            "strace",
            "--seccomp-bpf", "-f", "-qq", "-o", folder["log"], "-e", "trace=pwrite64", "-e", "inject=pwrite64:error=ENOSPC:when=1+",
            TagendProgram.Executable, "print", orders, "--only", "cards,tags", "--volume", "60", "--job-book", "none", "--out", folder["out"]);
        Assert.SkipWhen(said.Errors.Contains("ptrace", StringComparison.Ordinal), "strace may not trace here");
        Assert.EndsWith($"tagend: {folder["out"]}: the disk is full; free some space and run again\n", said.Errors, StringComparison.Ordinal);
        Assert.Equal(5, said.ExitCode);
        Assert.Empty(Directory.GetFileSystemEntries(folder["out"])); // hidden ones too
    }

    /// <summary>Signal 2 in the mask of ignored ones: proc(5).</summary>
    private static bool IgnoresInterrupts()
    {
        const string Status = "/proc/self/status";
        var mask = File.Exists(Status) ? File.ReadLines(Status).FirstOrDefault(l => l.StartsWith("SigIgn:", StringComparison.Ordinal)) : null;
        return mask is not null && (Convert.ToUInt64(mask.Split('\t')[1], 16) & 0b10) != 0;
    }

    private static string Season(int sets)
    {
        var csv = new StringBuilder("order,piece,kind,finished_length\n");
        for (var i = 0; i < sets; i++)
        {
            csv.Append(System.Globalization.CultureInfo.InvariantCulture, $"S{i:0000},buss,buss-cable,{34 + (i % 40 / 8.0)}\n");
        }

        return csv.ToString();
    }

    private static int Pages(string pdf) =>
        int.Parse(Regex.Match(OutsideTool.Run("pdfinfo", pdf).Output, @"Pages:\s+(\d+)").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
}
