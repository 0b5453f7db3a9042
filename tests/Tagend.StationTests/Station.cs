using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Xunit;

namespace Tagend.StationTests;

/// <summary>A station of the demo's shop for the tests of one class, which leave its settings as they are.</summary>
public sealed class DemoStation : IDisposable
{
    private readonly Lazy<Station> _station = new(() => Station.OfDemoShop());

    public Station Station => _station.Value;

    public void Dispose()
    {
        if (_station.IsValueCreated)
        {
            _station.Value.Dispose();
        }
    }
}

/// <summary>A station of the program itself: published ahead of time where the test command did so, else as built.</summary>
public sealed class Station : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private static readonly string[] NoBrowser = ["--no-browser"];

    /// <summary>Below the ports that the system gives to connections which go out, from 32768 on (ip(7), ip_local_port_range): one of those may be taken at any moment.</summary>
    private static int _lastPort = Random.Shared.Next(10_000, 15_000) * 2;

    private readonly IReadOnlyList<string> _more;
    private Process? _process;

    private Station(string folder, int port, IReadOnlyList<string> more) => (Folder, Port, _more) = (folder, port, more);

    public static string Root { get; } = FindRoot();

    public static string Executable { get; } = Environment.GetEnvironmentVariable("TAGEND_PROGRAM")
        ?? Path.Combine(Root, "src", "Tagend.Cli", "bin", Configuration, "net10.0", "tagend");

    /// <summary>The shop's folder, gone after the tests.</summary>
    public string Folder { get; }

    public int Port { get; }

    /// <summary>Its process; it has been started.</summary>
    public int ProcessId => _process!.Id;

    public Uri Address => new($"http://localhost:{Port}/");

    private static string Configuration => AppContext.BaseDirectory.Contains("Release", StringComparison.Ordinal) ? "Release" : "Debug";

    /// <summary>A station of the demo's shop, as ./build.sh makes it.</summary>
    public static Station OfDemoShop(params IReadOnlyList<string> more)
    {
        var station = Empty(more);
        station.Begin();
        station.Start();
        return station;
    }

    /// <summary>Gives it the demo's shop.</summary>
    public void Begin() => Assert.Equal(
        0, Run(["init", Templates, "--name", "Demo string shop", "--phone", "555 0100", "--post-diameter", "1 in"]).ExitCode);

    /// <summary>One whose shop has said nothing yet; it is not started.</summary>
    public static Station Empty(params IReadOnlyList<string> more) => new(Directory.CreateTempSubdirectory("tagend-station-").FullName, FreePort(), more);

    public string Templates => Path.Combine(Folder, "templates");

    public void Start(params IReadOnlyList<(string Name, string Value)> environment) => Start(opensBrowser: false, environment);

    /// <param name="opensBrowser">As it does where nothing else is said.</param>
    /// <param name="environment">Variables that it gets.</param>
    public void Start(bool opensBrowser, params IReadOnlyList<(string Name, string Value)> environment)
    {
        _process = Process.Start(Program(["station", "--port", $"{Port}", .. opensBrowser ? [] : NoBrowser, "--templates", Templates, .. _more], environment))!;
        _process.StandardInput.Close();
        var first = _process.StandardOutput.ReadLineAsync();
        Assert.True(first.Wait(Patience), "the station did not start");
        Assert.Equal($"The station is at {Address}", first.Result);
    }

    /// <summary>What it has in memory now (proc(5), VmRSS).</summary>
    public double ResidentMegabytes => double.Parse(
        File.ReadLines($"/proc/{_process!.Id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2],
        System.Globalization.CultureInfo.InvariantCulture) / 1024;

    /// <summary>Ends it as a power cut does.</summary>
    public void Kill()
    {
        _process!.Kill();
        _process.WaitForExit();
    }

    /// <summary>Tells it to end, as a system that is shut down does, and Ctrl-C.</summary>
    /// <returns>Its exit code.</returns>
    public int Stop()
    {
        using (Process.Start("kill", ["-TERM", $"{_process!.Id}"]))
        {
            Assert.True(_process.WaitForExit(Patience), "the station did not stop");
        }

        return _process.ExitCode;
    }

    /// <summary>Starts another one at the same port, with a browser, as a second double-click does.</summary>
    public (int ExitCode, string Output, string Errors) StartAgain(params IReadOnlyList<(string Name, string Value)> environment) =>
        Run(["station", "--port", $"{Port}", "--templates", Templates], environment);

    /// <summary>Runs another command of the program to its end.</summary>
    public static (int ExitCode, string Output, string Errors) Run(IReadOnlyList<string> arguments, params IReadOnlyList<(string Name, string Value)> environment)
    {
        using var process = Process.Start(Program(arguments, environment))!;
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(Patience), "tagend did not end");
        return (process.ExitCode, output, errors.Result);
    }

    public void Dispose()
    {
        if (_process is { HasExited: false })
        {
            Kill();
        }

        _process?.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    private static ProcessStartInfo Program(IReadOnlyList<string> arguments, IReadOnlyList<(string Name, string Value)> environment)
    {
        var start = new ProcessStartInfo(Executable, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["TAGEND_JOB_BOOK"] = "";
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return start;
    }

    /// <summary>A port that is free, as is the one behind it, where devices of the shop's network come in; no other station of these tests gets either.</summary>
    private static int FreePort()
    {
        var port = Interlocked.Add(ref _lastPort, 2);
        return IsFree(port) && IsFree(port + 1) ? port : FreePort();
    }

    private static bool IsFree(int port)
    {
        using var listener = new TcpListener(IPAddress.Any, port);
        try
        {
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Tagend.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("no Tagend.slnx above the tests");
        }

        return folder;
    }
}
