using Microsoft.Data.Sqlite;
using Tagend.Problems;

namespace Tagend.Jobs;

/// <summary>The file of a job book: opened for one run, and every fault of it in words.</summary>
/// <remarks>
/// Rollback journal and synchronous EXTRA: a change is on the disk, and the journal's removal too, before it is
/// acknowledged; and at rest the book is one file, which can be copied and may stand on a network drive.
/// </remarks>
internal sealed class JobFile : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly string _path;

    private JobFile(SqliteConnection connection, string path)
    {
        _connection = connection;
        _path = path;
    }

    /// <param name="patience">How long to wait for another run that writes, to whole seconds.</param>
    /// <exception cref="TagendException">The book cannot be used; says why and what to do.</exception>
    public static JobFile Open(string path, bool make, TimeSpan patience)
    {
        var text = new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = make ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite,
            DefaultTimeout = (int)patience.TotalSeconds,
            ForeignKeys = true,
            Pooling = false,
        }.ToString();
        var file = new JobFile(new SqliteConnection(text), path);
        try
        {
            file.Guarded(() =>
            {
                file._connection.Open();
                file.Run("PRAGMA journal_mode = DELETE");
                file.Run("PRAGMA synchronous = EXTRA");
                JobSchema.Migrate(file._connection, path);
                return 0;
            });
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    public void Dispose() => _connection.Dispose();

    /// <summary>Does some writing whole or not at all. It is on the disk when this returns.</summary>
    public T Write<T>(Func<T> work) => Guarded(() =>
    {
        using var transaction = _connection.BeginTransaction(deferred: false);
        var result = work();
        transaction.Commit();
        return result;
    });

    /// <returns>How many rows changed.</returns>
    public int Run(string sql, params (string Name, object Value)[] values)
    {
        using var command = Command(sql, values);
        return command.ExecuteNonQuery();
    }

    /// <returns>Null where no row is found.</returns>
    public long? Number(string sql, params (string Name, object Value)[] values)
    {
        using var command = Command(sql, values);
        return (long?)command.ExecuteScalar();
    }

    public List<T> Read<T>(string sql, Func<SqliteDataReader, T> read, params (string Name, object Value)[] values) => Guarded(() =>
    {
        using var command = Command(sql, values);
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(read(reader));
        }

        return rows;
    });

    private SqliteCommand Command(string sql, (string Name, object Value)[] values)
    {
        var command = _connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value);
        }

        return command;
    }

    private T Guarded<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException e)
        {
            throw new TagendException(Reason(e), e);
        }
    }

    /// <remarks>Result codes: sqlite.org/rescode.html.</remarks>
    private string Reason(SqliteException e) => e.SqliteErrorCode switch
    {
        5 or 6 => JobWording.Busy(_path),
        8 => JobWording.ReadOnly(_path),
        11 => JobWording.Damaged(_path, e.Message),
        13 => JobWording.DiskFull(_path),
        14 => JobWording.CannotOpen(_path),
        26 => JobWording.NoBook(_path),
        _ => JobWording.Failed(_path, e.Message),
    };
}
