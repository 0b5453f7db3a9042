using System.Data.Common;
using Tagend.Problems;

namespace Tagend.Jobs.Sql;

/// <summary>A database that holds a job book: opened for one run, and every fault of it in words.</summary>
internal abstract class SqlStore : IDisposable
{
    protected abstract DbConnection Connection { get; }

    public virtual void Dispose()
    {
        Connection.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>How jobs are found by parts of their texts.</summary>
    /// <param name="parts">Folded parts of folded columns; none for all jobs.</param>
    /// <param name="isNarrow">Another condition leaves few jobs already, and has an index.</param>
    public abstract PartSearch Having(IReadOnlyList<TextPart> parts, bool isNarrow);

    /// <summary>Does some writing whole or not at all. It is safe when this returns.</summary>
    /// <exception cref="TagendException">It cannot be done; so say the other methods.</exception>
    public abstract T Write<T>(Func<T> work);

    /// <summary>Called in a writing before it reads what it then changes: no other one does so until it ends.</summary>
    public virtual void Alone()
    {
    }

    /// <summary>Does some reading of one state of the book, whatever others write.</summary>
    public abstract T Snapshot<T>(Func<T> work);

    /// <summary>Counts what was logged, without reading it.</summary>
    /// <returns>The number of builds, and the sum of their seals.</returns>
    public abstract (long Builds, long Seals) BuildTotals();

    /// <summary>Sees that no build is lost, in a snapshot.</summary>
    /// <param name="seals">Of all builds that were read.</param>
    /// <exception cref="TagendException">They are not all that were logged.</exception>
    public void CheckBuilds(IReadOnlyList<long> seals)
    {
        if (BuildTotals() != (seals.Count, seals.Sum()))
        {
            throw Damage($"{seals.Count} builds are found, and that is not what was logged");
        }
    }

    /// <summary>Called in a writing that has given rows their numbers: the next ones are counted from there.</summary>
    public virtual void NumbersAreGiven()
    {
    }

    /// <summary>Takes what was overwritten off the disk, as far as the database can.</summary>
    public abstract void Scrub();

    /// <returns>How many rows changed.</returns>
    public int Run(string sql, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(sql, values);
        return Guarded(command.ExecuteNonQuery);
    }

    /// <summary>All rows of a query, read by name.</summary>
    public List<T> Read<T>(string sql, Func<DbDataReader, T> read, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using var command = Command(sql, values);
        return Guarded(() =>
        {
            using var reader = command.ExecuteReader();
            var rows = new List<T>();
            while (reader.Read())
            {
                rows.Add(Held(() => read(reader)));
            }

            return rows;
        });
    }

    /// <summary>Does some work, and puts the database's faults in words.</summary>
    protected T Guarded<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (IsFault(e))
        {
            throw new TagendException(Reason(e), e);
        }
    }

    /// <summary>What is wrong, and what to do.</summary>
    protected abstract string Reason(Exception e);

    /// <summary>Whether an exception is the database's, and not a bug of this program.</summary>
    protected virtual bool IsFault(Exception e) => e is DbException;

    /// <summary>That the book is damaged, and what to do.</summary>
    public abstract TagendException Damage(string reason);

    /// <summary>Reads a row, and puts in words that it makes no sense.</summary>
    private T Held<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (InvalidDataException e)
        {
            throw Damage(e.Message);
        }
        catch (Exception e) when (e is InvalidOperationException or FormatException or InvalidCastException or OverflowException or ArgumentException)
        {
            throw Damage(JobWording.NoSuchValue);
        }
    }

    private DbCommand Command(string sql, ReadOnlySpan<(string Name, object Value)> values)
    {
        var command = Connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in values)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (name, value);
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
