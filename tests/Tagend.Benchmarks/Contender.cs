using System.Diagnostics;
using System.Globalization;

namespace Tagend.Benchmarks;

/// <summary>A program that is measured from its start to its end.</summary>
/// <param name="Command">The program and its arguments; <c>OUT</c> in them becomes a folder of its own, empty at each run.</param>
internal sealed record Contender(string Name, params IReadOnlyList<string> Command)
{
    /// <summary>That it makes; null where it makes none.</summary>
    public int? Pages { get; init; }

    /// <summary>Kept to the first core.</summary>
    public bool OnOneCore { get; init; }

    public IReadOnlyDictionary<string, string> Environment { get; init; } = new Dictionary<string, string>();

    /// <summary>Runs it once; a failure is what it said last.</summary>
    public Outcome Run(string folder)
    {
        var output = Path.Combine(folder, "OUT");
        var (errors, usage) = (Path.Combine(folder, "errors"), Path.Combine(folder, "usage"));
        Directory.CreateDirectory(output);
        IEnumerable<string> command = Command.Select(word => word.Replace("OUT", output, StringComparison.Ordinal));
        command = OnOneCore ? command.Prepend("0").Prepend("-c").Prepend("taskset") : command;
        command = ["time", "--quiet", "-f", "%M %U %S", "-o", usage, .. command];
        var start = new ProcessStartInfo("/bin/sh", ["-c", $"exec \"$0\" \"$@\" > /dev/null 2> '{errors}'", .. command]);
        foreach (var (name, value) in Environment)
        {
            start.Environment[name] = value;
        }

        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.WaitForExit();
        var milliseconds = watch.Elapsed.TotalMilliseconds;
        var bytes = new DirectoryInfo(output).EnumerateFiles("*.pdf", SearchOption.AllDirectories).Sum(f => f.Length);
        Directory.Delete(output, recursive: true);
        if (process.ExitCode != 0 || (Pages is not null && bytes == 0))
        {
            return new Outcome(0, 0, 0, 0, Complaint(File.ReadAllLines(errors)) ?? $"exit code {process.ExitCode}");
        }

        var used = File.ReadLines(usage).Last().Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToList();
        return new Outcome(milliseconds, (used[1] + used[2]) * 1000, used[0] / 1024, bytes, null);
    }

    private static string? Complaint(string[] said) =>
        Array.Find(said, l => l.Contains("Error", StringComparison.Ordinal)) ?? Array.FindLast(said, l => l.Length > 0);
}

/// <summary>One run.</summary>
/// <param name="CpuMilliseconds">Of all its threads and children, to 10 ms: what a busy machine changes least.</param>
/// <param name="PeakMegabytes">Resident, of its largest process.</param>
/// <param name="Bytes">Of all PDFs that it made.</param>
/// <param name="Failure">Null where it did its work.</param>
internal sealed record Outcome(double Milliseconds, double CpuMilliseconds, double PeakMegabytes, long Bytes, string? Failure);
