using Microsoft.Data.Sqlite;
using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Jobs.Sql;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>Rows that are not what was entered: nothing is learned from them, and the sentence says that the book is damaged.</summary>
public sealed class SqliteDamageTests : IDisposable
{
    private readonly TestBook _test = new();

    public SqliteDamageTests()
    {
        using var book = _test.Open();
        book.Log(TestBook.Piece("Example club").Spec, TestBook.Built, Guid.NewGuid());
        book.Log(TestBook.Piece("Example club").Spec, TestBook.Built, Guid.NewGuid());
        // As a flipped bit can make it: no rule of the tables is in the way.
        Run("PRAGMA writable_schema = ON; UPDATE sqlite_master SET sql = replace(replace(sql, ') STRICT', ')'), 'NOT NULL', '')");
    }

    public void Dispose() => _test.Dispose();

    public static TheoryData<string, string> Damages
    {
        get
        {
            var data = new TheoryData<string, string>();
            string[] jobs =
            [
                "order_number", "piece", "revision", "issued", "kind", "material", "strands", "finished_nm", "tolerance_nm", "laid_up_nm",
                "posts_nm", "customer", "bow", "due", "tag", "printed_at", "builds", "seal",
                "notes", "language", "units", "accessories", "bench", "mark", "remade_from",
            ];
            string[] builds = ["job", "posts_nm", "turns", "measured_nm", "load_un", "minutes", "who", "logged_at", "left_out", "lots", "seal", "bench", "struck", "replaces"];
            foreach (var (table, column) in jobs.Select(c => ("jobs", c)).Concat(builds.Select(c => ("builds", c))))
            {
                foreach (var value in new[] { "NULL", "'x'", "x'00ff'", "7", "9223372036854775807", "-1.5e300" })
                {
                    data.Add($"{table} SET {column} = {value}", column);
                }
            }

            foreach (var column in new[] { "builds", "seals" })
            {
                data.Add($"build_totals SET {column} = {column} + 1", column);
                data.Add($"build_totals SET {column} = NULL", column);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Damages))]
    public void Built_AnyColumnWithAnotherValueOfAnyType_SaysThatTheBookIsDamaged(string update, string column)
    {
        Run($"PRAGMA foreign_keys = OFF; UPDATE {update}{(update.StartsWith("build_totals", StringComparison.Ordinal) ? "" : " WHERE number = 1")}");
        using var book = _test.Open();
        var fault = Assert.Throws<TagendException>(() => book.Built());
        Assert.True(fault.Message.StartsWith($"{_test.Path}: the job book is damaged (", StringComparison.Ordinal), $"{column}: {fault.Message}");
        Assert.EndsWith("); keep this file, and go on with the latest copy of it or a new one", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DELETE FROM builds WHERE number = 2")]
    [InlineData("PRAGMA foreign_keys = OFF; DELETE FROM jobs")]
    [InlineData("UPDATE builds SET number = 9 WHERE number = 2")]
    public void Built_RowThatIsLost_IsMissed(string sql)
    {
        Run(sql);
        using var book = _test.Open();
        Assert.Contains("the job book is damaged (", Assert.Throws<TagendException>(() => book.Built()).Message, StringComparison.Ordinal);
    }

    /// <summary>As a damaged index has it: as many as there should be, one of them twice.</summary>
    [Fact]
    public void Find_BuildThatIsFoundTwiceInAnothersPlace_SaysThatTheBookIsDamaged()
    {
        Run("PRAGMA legacy_alter_table = ON; ALTER TABLE builds RENAME TO kept; CREATE VIEW builds AS SELECT * FROM kept WHERE number = 1 UNION ALL SELECT * FROM kept WHERE number = 1");
        using var book = _test.Open();
        var fault = Assert.Throws<TagendException>(() => book.Find(new JobSearch()).ToList());
        Assert.Contains("the job book is damaged (of 2 builds of job 1 1 are found)", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Log_BuildThatTheBookDoesNotTake_IsNotAcknowledged()
    {
        Run("CREATE TRIGGER lost BEFORE INSERT ON builds BEGIN SELECT raise(IGNORE); END");
        using var book = _test.Open();
        var fault = Assert.Throws<TagendException>(() => book.Log(TestBook.Piece("Example club").Spec, TestBook.Built, Guid.NewGuid()));
        Assert.Contains("the job book is damaged (", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Open_VersionThatNoBookHas_SaysThatTheBookIsDamaged(int version)
    {
        Run($"PRAGMA user_version = {version}");
        Assert.Contains($"the job book is damaged (version {version} in its header)", Assert.Throws<TagendException>(() => _test.Open()).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("laid_up_nm")]
    [InlineData("posts_nm")]
    [InlineData("finished_nm")]
    [InlineData("tolerance_nm")]
    [InlineData("strands")]
    public void Fit_OfAJobThatIsNotAsItsTag_IsRefused(string column)
    {
        // The seal fits: as in a book that was changed before there were seals.
        using (var connection = Connection())
        {
            connection.CreateFunction("seal_of", values => RowSeal.Of(values!));
            using var command = connection.CreateCommand();
            command.CommandText =
                $"""
                 UPDATE jobs SET {column} = {column} + 2;
                 UPDATE jobs SET seal = seal_of(order_number, piece, revision, issued, kind, material, strands, finished_nm, tolerance_nm, laid_up_nm,
                     posts_nm, customer, bow, due, tag, printed_at);
                 """;
            command.ExecuteNonQuery();
        }

        using var book = _test.Open();
        Assert.Equal(
            "the job book is damaged: its values for D-101/string, revision 1, differ from its tag; keep this book, and go on with the latest copy of it or a new one",
            Assert.Throws<TagendException>(() => BuildPoint.Of(book.Built())).Message);
    }

    private SqliteConnection Connection()
    {
        var connection = new SqliteConnection($"Data Source={_test.Path};Pooling=False");
        connection.Open();
        return connection;
    }

    private void Run(string sql)
    {
        using var connection = Connection();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
