using System.Diagnostics;
using Npgsql;

namespace Tagend.Books;

/// <summary>A PostgreSQL server of its own, on a socket in a folder of its own; stopped and gone in the end.</summary>
/// <remarks>The server refuses to run as root, so the user postgres of the Debian package runs it then.</remarks>
public sealed class Server : IDisposable
{
    private const string User = "shop";
    private const string Programs = "/usr/lib/postgresql/15/bin";

    private int _databases;

    /// <param name="isSafe">What it has acknowledged is on the disk; tests that do not cut its power are faster without.</param>
    public Server(bool isSafe)
    {
        Folder = Directory.CreateTempSubdirectory("tagend-pg-").FullName;
        if (Environment.UserName == "root")
        {
            Run("chown", "postgres", Folder);
        }

        File.WriteAllText(
            Path.Combine(Folder, "settings"),
            $"listen_addresses = ''\nunix_socket_directories = '{Folder}'\nfsync = {(isSafe ? "on" : "off")}\nmax_connections = 40\n");
        AsServer("initdb", "-D", Data, "-A", "trust", "-U", User, "--no-sync", "-E", "UTF8", "--locale=C.UTF-8");
        File.AppendAllText(Path.Combine(Data, "postgresql.conf"), $"include '{Path.Combine(Folder, "settings")}'\n");
        Start();
    }

    /// <summary>Whether this machine has the Debian package; null where it does, else why not.</summary>
    public static string? Missing => File.Exists(Path.Combine(Programs, "initdb")) ? null : "PostgreSQL 15 is not on this machine";

    /// <summary>Of its socket and all its files.</summary>
    public string Folder { get; }

    private string Data => Path.Combine(Folder, "data");

    /// <summary>Makes a database.</summary>
    /// <returns>Its name.</returns>
    public string NewDatabase()
    {
        var name = $"book{Interlocked.Increment(ref _databases)}";
        Run("postgres", $"CREATE DATABASE {name}");
        return name;
    }

    public string AddressOf(string database) => $"postgres://{User}@/{database}?host={Folder}";

    /// <summary>Runs a statement.</summary>
    /// <returns>The first value of its answer.</returns>
    public object? Run(string database, string sql)
    {
        using var connection = new NpgsqlConnection($"Host={Folder};Username={User};Database={database};Pooling=false");
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection);
        return command.ExecuteScalar();
    }

    /// <summary>Runs one of the server's own programs on a database.</summary>
    /// <returns>What it wrote to standard output.</returns>
    public string Client(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Path.Combine(Programs, program), ["-h", Folder, "-U", User, .. arguments])
        {
            RedirectStandardOutput = true,
        })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)}: exit code {process.ExitCode}\n{output}");
    }

    public void Start() => AsServer("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(Folder, "log"), "start");

    /// <param name="isCrash">Without a shutdown, as a machine whose power is cut.</param>
    public void Stop(bool isCrash = false) => AsServer("pg_ctl", "-D", Data, "-w", "-m", isCrash ? "immediate" : "fast", "stop");

    public void Dispose()
    {
        if (File.Exists(Path.Combine(Data, "postmaster.pid")))
        {
            Stop();
        }

        Directory.Delete(Folder, recursive: true);
    }

    private static void AsServer(string program, params string[] arguments)
    {
        var path = Path.Combine(Programs, program);
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
