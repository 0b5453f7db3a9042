using System.Diagnostics;
using Npgsql;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>A PostgreSQL server of the tests' own, on a socket in a folder of its own; stopped and gone after them.</summary>
/// <remarks>The server refuses to run as root, so the user postgres of the Debian package runs it then.</remarks>
public sealed class PostgresServer : IDisposable
{
    private const string User = "shop";
    private const string DebianPrograms = "/usr/lib/postgresql/15/bin";

    private readonly string? _missing;
    private int _databases;

    public PostgresServer()
    {
        Folder = Directory.CreateTempSubdirectory("tagend-pg-").FullName;
        if (!File.Exists(Path.Combine(DebianPrograms, "initdb")))
        {
            _missing = "PostgreSQL 15 is not on this machine";
            return;
        }

        if (Environment.UserName == "root")
        {
            Run("chown", "postgres", Folder);
        }

        File.WriteAllText(Path.Combine(Folder, "settings"), $"listen_addresses = ''\nunix_socket_directories = '{Folder}'\nfsync = off\nmax_connections = 40\n");
        RunAsServer("initdb", "-D", Data, "-A", "trust", "-U", User, "--no-sync", "-E", "UTF8", "--locale=C.UTF-8");
        File.AppendAllText(Path.Combine(Data, "postgresql.conf"), $"include '{Path.Combine(Folder, "settings")}'\n");
        Start();
    }

    public string Folder { get; }

    private string Data => Path.Combine(Folder, "data");

    /// <summary>The address of a new database; skips the test where there is no server.</summary>
    public string NewDatabase()
    {
        Assert.SkipWhen(_missing is not null, _missing ?? "");
        var name = $"book{Interlocked.Increment(ref _databases)}";
        Run(name: "postgres", sql: $"CREATE DATABASE {name}");
        return AddressOf(name);
    }

    public string AddressOf(string database) => $"postgres://{User}@/{database}?host={Folder}";

    public object? Run(string name, string sql)
    {
        using var connection = new NpgsqlConnection($"Host={Folder};Username={User};Database={name};Pooling=false");
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection);
        return command.ExecuteScalar();
    }

    public void Start() => RunAsServer("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(Folder, "log"), "start");

    public void Stop() => RunAsServer("pg_ctl", "-D", Data, "-w", "-m", "fast", "stop");

    public void Dispose()
    {
        if (_missing is null && File.Exists(Path.Combine(Data, "postmaster.pid")))
        {
            Stop();
        }

        Directory.Delete(Folder, recursive: true);
    }

    private static void RunAsServer(string program, params string[] arguments)
    {
        var path = Path.Combine(DebianPrograms, program);
        if (Environment.UserName == "root")
        {
            Run("setpriv", ["--reuid=postgres", "--regid=postgres", "--clear-groups", path, .. arguments]);
        }
        else
        {
            Run(path, arguments);
        }
    }

    private static void Run(string program, params string[] arguments)
    {
        // The server keeps what it inherits: nothing is read from it, or the reading would not end.
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "exec \"$0\" \"$@\" >/dev/null 2>&1 </dev/null", program, .. arguments])
        {
            WorkingDirectory = "/",
        })!;
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)}: exit code {process.ExitCode}");
        }
    }
}
