using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

public class SqliteSchemaTests
{
    /// <summary>A book as version 1 made it, before there was a log.</summary>
    private const string VersionOne =
        """
        CREATE TABLE jobs (
            number INTEGER PRIMARY KEY, order_number TEXT NOT NULL, piece TEXT NOT NULL, revision INTEGER NOT NULL,
            issued TEXT NOT NULL, kind TEXT NOT NULL, material TEXT NOT NULL, strands INTEGER NOT NULL,
            finished_nm INTEGER NOT NULL, tolerance_nm INTEGER NOT NULL, laid_up_nm INTEGER NOT NULL, posts_nm INTEGER NOT NULL,
            customer TEXT NOT NULL, bow TEXT NOT NULL, due TEXT NOT NULL, tag TEXT NOT NULL, printed_at TEXT NOT NULL,
            UNIQUE (order_number, piece, tag)
        ) STRICT;
        CREATE INDEX jobs_issued ON jobs (issued);
        INSERT INTO jobs VALUES (1, 'OLD-1', 'string', 2, '2025-01-31', 'compound-string', 'hmpe-0145', 24,
            1530350000, 1587500, 1544066000, 1533831361, 'Example club', 'compound bow', '', 'TE1*OLD', '2025-01-31T10:00:00Z');
        PRAGMA application_id = 1416064612;
        PRAGMA user_version = 1;
        """;

    [Fact]
    public void Open_BookOfVersionOne_KeepsItsJobsAndTakesBuilds()
    {
        using var test = new TestBook();
        Run(test.Path, VersionOne);
        using (var book = test.Open())
        {
            Assert.Equal(new DateOnly(2025, 1, 31), Assert.Single(book.Find(new JobSearch { Order = "OLD-1" })).Issued);
            Assert.Equal(1, book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid()).Number);
        }

