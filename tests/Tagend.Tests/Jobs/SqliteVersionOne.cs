namespace Tagend.Tests.Jobs;

/// <summary>A book in a file as version 1 made it, before there was a log or a seal.</summary>
internal static class SqliteVersionOne
{
    /// <summary>The statements that make it, with one job.</summary>
    public static string With(string order, int revision, string tag) =>
        $"""
         CREATE TABLE jobs (
             number INTEGER PRIMARY KEY, order_number TEXT NOT NULL, piece TEXT NOT NULL, revision INTEGER NOT NULL,
             issued TEXT NOT NULL, kind TEXT NOT NULL, material TEXT NOT NULL, strands INTEGER NOT NULL,
             finished_nm INTEGER NOT NULL, tolerance_nm INTEGER NOT NULL, laid_up_nm INTEGER NOT NULL, posts_nm INTEGER NOT NULL,
             customer TEXT NOT NULL, bow TEXT NOT NULL, due TEXT NOT NULL, tag TEXT NOT NULL, printed_at TEXT NOT NULL,
             UNIQUE (order_number, piece, tag)
         ) STRICT;
         CREATE INDEX jobs_issued ON jobs (issued);
         INSERT INTO jobs VALUES (1, '{order}', 'string', {revision}, '2025-01-31', 'compound-string', 'hmpe-0145', 24,
             1530350000, 1587500, 1544066000, 1533831361, 'Example club', 'compound bow', '', '{tag}', '2025-01-31T10:00:00Z');
         PRAGMA application_id = 1416064612;
         PRAGMA user_version = 1;
         """;
}
