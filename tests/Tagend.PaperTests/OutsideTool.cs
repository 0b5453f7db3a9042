using System.Diagnostics;
using Xunit;

namespace Tagend.PaperTests;

/// <summary>A program that is not ours and judges what we print.</summary>
internal static class OutsideTool
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    /// <summary>Runs it and gives what it said; skips the test where it is not installed.</summary>
    public static Said Run(string tool, params IReadOnlyList<string> arguments) => Run(Patience, tool, arguments);

    /// <summary>Holds that qpdf finds nothing in these PDFs. One after the other: xUnit's All takes a skip for a failure.</summary>
    public static void CheckPdfs(IEnumerable<string> files)
    {
        foreach (var file in files)
        {
            Assert.Equal((file, 0), (file, Run("qpdf", "--check", file).ExitCode));
        }
    }

    public static Said Run(TimeSpan patience, string tool, params IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip($"{tool} is not installed");
            throw;
        }

        using (process)
        {
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            Assert.True(process.WaitForExit(patience), $"{tool} did not end");
            return new Said(process.ExitCode, output, errors.Result);
        }
    }
}

/// <summary>What a program left behind.</summary>
internal sealed record Said(int ExitCode, string Output, string Errors);
