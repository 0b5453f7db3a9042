using Microsoft.Data.Sqlite;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>A job book in a file: what every kind does, and what a file alone does.</summary>
public sealed class SqliteJobBookTests : JobBookContract, IDisposable
{
    private readonly TestBook _test = new();

    protected override JobBookAddress Address => new SqliteAddress(_test.Path);

    protected override JobBookAddress NewAddress() => new SqliteAddress($"{_test.Path}-{Guid.NewGuid()}");

    protected override string VersionOne(OldJob job) => SqliteVersionOne.With(job.Order, job.Revision, job.Tag);

    protected override void Run(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={_test.Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public void Dispose() => _test.Dispose();

    [Fact]
    public void Record_WhileAnotherRunWrites_SaysSoAfterWaiting()
    {
        using var book = new SqliteAddress(_test.Path, TimeSpan.FromSeconds(1)).OpenOrBegin(TimeProvider.System);
        using var other = new SqliteConnection($"Data Source={_test.Path};Pooling=False");
        other.Open();
        using (other.BeginTransaction(deferred: false))
        {
            var fault = Assert.Throws<TagendException>(() => book.Record([TestBook.Piece()]));
            Assert.Equal($"{_test.Path}: another program is using the job book; wait for it to finish, then run this again", fault.Message);
        }

        Assert.Equal(1, book.Record([TestBook.Piece()]));
    }

    [Theory]
    [InlineData("UPDATE events SET reason = 'other'")]
    [InlineData("DELETE FROM events")]
    public void Log_InAnyProgram_IsOnlyEverAddedTo(string sql)
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        book.Enter("D-101", null, EventKind.Cancelled, "", "called off", Guid.NewGuid());
        Assert.Contains("the log is only ever added to", Assert.Throws<SqliteException>(() => Run(sql)).Message, StringComparison.Ordinal);
        Assert.Single(book.Events("D-101"));
    }

    [Fact]
    public void Forget_Customer_LeavesNothingOfTheNameInTheFile()
    {
        using (var book = Open())
        {
            book.Record([TestBook.Piece("Quartz Zymurgy", "bow"), TestBook.Piece(cells: ("order", "D-2"))]);
            Assert.True(IsInFile("Quartz") && IsInFile("QUARTZ"));
            book.Forget("quartz zymurgy");
        }

        foreach (var part in new[] { "Quartz", "QUARTZ", "ZYM", "Zym" })
        {
            Assert.False(IsInFile(part), part);
        }

        bool IsInFile(string text) => File.ReadAllBytes(_test.Path).AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(text)) >= 0;
    }

    [Fact]
    public void Open_AtRest_IsOneFile()
    {
        using (var book = Open())
        {
            book.Record([TestBook.Piece()]);
        }

        Assert.Equal([_test.Path], Directory.GetFiles(Path.GetDirectoryName(_test.Path)!));
    }
}
