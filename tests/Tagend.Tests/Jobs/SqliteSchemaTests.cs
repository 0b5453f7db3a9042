using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Tagend.Jobs.Sqlite;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

public class SqliteSchemaTests
{
    /// <summary>
    /// A run that knew the tables as they were, and read the version as it is, was told "no such table" where a third run held
    /// the file at that moment: SQLite looks whether the tables have changed, and cannot.
    /// </summary>
    [Fact]
    public void Migrate_BookThatAnotherRunHasMigrated_KnowsItsTables()
    {
        using var test = new TestBook();
        Run(test.Path, SqliteVersionOne.With("OLD-1", 2, "TE1*OLD"));
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
        Assert.Equal($"{test.Path}: is not a job book; move this file away, or use another one", fault.Message);
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
        Assert.Contains("cannot be opened; see that its folder is there", fault.Message, StringComparison.Ordinal);
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
