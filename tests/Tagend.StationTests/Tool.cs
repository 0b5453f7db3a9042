using System.Diagnostics;
using Xunit;

namespace Tagend.StationTests;

/// <summary>Programs that are not ours.</summary>
internal static class Tool
{
    /// <summary>Runs one to its end.</summary>
    /// <returns>Whether it is installed and did its work.</returns>
    public static bool Runs(string program, params IReadOnlyList<string> arguments) => Said(program, arguments) is not null;

    /// <summary>What one says; null where it is not installed or failed.</summary>
    public static string? Said(string program, params IReadOnlyList<string> arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            _ = errors.Result;
            return process.ExitCode == 0 ? output : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            TestContext.Current.SendDiagnosticMessage($"{program} is not installed");
            return null;
        }
    }
}
