using Microsoft.Data.Sqlite;
using Tagend.Jobs.Sql;
using Tagend.Problems;

namespace Tagend.Jobs.Sqlite;

/// <summary>The tables of a job book, and how an older book becomes a book of today.</summary>
/// <remarks>
/// Lengths are whole nanometers and forces whole micronewtons, as in the program. Times are UTC, ISO 8601. A step, once
/// released, never changes: a new version is a new step at the end.
/// </remarks>
internal static class SqliteSchema
{
    /// <summary>In the file's header (application_id): "Tgnd".</summary>
    public const long FileMark = 0x54676E64;

    private static readonly string[] Steps =
    [
        """
        CREATE TABLE jobs (
            number INTEGER PRIMARY KEY,
            order_number TEXT NOT NULL,
            piece TEXT NOT NULL,
            revision INTEGER NOT NULL,
            issued TEXT NOT NULL,
            kind TEXT NOT NULL,
            material TEXT NOT NULL,
            strands INTEGER NOT NULL,
            finished_nm INTEGER NOT NULL,
            tolerance_nm INTEGER NOT NULL,
            laid_up_nm INTEGER NOT NULL,
            posts_nm INTEGER NOT NULL,
            customer TEXT NOT NULL,
            bow TEXT NOT NULL,
            due TEXT NOT NULL,
            tag TEXT NOT NULL,
            printed_at TEXT NOT NULL,
            UNIQUE (order_number, piece, tag)
        ) STRICT;
        CREATE INDEX jobs_issued ON jobs (issued);
        """,
        """
        CREATE TABLE builds (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            job INTEGER NOT NULL REFERENCES jobs (number),
            posts_nm INTEGER NOT NULL,
            turns REAL NOT NULL,
            measured_nm INTEGER NOT NULL,
            load_un INTEGER NOT NULL,
            minutes REAL NOT NULL,
            who TEXT NOT NULL,
            logged_at TEXT NOT NULL,
            left_out INTEGER NOT NULL DEFAULT 0
        ) STRICT;
        CREATE INDEX builds_job ON builds (job);
        """,
        """
        ALTER TABLE jobs ADD COLUMN customer_folded TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN bow_folded TEXT NOT NULL DEFAULT '';
        ALTER TABLE builds ADD COLUMN write_key TEXT;
        UPDATE jobs SET customer_folded = folded(customer), bow_folded = folded(bow);
        CREATE INDEX jobs_piece ON jobs (piece);
        CREATE UNIQUE INDEX builds_write ON builds (write_key);
        CREATE VIRTUAL TABLE job_texts USING fts5 (
            customer_folded, bow_folded, content = jobs, content_rowid = number, tokenize = 'trigram case_sensitive 1');
        INSERT INTO job_texts (job_texts) VALUES ('rebuild');
        CREATE TRIGGER jobs_inserted AFTER INSERT ON jobs BEGIN
            INSERT INTO job_texts (rowid, customer_folded, bow_folded) VALUES (new.number, new.customer_folded, new.bow_folded);
        END;
        CREATE TRIGGER jobs_updated AFTER UPDATE OF customer_folded, bow_folded ON jobs BEGIN
            INSERT INTO job_texts (job_texts, rowid, customer_folded, bow_folded)
            VALUES ('delete', old.number, old.customer_folded, old.bow_folded);
            INSERT INTO job_texts (rowid, customer_folded, bow_folded) VALUES (new.number, new.customer_folded, new.bow_folded);
        END;
        """,
    ];

    /// <summary>The newest version this program knows; the file's user_version.</summary>
    public static int Version => Steps.Length;

    /// <summary>The step that makes a version of the one before, from 1.</summary>
    public static string StepTo(int version) => Steps[version - 1];

    /// <summary>Brings a book to today's version, all at once or not at all.</summary>
    /// <exception cref="TagendException">A later version, or a database of another program.</exception>
    public static void Migrate(SqliteConnection connection, string path)
    {
        if (VersionOf(connection, path) == Version)
        {
            return;
        }

        connection.CreateFunction<string, string>("folded", JobConditions.Folded, isDeterministic: true);
        using var transaction = connection.BeginTransaction(deferred: false);
        for (var version = (int)VersionOf(connection, path) + 1; version <= Version; version++)
        {
            Run(connection, StepTo(version));
        }

        Run(connection, $"PRAGMA application_id = {FileMark}; PRAGMA user_version = {Version};");
        transaction.Commit();
    }

    private static long VersionOf(SqliteConnection connection, string path)
    {
        var version = Number(connection, "PRAGMA user_version");
        var mark = Number(connection, "PRAGMA application_id");
        var isNew = mark == 0 && version == 0 && Number(connection, "SELECT count(*) FROM sqlite_master") == 0;
        if (mark != FileMark && !isNew)
        {
            throw new TagendException(JobWording.NoBook(path));
        }

        return version <= Version ? version : throw new TagendException(JobWording.Later(path, version, Version));
    }

    private static long Number(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
