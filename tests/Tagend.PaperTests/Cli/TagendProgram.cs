using System.Diagnostics;
using System.Text.RegularExpressions;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>The program itself, as users run it: published ahead of time where the test command did so, else as built.</summary>
internal static class TagendProgram
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>What a program that is published ahead of time has in the place of .NET's own messages.</summary>
    private static readonly Regex NameOfAMessage = new(@"\b[A-Z][A-Za-z]*_[A-Z][a-z]");

    public static string Root { get; } = FindRoot();

    /// <summary>TAGEND_LONG=1 in the environment: tests of what must not happen go on until there is a figure to tell.</summary>
    public static bool IsLong { get; } = Environment.GetEnvironmentVariable("TAGEND_LONG") is { Length: > 0 };

    public static string DemoOrders { get; } = Path.Combine(Root, "demo-orders", "demo.csv");

    /// <summary>The demo's shop, as ./build.sh makes it: the shipped templates and what the shop says of itself.</summary>
    public static string DemoShop => Shop.Value;

    private static readonly Lazy<string> Shop = new(() =>
    {
        var folder = Path.Combine(Directory.CreateTempSubdirectory("tagend-shop-").FullName, "shop");
        Run("init", folder, "--name", "Demo string shop", "--phone", "555 0100", "--post-diameter", "1 in");
        foreach (var own in Directory.GetFiles(Path.Combine(Root, "demo-orders", "shop")))
        {
            File.Copy(own, Path.Combine(folder, Path.GetFileName(own)), overwrite: true);
        }

        return folder;
    });

    public static string Executable { get; } = Environment.GetEnvironmentVariable("TAGEND_PROGRAM")
        ?? Path.Combine(Root, "src", "Tagend.Cli", "bin", Configuration, "net10.0", "tagend");

    private static string Configuration => AppContext.BaseDirectory.Contains("Release", StringComparison.Ordinal) ? "Release" : "Debug";

    public static Said Run(params IReadOnlyList<string> arguments) => RunWithInput("", arguments);

    public static Said RunWithInput(string input, params IReadOnlyList<string> arguments) =>
        Run(Environment.CurrentDirectory, input, [], arguments);

    public static Said RunIn(string folder, params IReadOnlyList<string> arguments) => Run(folder, "", [], arguments);

    public static Said RunIn(string folder, Dictionary<string, string> environment, params IReadOnlyList<string> arguments) =>
        Run(folder, "", environment, arguments);

    /// <summary>With the job book that a run has where nothing is said of it.</summary>
    public static Said RunWithItsBook(string folder, params IReadOnlyList<string> arguments) =>
        Run(folder, "", new() { ["TAGEND_JOB_BOOK"] = "" }, arguments);

    /// <summary>With variables of the environment set.</summary>
    public static Said RunWith(Dictionary<string, string> environment, params IReadOnlyList<string> arguments) =>
        Run(Environment.CurrentDirectory, "", environment, arguments);

    /// <summary>With its input and output on a terminal, that of <c>script</c> (util-linux), where these lines are typed; skips the test where it is not installed.</summary>
    public static Said AtATerminal(IReadOnlyList<string> arguments, params IReadOnlyList<string> lines)
    {
        Assert.SkipUnless(File.Exists("/usr/bin/script"), "script is not installed");
        var command = string.Join(' ', arguments.Prepend(Executable).Select(a => $"'{a}'"));
        return OutsideTool.Run("bash", "-c", "printf %s \"$1\" | timeout 30 script -qec \"$2\" /dev/null", "-", string.Concat(lines.Select(l => $"{l}\n")), command);
    }

    private static Said Run(string folder, string input, Dictionary<string, string> environment, IReadOnlyList<string> arguments)
    {
        using var process = Start(folder, environment, arguments);
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(Patience), "tagend did not end");
        Assert.DoesNotContain("   at ", errors.Result, StringComparison.Ordinal); // no stack trace
        Assert.DoesNotMatch(NameOfAMessage, errors.Result);
        return new Said(process.ExitCode, output, errors.Result);
    }

    /// <summary>Starts it, with no job book but one that the arguments name.</summary>
    public static Process Start(string folder, params IReadOnlyList<string> arguments) => Start(folder, [], arguments);

    public static Process Start(string folder, Dictionary<string, string> environment, IReadOnlyList<string> arguments)
    {
        var start = new ProcessStartInfo(Executable, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["TAGEND_JOB_BOOK"] = "none";
        start.Environment["XDG_DATA_HOME"] = Path.Combine(folder, "own-data"); // not that of who runs the tests
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    /// <summary>Keeps what a long run has met in out/faults.txt.</summary>
    public static void NoteLong(string line)
    {
        if (IsLong)
        {
            File.AppendAllText(Path.Combine(Root, "out", "faults.txt"), $"{line}\n");
        }
    }

    /// <summary>A new empty folder, gone after the test.</summary>
    public static Folder NewFolder() => new(Directory.CreateTempSubdirectory("tagend-").FullName);

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Tagend.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no Tagend.slnx above the tests");
        }

        return folder;
    }

    internal sealed record Folder(string Path) : IDisposable
    {
        public string this[string name] => System.IO.Path.Combine(Path, name);

        public string Write(string name, string text)
        {
            File.WriteAllText(this[name], text);
            return this[name];
        }

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
