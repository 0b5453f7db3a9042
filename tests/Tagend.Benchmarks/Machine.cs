using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Tagend.Benchmarks;

/// <summary>What a measurement was made on.</summary>
internal static class Machine
{
    /// <summary>Processes that wanted a core, on average of the last minute.</summary>
    public static string Load => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    public static string Description
    {
        get
        {
            var model = File.Exists("/proc/cpuinfo")
                ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))?.Split(':')[1].Trim()
                : null;
            return string.Create(
                CultureInfo.InvariantCulture, $"{Environment.ProcessorCount} cores of {model ?? RuntimeInformation.ProcessArchitecture.ToString()}");
        }
    }

    /// <summary>What a program says on one line; empty where it is not there or fails.</summary>
    public static string Say(string program, params IEnumerable<string> arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments.Where(a => a.Length > 0))
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? said.Trim().Split('\n')[0] : "";
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return "";
        }
    }
}
