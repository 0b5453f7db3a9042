using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Tagend.PaperTests.Cli;
using Xunit;

namespace Tagend.PaperTests.Queue;

/// <summary>
/// A printer and a spooler of their own, from CUPS: ippeveprinter takes jobs on loopback and keeps them, cupsd on a
/// socket in a folder has two queues to it. What either needs and the system lacks is a reason to skip.
/// </summary>
public sealed class Spooler : IDisposable
{
    /// <summary>A queue that passes documents on as they are.</summary>
    public const string AsIs = "as-is";

    /// <summary>A queue that asked the printer what it is, and lets its filters prepare documents for it.</summary>
    public const string Driverless = "driverless";

    private const string CupsServer = "/usr/sbin/cupsd";
    private const string Printer = "/usr/sbin/ippeveprinter";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly TagendProgram.Folder _folder = TagendProgram.NewFolder();
    private readonly List<Process> _started = [];
    private readonly string? _lack;

    public Spooler()
    {
        var programs = new[] { CupsServer, Printer, "/usr/bin/dbus-daemon", "/usr/bin/lp", "/usr/sbin/lpadmin" };
        _lack = Array.Find(programs, p => !File.Exists(p)) is { } missing ? $"{missing} is not installed" : Start();
    }

    public string Socket => _folder["cups.sock"];

    /// <summary>Runs the program with this spooler as the system's; skips the test where there is none.</summary>
    internal Said RunTagend(params IReadOnlyList<string> arguments)
    {
        Assert.SkipWhen(_lack is not null, _lack ?? "");
        return TagendProgram.RunWith(new Dictionary<string, string> { ["CUPS_SERVER"] = Socket }, arguments);
    }

    /// <summary>The document of a job of this name as the printer got it, and the job's attributes.</summary>
    internal (string Document, IReadOnlyDictionary<string, string> Attributes) Arrived(string job)
    {
        string? found = null;
        Await(() => (found = Array.Find(Directory.GetFiles(_folder["taken"], "*.env"), f => Read(f).GetValueOrDefault("IPP_JOB_NAME") == job)) is not null);
        Assert.True(found is not null, $"no job {job} arrived:\n{string.Join('\n', File.ReadLines(_folder["error_log"]).TakeLast(40))}");
        return (Path.ChangeExtension(found, ".pdf"), Read(found));

        static Dictionary<string, string> Read(string file) => File.ReadAllLines(file)
            .Select(l => l.Split('=', 2))
            .Where(l => l.Length == 2)
            .DistinctBy(l => l[0])
            .ToDictionary(l => l[0], l => l[1]);
    }

    public void Dispose()
    {
        foreach (var process in Enumerable.Reverse(_started))
        {
            using var kill = Process.Start("kill", ["-TERM", $"{process.Id}"]); // timeout passes it on
            process.WaitForExit();
            process.Dispose();
        }

        _folder.Dispose();
    }

    /// <returns>Why it cannot run here; null where it runs.</returns>
    private string? Start()
    {
        var taken = Directory.CreateDirectory(_folder["taken"]).FullName;
        foreach (var name in new[] { "spool/tmp", "cache", "state" })
        {
            Directory.CreateDirectory(_folder[name]);
        }

        var take = _folder.Write("take", $"#!/bin/sh\ncp \"$1\" {taken}/$IPP_JOB_ID.pdf\nenv > {taken}/$IPP_JOB_ID.draft\nmv {taken}/$IPP_JOB_ID.draft {taken}/$IPP_JOB_ID.env\n");

        // The folder too: filters and backends run as another user where the tests run as root.
        using (var chmod = Process.Start("chmod", ["755", _folder.Path, take]))
        {
            chmod.WaitForExit();
        }

        _folder.Write("cupsd.conf", $"Listen {Socket}\nBrowsing Off\nLogLevel debug\nWebInterface No\nDefaultAuthType None\n"
            + "<Location />\nOrder allow,deny\nAllow all\n</Location>\n"
            + "<Policy default>\n<Limit All>\nOrder allow,deny\nAllow all\n</Limit>\n</Policy>\n");
        _folder.Write("cups-files.conf", $"ServerRoot {_folder.Path}\nRequestRoot {_folder["spool"]}\nTempDir {_folder["spool/tmp"]}\n"
            + $"CacheDir {_folder["cache"]}\nStateDir {_folder["state"]}\nAccessLog {_folder["access_log"]}\n"
            + $"ErrorLog {_folder["error_log"]}\nPageLog {_folder["page_log"]}\n");

        // ippeveprinter ends without a message bus, though it need not announce itself on one.
        var bus = $"unix:path={_folder["bus"]}";
        Run("/usr/bin/dbus-daemon", ["--session", "--nofork", "--nopidfile", $"--address={bus}"]);
        if (!Await(() => File.Exists(_folder["bus"])))
        {
            return "dbus-daemon does not start here";
        }

        var port = FreePort();
        var attributes = Path.Combine(TagendProgram.Root, "tests", "Tagend.PaperTests", "Queue", "label-printer.attrs");
        Run(Printer, ["-p", $"{port}", "-n", "localhost", "-r", "off", "-d", taken, "-a", attributes, "-c", take, "Labels"],
            ("DBUS_SYSTEM_BUS_ADDRESS", bus));
        Run(CupsServer, ["-f", "-c", _folder["cupsd.conf"], "-s", _folder["cups-files.conf"]]);
        if (!Await(() => Answers(port)))
        {
            return "ippeveprinter does not start here";
        }

        if (!Await(() => File.Exists(Socket)))
        {
            return "cupsd does not start here";
        }

        return Add(AsIs, "raw", port) ?? Add(Driverless, "everywhere", port);
    }

    private string? Add(string queue, string model, int port)
    {
        var start = Quiet("/usr/sbin/lpadmin", ["-p", queue, "-E", "-v", $"ipp://localhost:{port}/ipp/print", "-m", model]);
        start.Environment["CUPS_SERVER"] = Socket;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? null : $"lpadmin makes no queue here: {errors}";
    }

    /// <summary>Ended by itself if these tests should not live to do it.</summary>
    private void Run(string program, IReadOnlyList<string> arguments, params ReadOnlySpan<(string Name, string Value)> environment)
    {
        var start = Quiet("timeout", ["--kill-after=5", "180", program, .. arguments]);
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        _started.Add(process);
    }

    private static ProcessStartInfo Quiet(string program, IReadOnlyList<string> arguments) =>
        new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };

    private static bool Await(Func<bool> condition)
    {
        var since = Stopwatch.StartNew();
        while (!condition())
        {
            if (since.Elapsed > Patience)
            {
                return false;
            }

            Thread.Sleep(50);
        }

        return true;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient("localhost", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
