using Npgsql;
using Tagend.Jobs.Sql;

namespace Tagend.Jobs.Postgres;

/// <summary>A job book in a database of a PostgreSQL server, which several benches share.</summary>
/// <remarks>The password is not part of the address: Npgsql takes it from the variable PGPASSWORD, or from the file .pgpass.</remarks>
/// <param name="text">The address as the user wrote it.</param>
/// <param name="connection">What it says, with no password in it.</param>
/// <param name="patience">How long to wait for the server, for a lock, and for a server that is restarted.</param>
public sealed class PostgresAddress(string text, NpgsqlConnectionStringBuilder connection, TimeSpan? patience = null) : JobBookAddress(text)
{
    /// <summary>The schema that all tables of a book are in, so that a database may hold other things beside it.</summary>
    private const string Schema = "tagend";

    private readonly TimeSpan _patience = patience ?? Patience;

    /// <inheritdoc/>
    public override IJobBook? OpenExisting(TimeProvider clock, string bench = "") => Open(clock, bench, begin: false);

    /// <inheritdoc/>
    public override IJobBook OpenOrBegin(TimeProvider clock, string bench = "") => Open(clock, bench, begin: true)!;

    /// <inheritdoc/>
    public override T Fill<T>(TimeProvider clock, Func<IJobBook, T> fill)
    {
        using var store = NewStore();
        store.Begin(make: false);
        return store.WriteOrBegin(() => fill(new SqlJobBook(store, clock, "")));
    }

    private SqlJobBook? Open(TimeProvider clock, string bench, bool begin)
    {
        var store = NewStore();
        try
        {
            if (store.Begin(begin))
            {
                return new SqlJobBook(store, clock, bench);
            }

            store.Dispose();
            return null;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    private PostgresStore NewStore()
    {
        var seconds = (int)Math.Ceiling(_patience.TotalSeconds);
        var settings = new NpgsqlConnectionStringBuilder(connection.ConnectionString)
        {
            ApplicationName = "tagend",
            Timeout = seconds,
            CommandTimeout = 6 * seconds,
            Options = $"-c lock_timeout={seconds}s",
            Pooling = false,
            SearchPath = $"{Schema},public",
        };
        return new PostgresStore(settings.ConnectionString, Text, _patience);
    }
}
