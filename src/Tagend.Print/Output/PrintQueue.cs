using System.ComponentModel;
using System.Diagnostics;
using Tagend.Catalog;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>What became of a job in a print queue.</summary>
public enum JobFate
{
    /// <summary>The queue has it no longer, or never had.</summary>
    Unknown,

    /// <summary>It waits, or is being printed.</summary>
    Waiting,

    /// <summary>The queue says that it was printed.</summary>
    Printed,

    /// <summary>The queue or a person gave it up.</summary>
    Stopped,
}

/// <summary>The system's print queues, by the client programs of CUPS: lp and lpstat.</summary>
public static class PrintQueue
{
    /// <summary>Neither scaled, turned nor shifted: CUPS holds a label for larger or smaller by less than a point.</summary>
    private static readonly string[] AtTrueSize = ["-o", "print-scaling=none", "-o", "position=top-left", "-o", "nopdfautorotate"];

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Sends a PDF as it is, unscaled, on its own paper.</summary>
    /// <param name="job">The job's name in the queue.</param>
    /// <param name="paper">Of all pages.</param>
    /// <returns>The queue's name for the job.</returns>
    /// <exception cref="TagendException">There is no queue, or it refused: in its own words, and what to do.</exception>
    public static string Send(string printer, string file, string job, Paper paper)
    {
        var said = Run(
            "lp",
            ["-d", printer, "-t", job, .. AtTrueSize, "-o", $"media={PaperName.Of(paper)}", Path.GetFullPath(file)],
            ByHand(file, paper));
        return said.ExitCode == 0
            ? WordAfter("request id is ", said.Output) ?? said.Output
            : throw new TagendException(
                $"the print queue {printer} did not take {file}: {Reason(said.Errors)}; choose another queue, or {ByHand(file, paper)}");
    }

    /// <summary>The queues by name, the default one first.</summary>
    /// <exception cref="TagendException">The system has none that answers.</exception>
    public static IReadOnlyList<string> Names()
    {
        const string HowTo = "print the PDFs from a viewer at actual size, 100 %";
        var said = Run("lpstat", ["-e"], HowTo);
        if (said.ExitCode != 0)
        {
            throw new TagendException($"the print queues do not answer: {Reason(said.Errors)}; {HowTo}");
        }

        var preferred = WordAfter("destination: ", Run("lpstat", ["-d"], HowTo).Output);
        return [.. said.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).OrderBy(n => n != preferred).ThenBy(n => n, StringComparer.Ordinal)];
    }

    /// <summary>What became of a job.</summary>
    /// <param name="job">The queue's name for it, as <see cref="Send"/> returned it.</param>
    /// <exception cref="TagendException">The queues do not answer.</exception>
    public static JobFate FateOf(string job)
    {
        const string HowTo = "see the printer itself";
        if (Lists(Run("lpstat", ["-W", "not-completed", "-o"], HowTo).Output) is not null)
        {
            return JobFate.Waiting;
        }

        // The lines below a job say how it ended (PWG 5100.11, job-state-reasons).
        return Lists(Run("lpstat", ["-l", "-W", "completed", "-o"], HowTo).Output) switch
        {
            null => JobFate.Unknown,
            var said when said.Contains("aborted", StringComparison.Ordinal) || said.Contains("canceled", StringComparison.Ordinal) => JobFate.Stopped,
            _ => JobFate.Printed,
        };

        string? Lists(string list)
        {
            var lines = list.Split('\n').ToList();
            var at = lines.FindIndex(l => l.StartsWith($"{job} ", StringComparison.Ordinal));
            return at < 0 ? null : string.Join('\n', lines.Skip(at + 1).TakeWhile(l => l.StartsWith('\t') || l.StartsWith(' ')));
        }
    }

    private static string ByHand(string file, Paper paper) =>
        $"open {file} in a PDF viewer and print it on {paper.Title} at actual size: 100 %, no fit, shrink or scaling to the page";

    private static (int ExitCode, string Output, string Errors) Run(string program, IReadOnlyList<string> arguments, string otherwise)
    {
        var start = new ProcessStartInfo(PathOf(program) ?? throw NotInstalled(), arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["LC_ALL"] = "C.UTF-8";
        try
        {
            using var process = Process.Start(start)!;
            process.StandardInput.Close();
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEndAsync();
            if (process.WaitForExit(Patience))
            {
                return (process.ExitCode, output.Result.Trim(), errors.Result.Trim());
            }

            process.Kill();
            throw new TagendException($"the print queue does not answer ({program} did not end); {otherwise}");
        }
        catch (Win32Exception e)
        {
            throw NotInstalled(e);
        }

        TagendException NotInstalled(Exception? cause = null) =>
            new($"this system has no print queue ({program} of CUPS is not installed): {otherwise}", cause!);
    }

    /// <summary>Where the system has a program. The current folder, which Process.Start looks through first, may hold anything.</summary>
    private static string? PathOf(string program) => Environment.GetEnvironmentVariable("PATH")?
        .Split(Path.PathSeparator)
        .Where(Path.IsPathFullyQualified)
        .Select(folder => Path.Combine(folder, program))
        .FirstOrDefault(File.Exists);

    private static string? WordAfter(string words, string text) =>
        text.IndexOf(words, StringComparison.Ordinal) is >= 0 and var at ? text[(at + words.Length)..].Split(' ', '\n')[0] : null;

    /// <summary>The last line, without the program's name before it.</summary>
    private static string Reason(string errors) =>
        errors.Split('\n')[^1] is { Length: > 0 } last ? last[(last.IndexOf(": ", StringComparison.Ordinal) + 1)..].Trim(' ', '.') : "it does not say why";
}
