using System.Data;
using System.Data.Common;
using System.Net.Sockets;
using Npgsql;
using Tagend.Jobs.Sql;
using Tagend.Problems;

namespace Tagend.Jobs.Postgres;

/// <summary>A job book's database on a server.</summary>
/// <remarks>
/// A writing whose connection is lost is sent again on a new one, for a while: every writing is entered once however often it
/// is sent, so it does not matter whether it was the writing or only its answer that was lost.
/// </remarks>
internal sealed class PostgresStore : SqlStore
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    private readonly NpgsqlDataSource _source;
    private readonly string _address;
    private readonly TimeSpan _patience;
    private NpgsqlConnection _connection;

    /// <param name="address">As messages show it.</param>
    /// <param name="patience">How long a server may take to come back.</param>
    public PostgresStore(string connectionString, string address, TimeSpan patience)
    {
        var builder = new NpgsqlSlimDataSourceBuilder(connectionString);
        builder.EnableTransportSecurity();
        _source = builder.Build();
        _connection = _source.CreateConnection();
        _address = address;
        _patience = patience;
    }

    protected override DbConnection Connection => _connection;

    /// <summary>Connects, and brings an older book to today's version.</summary>
    /// <param name="make">Makes the tables where there are none.</param>
    /// <returns>False where there is no book and none is made.</returns>
    /// <exception cref="TagendException">The book cannot be used.</exception>
    public bool Begin(bool make) => Guarded(() =>
    {
        var started = TimeProvider.System.GetTimestamp();
        var wasThere = false;
        while (true)
        {
            try
            {
                Reconnect();
                wasThere = true;
                return PostgresSchema.Migrate(_connection, _address, make);
            }
            catch (DbException e) when ((IsStopping(e) || (wasThere && IsPassing(e))) && TimeProvider.System.GetElapsedTime(started) < _patience)
            {
                Thread.Sleep(Pause); // it is being restarted, and was there or says so; one that is away does not answer at all
            }
        }
    });

    public override void Dispose()
    {
        base.Dispose();
        _source.Dispose();
    }

    /// <remarks>The server knows how common a part is: it looks it up in its index of trigrams, or through all jobs until a page is full.</remarks>
    public override PartSearch Having(IReadOnlyList<TextPart> parts, bool isNarrow) => new(
        "jobs",
        "jobs.number",
        string.Concat(parts.Select(p => $" AND {p.Column} LIKE @{p.Column}")),
        [.. parts.Select(p => (p.Column, (object)$"%{Literal(p.Part)}%"))]);

    public override T Snapshot<T>(Func<T> work) => Guarded(() => Whole(work, IsolationLevel.RepeatableRead));

    public override (long Builds, long Seals) BuildTotals() =>
        Read("SELECT count(*), coalesce(sum(seal), 0)::bigint FROM builds", row => (Builds: row.GetInt64(0), Seals: row.GetInt64(1)))[0];

    public override T Write<T>(Func<T> work) => Write(work, begins: false);

    /// <summary>Does some writing whole or not at all, in a book that is begun with it where there is none.</summary>
    /// <exception cref="TagendException">It cannot be done.</exception>
    public T WriteOrBegin<T>(Func<T> work) => Write(work, begins: true);

    private T Write<T>(Func<T> work, bool begins) => Guarded(() =>
    {
        var started = TimeProvider.System.GetTimestamp();
        while (true)
        {
            try
            {
                if (_connection.State != ConnectionState.Open)
                {
                    Reconnect();
                }

                return Whole(() =>
                {
                    if (begins)
                    {
                        PostgresSchema.Make(_connection, _address);
                    }

                    PostgresSchema.HoldVersion(_connection, _address);
                    return work();
                },
                IsolationLevel.ReadCommitted);
            }
            catch (Exception e) when (IsPassing(e) && TimeProvider.System.GetElapsedTime(started) < _patience)
            {
                Thread.Sleep(Pause);
            }
        }
    });

    public override void Alone() => PostgresSchema.ChangeAlone(_connection);

    public override void NumbersAreGiven()
    {
        foreach (var table in new[] { "jobs", "builds", "build_lots", "events", "label_sheets", "spools", "spool_uses" })
        {
            Read($"SELECT setval(pg_get_serial_sequence('{table}', 'number'), max(number)) FROM {table} HAVING max(number) > 0", _ => 0);
        }
    }

    /// <remarks>The server's journal and its backups may still have the old rows.</remarks>
    public override void Scrub() => Run("VACUUM FULL jobs");

    public override TagendException Damage(string reason) => new(JobWording.Damaged(_address, reason));

    protected override bool IsFault(Exception e) => e is DbException or SocketException or TimeoutException or IOException;

    /// <remarks>SQLSTATE codes: PostgreSQL 15 documentation, appendix A.</remarks>
    protected override string Reason(Exception e) => StateOf(e) switch
    {
        "28000" or "28P01" => ServerWording.Refused(_address, e.Message),
        "3D000" => ServerWording.NoDatabase(_address),
        "42501" => ServerWording.NotPermitted(_address, e.Message),
        "25006" => ServerWording.ReadOnly(_address),
        "53100" => ServerWording.DiskFull(_address),
        "53300" => ServerWording.TooMany(_address),
        "55P03" or "40P01" or "40001" => JobWording.Busy(_address),
        "57P01" or "57P02" or "57P03" or null => ServerWording.Away(_address, Root(e).Message),
        "0A000" or "58P01" => ServerWording.NoTrigrams(_address, e.Message),
        "XX001" or "XX002" => JobWording.Damaged(_address, e.Message),
        _ => JobWording.Failed(_address, e.Message),
    };

    private T Whole<T>(Func<T> work, IsolationLevel level)
    {
        using var transaction = _connection.BeginTransaction(level);
        var result = work();
        transaction.Commit();
        return result;
    }

    /// <summary>A text as a pattern of itself alone.</summary>
    private static string Literal(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace("%", "\\%", StringComparison.Ordinal)
        .Replace("_", "\\_", StringComparison.Ordinal);

    private void Reconnect()
    {
        _connection.Dispose();
        _connection = _source.CreateConnection();
        _connection.Open();
    }

    /// <summary>The connection is lost, the server is starting or stopping, or two writings waited for each other.</summary>
    private static bool IsPassing(Exception e) => (e as TagendException)?.InnerException is { } inner
        ? IsPassing(inner)
        : IsStopping(e) || StateOf(e) is "40P01" or "40001" || (e is NpgsqlException and not PostgresException) || e is SocketException or IOException;

    private static bool IsStopping(Exception e) => StateOf(e) is "57P01" or "57P02" or "57P03";

    private static string? StateOf(Exception e) => (e as DbException)?.SqlState;

    private static Exception Root(Exception e) => e.InnerException is { } inner ? Root(inner) : e;
}
