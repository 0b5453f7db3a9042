using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Faults;

/// <summary>
/// Every command that writes, on a disk that fails at one call, and killed before it: by strace's injection. Files are those of
/// before or those of after, all of them together; the book says what it said before or after; the exit code is 0 where all is
/// after, and else 5 with a sentence. TAGEND_LONG=1 in the environment goes through every call of every command.
/// </summary>
public sealed class DiskFaultTests
{
    private const int Killed = 137;

    /// <summary>Calls of a command that are tried at most: those of a thread are counted by themselves.</summary>
    private const int MostCalls = 400;

    private static readonly string[] Calls = ["pwrite64", "fsync", "rename", "close", "unlink", "ftruncate"];

    /// <summary>A command, a call, and what it answers; null for a kill.</summary>
    public static TheoryData<string, string, string?> Faults => TagendProgram.IsLong
        ? [.. Writer.All.SelectMany(w => Calls.SelectMany(c => new[] { "EIO", "ENOSPC", null }.Select(e => (w.Name, c, e))))]
        : [
            ("print", "fsync", "EIO"), ("print", "rename", "EIO"), ("print", "rename", null), ("recall", "rename", null),
            ("jobs csv", "fsync", "ENOSPC"), ("built", "fsync", "EIO"), ("built", "fsync", null), ("book copy", "unlink", null), ("init", "pwrite64", "ENOSPC"),
        ];

    [Theory]
    [MemberData(nameof(Faults))]
    public void Command_WhoseCallFailsOrIsItsLast_LeavesAllOfBeforeOrAllOfAfter(string command, string call, string? error)
    {
        var writer = Writer.All.Single(w => w.Name == command);
        var before = Writer.Before;
        var met = 0;
        for (var nth = 1; nth <= (TagendProgram.IsLong ? MostCalls : call is "rename" or "unlink" ? 4 : 1); nth++)
        {
            using var folder = Writer.Copy();
            var (said, isMet) = Run(writer, folder, call, error, nth);
            if (!isMet)
            {
                break;
            }

            met++;
            var what = $"{command}, {call} {nth}, {error ?? "kill"}: exit {said.ExitCode}, {said.Errors}";
            Held(before, writer.After, Shape.Of(folder.Path), said, isKilled: error is null, what);
            if (error is not null && call != "unlink")
            {
                Assert.True(Directory.GetFileSystemEntries(folder.Path, ".*", SearchOption.AllDirectories).Length == 0, $"{what} left {string.Join(", ", Directory.GetFileSystemEntries(folder.Path, ".*", SearchOption.AllDirectories))}");
            }
        }

        Assert.True(met > 0 || TagendProgram.IsLong, "the call is never made");
        TestContext.Current.AddAttachment("calls", $"{command}, {call}, {error ?? "kill"}: {met}");
        TagendProgram.NoteLong($"{command}\t{call}\t{error ?? "kill"}\t{met}");
    }

    private static void Held(Shape before, Shape after, Shape found, Said said, bool isKilled, string what)
    {
        if (said.Errors.Contains("error while loading shared libraries", StringComparison.Ordinal))
        {
            return; // The system could not start the program.
        }

        Assert.DoesNotContain("   at ", said.Errors, StringComparison.Ordinal);
        Assert.True(isKilled ? said.ExitCode == Killed : said.ExitCode is 0 or 5, what);
        var changed = before.Files.Keys.Union(after.Files.Keys).Where(f => before.Files.GetValueOrDefault(f) != after.Files.GetValueOrDefault(f)).ToList();
        var isBefore = changed.Where(f => found.Files.GetValueOrDefault(f) == before.Files.GetValueOrDefault(f)).ToList();
        var isAfter = changed.Where(f => found.Files.GetValueOrDefault(f) == after.Files.GetValueOrDefault(f)).ToList();
        Assert.All(found.Files.Keys.Except(changed), f => Assert.True(found.Files[f] == after.Files.GetValueOrDefault(f), $"{what}: {f}"));
        Assert.All(found.Books, b => Assert.True(b.Value == before.Books.GetValueOrDefault(b.Key) || b.Value == after.Books.GetValueOrDefault(b.Key), $"{what}: {b.Key}"));
        if (isKilled)
        {
            // Papers may be missing, and never are those of two runs.
            Assert.All(changed.Except(isBefore).Except(isAfter), f => Assert.False(found.Files.ContainsKey(f), $"{what}: {f} is neither"));
            Assert.True(isAfter.Count == 0 || !isBefore.Exists(before.Files.ContainsKey) || changed.Count == 1, $"{what}: before {string.Join(", ", isBefore)}, after {string.Join(", ", isAfter)}");
            return;
        }

        Assert.True(isBefore.Count == changed.Count || isAfter.Count == changed.Count, $"{what}: before {string.Join(", ", isBefore)}, after {string.Join(", ", isAfter)}");
        if (said.ExitCode == 0)
        {
            Assert.True(isAfter.Count == changed.Count, what);
            Assert.True(after.Books.All(b => found.Books.GetValueOrDefault(b.Key) == b.Value), what);
        }
        else
        {
            Assert.Contains("tagend: ", said.Errors, StringComparison.Ordinal);
        }
    }

    private static (Said Said, bool IsMet) Run(Writer writer, TagendProgram.Folder folder, string call, string? error, int nth)
    {
        var log = Path.GetTempFileName();
        try
        {
            var fault = error is null ? "signal=KILL" : $"error={error}";
            IEnumerable<string> environment = Writer.Environment.Select(v => $"{v.Key}={v.Value}");
            var said = OutsideTool.Run(
                "env",
                [
                    "-C", folder.Path, .. environment, "strace", .. error is null ? Array.Empty<string>() : ["--seccomp-bpf"], "-f", "-qq", "-o", log, "-e", $"trace={call}",
                    "-e", $"inject={call}:{fault}:when={nth}", TagendProgram.Executable, .. writer.Told,
                ]);
            Assert.SkipWhen(said.Errors.Contains("ptrace", StringComparison.Ordinal), "strace may not trace here");
            Assert.SkipWhen(said.Errors.Contains("strace", StringComparison.Ordinal) && !said.Errors.Contains("tagend", StringComparison.Ordinal), "strace is not installed");
            return (said, error is null ? said.ExitCode != 0 : File.ReadAllText(log).Contains("(INJECTED)", StringComparison.Ordinal));
        }
        finally
        {
            File.Delete(log);
        }
    }
}
