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

    /// <summary>Each prints sheets and pulls on a paper of its own, and a queue keeps what it is sent.</summary>
    [Fact]
    public void Print_TwoRunsAtOnceIntoOneFolder_LeavePapersOfOneRunAndPrintTheirOwn()
    {
        using var folder = TagendProgram.NewFolder();
        OutsideTool.Run("chmod", "+x", folder.Write("lp", "#!/bin/sh\nfor file; do :; done\ncp \"$file\" \"$TAKEN\"; echo request id is q-1\n"));
        for (var twin = 0; twin < Twins; twin++)
        {
            List<Process> runs = [Sending(folder, "letter"), Sending(folder, "a4")];
            foreach (var run in runs)
            {
                var errors = run.StandardError.ReadToEnd();
                run.StandardOutput.ReadToEnd();
                run.WaitForExit();
                Assert.Equal((0, ""), (run.ExitCode, errors));
                run.Dispose();
            }

            Assert.Equal(["pulls.pdf", "sheets.pdf"], Directory.GetFileSystemEntries(folder["out"]).Select(f => Path.GetFileName(f)).Order());
            Assert.Single(SizesIn(folder["out"]));
            Assert.Equal([LetterPage], SizesIn(folder["letter"]));
            Assert.Equal([A4Page], SizesIn(folder["a4"]));
        }
    }

    [Fact]
    public void Print_KilledAtRandomMoments_LeavesWholeFilesAndTheNextRunClearsTheRest()
    {
        using var folder = TagendProgram.NewFolder();
        Directory.CreateDirectory(folder["out"]);
        var random = new Random(20260314);
        var (halfway, writing) = (0, TimeSpan.Zero);
        for (var kill = 0; kill <= Kills; kill++)
        {
            using var run = Printing(folder);
            var isWriting = SpinWait.SpinUntil(() => Directory.EnumerateDirectories(folder["out"], ".*").Any(), TimeSpan.FromSeconds(30));
            Assert.True(isWriting, "the run wrote nothing");
            if (kill == 0)
            {
                writing = TimeToEnd(run);
                continue;
            }

            Thread.Sleep(random.NextDouble() * writing);
            run.Kill();
            run.WaitForExit();
            halfway += AssertWhole(folder["out"]) > 0 ? 1 : 0;
            TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "1001", "--out", folder["out"], "--only", "pulls");
            Assert.Equal(0, AssertWhole(folder["out"]));
        }

        Assert.True(halfway >= Kills / 4, $"only {halfway} of {Kills} kills came while files were written");
    }

    /// <summary>How long a run that is not killed writes, on this machine and under its load.</summary>
    private static TimeSpan TimeToEnd(Process run)
    {
        var begun = Stopwatch.GetTimestamp();
        run.WaitForExit();
        Assert.Equal(0, run.ExitCode);
        return Stopwatch.GetElapsedTime(begun);
    }

    private static Process Sending(TagendProgram.Folder folder, string paper)
    {
        var taken = Directory.CreateDirectory(folder[paper]).FullName;
        var run = TagendProgram.Start(
            folder.Path,
            new() { ["PATH"] = $"{folder.Path}:{Environment.GetEnvironmentVariable("PATH")}", ["TAKEN"] = taken },
            ["print", TagendProgram.DemoOrders, "--order", "1001", "--only", "sheets,pulls", "--paper", paper, "--out", folder["out"], "--printer", "q"]);
        run.StandardInput.Close();
        return run;
    }

    /// <summary>Of all pages of all papers in a folder.</summary>
    private static IReadOnlyList<string> SizesIn(string folder) =>
    [
        .. Directory.GetFiles(folder, "*.pdf")
            .SelectMany(f => Regex.Matches(OutsideTool.Run("pdfinfo", "-l", "99", f).Output, @"size: +(\S+ x \S+)"))
            .Select(m => m.Groups[1].Value)
            .Distinct(),
    ];

    private static Process Printing(TagendProgram.Folder folder, params IEnumerable<string> options)
    {
        var run = TagendProgram.Start(folder.Path, ["print", TagendProgram.DemoOrders, "--out", folder["out"], .. options]);
        run.StandardInput.Close();
        return run;
    }

    /// <returns>How many folders with temporary files there are besides.</returns>
    private static int AssertWhole(string folder)
    {
        OutsideTool.CheckPdfs(Directory.GetFiles(folder, "*.pdf"));
        return Directory.GetDirectories(folder).Length;
    }
}
