using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>A folder that two runs print into, or that a killed run printed into: each file is whole and of one run.</summary>
public class SharedFolderTests
{
    private const int Kills = 12;
    private const int Twins = 3;
    private const string LetterPage = "612 x 792";
    private const string A4Page = "595.28 x 841.89";

    [Fact]
    public void Print_TwoRunsAtOnceIntoOneFolder_LeaveWholeFilesOfOneRunEach()
    {
        using var folder = TagendProgram.NewFolder();
        for (var twin = 0; twin < Twins; twin++)
        {
            List<Process> runs = [Printing(folder, "--paper", "letter"), Printing(folder, "--paper", "a4")];
            foreach (var run in runs)
            {
                var errors = run.StandardError.ReadToEnd();
                run.StandardOutput.ReadToEnd();
                run.WaitForExit();
                Assert.Equal((0, ""), (run.ExitCode, errors));
                run.Dispose();
            }

            AssertWhole(folder["out"]);
            Assert.Equal(4, Directory.GetFileSystemEntries(folder["out"]).Length);
            var sizes = Regex.Matches(OutsideTool.Run("pdfinfo", "-l", "99", folder["out/sheets.pdf"]).Output, @"size: +(\S+ x \S+)");
            Assert.True(Assert.Single(sizes.Select(m => m.Groups[1].Value).Distinct()) is LetterPage or A4Page);
        }
    }

    [Fact]
    public void Print_KilledAtRandomMoments_LeavesWholeFilesAndTheNextRunClearsTheRest()
    {
        using var folder = TagendProgram.NewFolder();
        Directory.CreateDirectory(folder["out"]);
        var random = new Random(20260314);
        var halfway = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            using var run = Printing(folder);
            var isWriting = SpinWait.SpinUntil(() => Directory.EnumerateDirectories(folder["out"], ".*").Any(), TimeSpan.FromSeconds(30));
            Assert.True(isWriting, "the run wrote nothing");
            Thread.Sleep(random.Next(0, 200));
            run.Kill();
            run.WaitForExit();
            halfway += AssertWhole(folder["out"]) > 0 ? 1 : 0;
            TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "1001", "--out", folder["out"], "--only", "pulls");
            Assert.Equal(0, AssertWhole(folder["out"]));
        }

        Assert.True(halfway >= Kills / 4, $"only {halfway} of {Kills} kills came while files were written");
    }

    private static Process Printing(TagendProgram.Folder folder, params IEnumerable<string> options)
    {
        var run = TagendProgram.Start(folder.Path, ["print", TagendProgram.DemoOrders, "--out", folder["out"], .. options]);
        run.StandardInput.Close();
        return run;
    }

    /// <returns>How many folders with temporary files there are besides.</returns>
    private static int AssertWhole(string folder)
    {
        Assert.All(Directory.GetFiles(folder, "*.pdf"), f => Assert.Equal(0, OutsideTool.Run("qpdf", "--check", f).ExitCode));
        return Directory.GetDirectories(folder).Length;
    }
}
