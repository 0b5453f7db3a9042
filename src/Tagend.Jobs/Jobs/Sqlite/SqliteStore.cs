using System.Data.Common;
using Microsoft.Data.Sqlite;
using Tagend.Jobs.Sql;
using Tagend.Problems;

namespace Tagend.Jobs.Sqlite;

/// <summary>A job book's file.</summary>
/// <remarks>
/// Rollback journal and synchronous EXTRA: a change is on the disk, and the journal's removal too, before it is
/// acknowledged; and at rest the book is one file, which can be copied and may stand on a network drive.
/// </remarks>
internal sealed class SqliteStore : SqlStore
{
    /// <summary>Characters that a part needs at least to be found by its trigrams (sqlite.org/fts5.html, "The Trigram Tokenizer").</summary>
    private const int Trigram = 3;

    private readonly SqliteConnection _connection;
    private readonly string _path;

    private SqliteStore(SqliteConnection connection, string path)
    {
        _connection = connection;
        _path = path;
    }

    protected override DbConnection Connection => _connection;

    /// <param name="file">The file that is opened: the book's, or a draft of it.</param>
    /// <param name="path">The book's file, as messages name it.</param>
    /// <param name="patience">How long to wait for another run that writes, to whole seconds.</param>
    /// <exception cref="TagendException">The book cannot be used; says why and what to do.</exception>
    public static SqliteStore Open(string file, string path, SqliteOpenMode mode, TimeSpan patience)
    {
        var text = new SqliteConnectionStringBuilder
        {
            DataSource = Path.GetFullPath(file),
            Mode = mode,
            DefaultTimeout = (int)patience.TotalSeconds,
            ForeignKeys = true,
            Pooling = false,
        }.ToString();
        var store = new SqliteStore(new SqliteConnection(text), path);
        try
        {
            store.Guarded(() =>
            {
                store._connection.Open();
                store.Run("PRAGMA busy_timeout = 100"); // asks at short intervals first; a command begins anew until its time is over
                store.Run("PRAGMA journal_mode = DELETE");
                store.Run("PRAGMA synchronous = EXTRA");
                store.Run("PRAGMA secure_delete = ON");
                SqliteSchema.Migrate(store._connection, path);
                return 0;
            });
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <remarks>
    /// The index of trigrams gives its jobs in the order of their numbers, so that a page of a common part ends with its last
    /// job. Where few jobs are left already, and for parts that are too short for it, the texts are looked at.
    /// </remarks>
    public override PartSearch Having(IReadOnlyList<TextPart> parts, bool isNarrow)
    {
        List<TextPart> indexed = isNarrow ? [] : [.. parts.Where(p => p.Part.EnumerateRunes().Count() >= Trigram)];
        var looked = parts.Except(indexed).ToList();
        var (sql, values) = (string.Concat(looked.Select(p => $" AND instr(jobs.{p.Column}, @{p.Column}) > 0")), looked.Select(p => (p.Column, (object)p.Part)));
        return indexed.Count == 0 ? new PartSearch("jobs", "jobs.number", sql, [.. values]) : new PartSearch(
            "job_texts CROSS JOIN jobs ON jobs.number = job_texts.rowid", // sqlite.org/optoverview.html: the left one is the outer loop
            "job_texts.rowid",
            $" AND job_texts MATCH @texts{sql}",
            [.. values, ("texts", string.Join(" AND ", indexed.Select(p => $"{p.Column} : \"{p.Part.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")))]);
    }

    public override (long Builds, long Seals) BuildTotals() =>
        Read("SELECT builds, seals FROM build_totals", row => (Builds: row.GetInt64(0), Seals: row.GetInt64(1))) is [var total]
            ? total
            : throw Damage("the number of builds is lost");

    /// <remarks>The index of trigrams is made anew, and the file without what was deleted (sqlite.org/lang_vacuum.html).</remarks>
    public override void Scrub()
    {
        Run("INSERT INTO job_texts (job_texts) VALUES ('rebuild')");
        Run("VACUUM");
    }

    public override T Write<T>(Func<T> work) => Whole(work, deferred: false);

    public override T Snapshot<T>(Func<T> work) => Whole(work, deferred: true);

    private T Whole<T>(Func<T> work, bool deferred) => Guarded(() =>
    {
        using var transaction = _connection.BeginTransaction(deferred);
        var result = work();
        transaction.Commit();
        return result;
    });

    /// <remarks>Result codes: sqlite.org/rescode.html.</remarks>
    protected override string Reason(Exception e) => (e as SqliteException)?.SqliteErrorCode switch
    {
        5 or 6 => JobWording.Busy(_path),
        10 => JobWording.DiskFails(_path),
        8 => JobWording.ReadOnly(_path),
        11 => JobWording.Damaged(_path, e.Message),
        13 => JobWording.DiskFull(_path),
        14 => JobWording.CannotOpen(_path),
        26 => JobWording.NoBook(_path),
        _ => JobWording.Failed(_path, e.Message),
    };

    public override TagendException Damage(string reason) => new(JobWording.Damaged(_path, reason));
}
