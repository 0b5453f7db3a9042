using Tagend.Books;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>A PostgreSQL server of the tests' own; they are skipped where there is none.</summary>
public sealed class PostgresServer : IDisposable
{
    private readonly Server? _server = Server.Missing is null ? new Server(isSafe: false) : null;

    /// <summary>The address of a new database; skips the test where there is no server.</summary>
    public string NewDatabase()
    {
        Assert.SkipWhen(_server is null, Server.Missing ?? "");
        return _server!.AddressOf(_server.NewDatabase());
    }

    public string AddressOf(string database) => _server!.AddressOf(database);

    public object? Run(string name, string sql) => _server!.Run(name, sql);

    public string Client(string program, params string[] arguments) => _server!.Client(program, arguments);

    public void Start() => _server!.Start();

    public void Stop() => _server!.Stop();

    public void Dispose() => _server?.Dispose();
}