        Assert.True((long)Run(test.Path, "PRAGMA user_version")! > 1);
    }

    /// <summary>A tag of version 1 says less than one of today, but it is the same piece.</summary>
    [Fact]
    public void Record_PieceWithATagOfVersionOne_IsTheSameEntry()
    {
        const string Tag =
            "TE1*D-101*STRING*COMPOUND-STRING*1*20260314*IN*L60.25/.0625*W70*MHMPE-0145/24/.07941976*T45/R/.54/.5186121/0/C"
            + "*J1/.25/60.38706386/.0625/5*CBLACK/12+RED/12*YT021/.021/BLACK+T019/.019/RED"
            + "*SA0/8/1+C26.25/31/2+B51.75/60.25/1*PPEEP/18*NS9+N29.5+S50.75*B696.9599998*X300/20/60.54963717*G*Q3882*E7746C85C";
        using var test = new TestBook();
        Run(test.Path, VersionOne.Replace("'OLD-1', 'string', 2", "'D-101', 'string', 1", StringComparison.Ordinal).Replace("TE1*OLD", Tag, StringComparison.Ordinal));
        using var book = test.Open();
        Assert.Equal(0, book.Record([TestBook.Piece()]));
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        var job = Assert.Single(book.Find(new JobSearch()));
        Assert.Equal((Tag, 1), (job.Tag, job.Builds.Count));
    }

    [Fact]
    public void Open_BookOfVersionOne_IsSearchedAndHeldToItsSealsLikeANewOne()
    {
        using var test = new TestBook();
        Run(test.Path, VersionOne);
        using var book = test.Open();
        Assert.Single(book.Find(new JobSearch { Customer = "PLE CL", Bow = "Compound" }));
        Run(test.Path, "UPDATE jobs SET laid_up_nm = laid_up_nm + 65536");
        Assert.Contains("(job 1 does not fit its check)", Assert.Throws<TagendException>(() => book.Find(new JobSearch()).Count()).Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A run that knew the tables as they were, and read the version as it is, was told "no such table" where a third run held
    /// the file at that moment: SQLite looks whether the tables have changed, and cannot.
    /// </summary>
    [Fact]
    public void Migrate_BookThatAnotherRunHasMigrated_KnowsItsTables()
    {
        using var test = new TestBook();
        Run(test.Path, VersionOne);
        using var run = new SqliteConnection($"Data Source={test.Path};Pooling=False;Default Timeout=1");
        run.Open();
        Assert.Equal(1L, Number(run, "SELECT count(*) FROM jobs"));
        test.Open().Dispose();
        SqliteSchema.Migrate(run, test.Path);

        using var third = new SqliteConnection($"Data Source={test.Path};Pooling=False");
        third.Open();
        Number(third, "BEGIN EXCLUSIVE; SELECT 1");
        Assert.Equal("SQLite Error 5: 'database is locked'.", Assert.Throws<SqliteException>(() => Number(run, "SELECT count(*) FROM builds")).Message);
        Number(third, "COMMIT; SELECT 1");
        Assert.Equal(0L, Number(run, "SELECT count(*) FROM builds"));
    }

    [Fact]
    public void Open_EmptyFile_IsNoBookAndStaysEmpty()
    {
        using var test = new TestBook();
        File.WriteAllBytes(test.Path, []);
        Assert.Equal(
            $"{test.Path}: the file is empty, so it is not a job book, perhaps a copy that was cut off; put a complete copy in its place, or remove it and the next print starts a new book",
            Assert.Throws<TagendException>(() => test.Open()).Message);
        Assert.Equal(0, new FileInfo(test.Path).Length);
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(test.Path)!));
    }

    [Fact]
    public void OpenOrBegin_DraftOfARunThatWasKilled_IsFinished()
    {
        using var test = new TestBook();
        File.WriteAllBytes(test.Path + ".new", []);
        using (var book = test.Open())
        {
            Assert.Equal(1, book.Record([TestBook.Piece()]));
        }

        Assert.Equal([test.Path], Directory.GetFiles(Path.GetDirectoryName(test.Path)!));
    }

    [Fact]
    public void Open_BookOfALaterVersion_IsRefusedAndLeftAsItIs()
    {
        using var test = new TestBook();
        test.Open().Dispose();
        Run(test.Path, "PRAGMA user_version = 1000");
        var before = File.ReadAllBytes(test.Path);
        var fault = Assert.Throws<TagendException>(() => test.Open());
        Assert.Matches(
            $"^{Regex.Escape(test.Path)}: the job book has version 1000, and this program knows versions to [0-9]+: use the later Tagend that wrote it; nothing in the book was changed$",
            fault.Message);
        Assert.Equal(before, File.ReadAllBytes(test.Path));
    }

    [Fact]
    public void Open_DatabaseOfAnotherProgram_IsRefusedAndLeftAsItIs()
    {
        using var test = new TestBook();
        Run(test.Path, "CREATE TABLE theirs (a)");
        var before = File.ReadAllBytes(test.Path);
        var fault = Assert.Throws<TagendException>(() => test.Open());
        Assert.Equal($"{test.Path}: is not a job book; name another file with --job-book, or move this one away", fault.Message);
        Assert.Equal(before, File.ReadAllBytes(test.Path));
    }

    [Fact]
    public void Open_FileThatIsNoDatabase_IsRefused()
    {
        using var test = new TestBook();
        File.WriteAllText(test.Path, new string('x', 5000));
        Assert.Contains("is not a job book", Assert.Throws<TagendException>(() => test.Open()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_FolderThatIsNotThere_SaysWhatToDo()
    {
        using var test = new TestBook();
        var path = Path.Combine(test.Path, "book.db");
        var fault = Assert.Throws<TagendException>(() => new SqliteAddress(path).OpenOrBegin(TimeProvider.System));
        Assert.Contains("cannot be opened; name a file in a folder that exists", fault.Message, StringComparison.Ordinal);
    }

    private static object? Run(string path, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        return Number(connection, sql);
    }

    private static object? Number(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
