using Microsoft.Data.Sqlite;
using Tagend.Jobs.Sql;
using Tagend.Problems;

namespace Tagend.Jobs.Sqlite;

/// <summary>The tables of a job book's file, and how an older file becomes one of today.</summary>
/// <remarks>
/// Lengths are whole nanometers and forces whole micronewtons, as in the program. Times are UTC, ISO 8601. A step, once
/// released, never changes: a new version is a new step at the end.
/// </remarks>
internal static class SqliteSchema
{
    /// <summary>The mark of a job book in the file's header (application_id): "Tgnd".</summary>
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

        // Searching: folded texts and their trigrams, and lots. Safety: the seal of each row (see RowSeal), the key of each write, and
        // what the builds of a job and all builds come to, so that a row that is lost is missed.
        """
        ALTER TABLE jobs ADD COLUMN customer_folded TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN bow_folded TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN seal INTEGER NOT NULL DEFAULT 0;
        ALTER TABLE jobs ADD COLUMN builds INTEGER NOT NULL DEFAULT 0;
        ALTER TABLE builds ADD COLUMN write_key TEXT;
        ALTER TABLE builds ADD COLUMN seal INTEGER NOT NULL DEFAULT 0;
        ALTER TABLE builds ADD COLUMN lots TEXT NOT NULL DEFAULT '';
        UPDATE jobs SET customer_folded = folded(customer), bow_folded = folded(bow), seal = seal_of(
            order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm, posts_nm,
            customer, bow, due, tag, printed_at), builds = (SELECT count(*) FROM builds WHERE job = jobs.number);
        UPDATE builds SET write_key = 'build ' || number, seal = (
            SELECT seal_of(builds.number, order_number, piece, tag, builds.posts_nm, turns, measured_nm, load_un, minutes, who, logged_at, left_out, lots)
            FROM jobs WHERE number = builds.job);
        CREATE INDEX jobs_built ON jobs (number) WHERE builds > 0;
        CREATE UNIQUE INDEX builds_write ON builds (write_key);
        CREATE TABLE build_lots (
            number INTEGER PRIMARY KEY,
            lot TEXT NOT NULL,
            build INTEGER NOT NULL REFERENCES builds (number),
            job INTEGER NOT NULL REFERENCES jobs (number)
        ) STRICT;
        CREATE INDEX build_lots_lot ON build_lots (lot);
        CREATE TABLE build_totals (builds INTEGER NOT NULL, seals INTEGER NOT NULL) STRICT;
        INSERT INTO build_totals SELECT count(*), coalesce(sum(seal), 0) FROM builds;
        CREATE TRIGGER builds_inserted AFTER INSERT ON builds BEGIN
            UPDATE build_totals SET builds = builds + 1, seals = seals + new.seal;
        END;
        CREATE TRIGGER builds_updated AFTER UPDATE OF seal ON builds BEGIN
            UPDATE build_totals SET seals = seals - old.seal + new.seal;
        END;
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

        // All that papers say beside the spec, so that they can be printed from the book. What became of a piece, and of a build: a
        // job's mark and the build from which on it is remade, builds that are struck or stand for others, the bench of each, and the log
        // that is only ever added to. Where each bench's part-used sheets of labels go on.
        """
        ALTER TABLE jobs ADD COLUMN notes TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN language TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN units TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN accessories TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN bench TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN mark TEXT NOT NULL DEFAULT '';
        ALTER TABLE jobs ADD COLUMN remade_from INTEGER NOT NULL DEFAULT 0;
        CREATE INDEX jobs_open ON jobs (order_number) WHERE mark = '';
        ALTER TABLE builds ADD COLUMN bench TEXT NOT NULL DEFAULT '';
        ALTER TABLE builds ADD COLUMN struck INTEGER NOT NULL DEFAULT 0;
        ALTER TABLE builds ADD COLUMN replaces INTEGER NOT NULL DEFAULT 0;
        CREATE TABLE events (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            order_number TEXT NOT NULL,
            piece TEXT NOT NULL,
            what TEXT NOT NULL,
            build INTEGER NOT NULL,
            at TEXT NOT NULL,
            who TEXT NOT NULL,
            bench TEXT NOT NULL,
            reason TEXT NOT NULL,
            write_key TEXT NOT NULL UNIQUE,
            seal INTEGER NOT NULL
        ) STRICT;
        CREATE INDEX events_order ON events (order_number, number);
        CREATE TRIGGER events_not_changed BEFORE UPDATE ON events BEGIN SELECT raise(ABORT, 'the log is only ever added to'); END;
        CREATE TRIGGER events_not_removed BEFORE DELETE ON events BEGIN SELECT raise(ABORT, 'the log is only ever added to'); END;
        CREATE TABLE label_sheets (
            number INTEGER PRIMARY KEY,
            bench TEXT NOT NULL,
            stock TEXT NOT NULL,
            next_label INTEGER NOT NULL,
            seal INTEGER NOT NULL,
            UNIQUE (bench, stock)
        ) STRICT;
        """,

        // Spools, and what was taken from them: a use of a build, or what was counted on a spool.
        """
        ALTER TABLE builds ADD COLUMN spools TEXT NOT NULL DEFAULT '';
        CREATE TABLE spools (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            kind TEXT NOT NULL,
            name TEXT NOT NULL,
            color TEXT NOT NULL,
            lot TEXT NOT NULL,
            received_nm INTEGER NOT NULL,
            received_on TEXT NOT NULL,
            bench TEXT NOT NULL,
            finished INTEGER NOT NULL,
            uses INTEGER NOT NULL DEFAULT 0,
            seal INTEGER NOT NULL,
            write_key TEXT NOT NULL UNIQUE
        ) STRICT;
        CREATE TABLE spool_uses (
            number INTEGER PRIMARY KEY AUTOINCREMENT,
            spool INTEGER NOT NULL REFERENCES spools (number),
            build INTEGER REFERENCES builds (number),
            length_nm INTEGER NOT NULL,
            seal INTEGER NOT NULL,
            write_key TEXT NOT NULL UNIQUE
        ) STRICT;
        CREATE INDEX spool_uses_spool ON spool_uses (spool);
        """,
    ];

    /// <summary>The newest version this program knows; the file's user_version.</summary>
    public static int Version => Steps.Length;

    /// <summary>Brings a book to today's version, all at once or not at all.</summary>
    /// <exception cref="TagendException">The book has a later version, or it is a database of another program.</exception>
    public static void Migrate(SqliteConnection connection, string path)
    {
        using (connection.BeginTransaction(deferred: true))
        {
            if (VersionOf(connection, path) == Version)
            {
                return;
            }
        }

        connection.CreateFunction<string, string>("folded", JobConditions.Folded, isDeterministic: true);
        connection.CreateFunction("seal_of", values => RowSeal.Of(values!), isDeterministic: true);
        using var transaction = connection.BeginTransaction(deferred: false);
        for (var version = (int)VersionOf(connection, path); version < Version; version++)
        {
            Run(connection, Steps[version]);
        }

        Run(connection, $"PRAGMA application_id = {FileMark}; PRAGMA user_version = {Version};");
        transaction.Commit();
    }

    /// <remarks>
    /// Called in a transaction. The tables are counted first: that takes the lock and reads them as they are now. A version
    /// read without it can be newer than the tables the connection knows of, and a later statement says that there is no such table.
    /// </remarks>
    private static long VersionOf(SqliteConnection connection, string path)
    {
        var tables = Number(connection, "SELECT count(*) FROM sqlite_master");
        var version = Number(connection, "PRAGMA user_version");
        var mark = Number(connection, "PRAGMA application_id");
        if (mark != FileMark && (mark, version, tables) != (0, 0, 0))
        {
            throw new TagendException(JobWording.NoBook(path));
        }

        if (version < 0 || (version == 0 && tables > 0))
        {
            throw new TagendException(JobWording.Damaged(path, $"version {version} in its header"));
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
