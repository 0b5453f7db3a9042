using System.Text.RegularExpressions;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

/// <summary>A job book on a server: what every kind does, and what a server alone does.</summary>
public sealed class PostgresJobBookTests(PostgresServer server) : JobBookContract, IClassFixture<PostgresServer>
{
    /// <summary>Made once, though several threads ask for it.</summary>
    private readonly Lazy<string> _address = new(server.NewDatabase);

    protected override JobBookAddress Address => JobBookAddressReader.Read(_address.Value);

    protected override JobBookAddress NewAddress() => JobBookAddressReader.Read(server.NewDatabase());

    private string Name => new Uri(_address.Value.Replace("@/", "@host/", StringComparison.Ordinal)).AbsolutePath[1..];

    protected override string VersionOne(OldJob job) => PostgresVersionOne.With(job.Order, job.Revision, job.Tag, job.Seal);

    protected override void Run(string sql)
    {
        _ = Address;
        server.Run(Name, $"SET search_path = tagend, public; {sql}");
    }

    [Fact]
    public void Open_BookOfVersionOneWithABuild_KeepsIt()
    {
        Run(VersionOne(Old) + PostgresVersionOne.Build);
        using var book = Open("bench 1");
        var build = Assert.Single(Assert.Single(book.Built()).Builds);
        Assert.Equal((1, 45.5, "AB", "", false), (build.Number, build.Built.Turns, build.Built.Who, build.Bench, build.IsStruck));
        Assert.Equal("OLD-1", Assert.Single(book.Find(new JobSearch { Lot = "h1" })).Order);
        Assert.Equal(2, book.Correct(1, TestBook.Built with { Turns = 44 }, "CD", "read wrong", Guid.NewGuid()).Number);
        Assert.Equal([true, false], book.Built()[0].Builds.Select(b => b.IsStruck));
    }

    [Fact]
    public void Open_BookOfALaterVersion_IsRefused()
    {
        Open().Dispose();
        server.Run(Name, "UPDATE tagend.book SET version = 1000");
        var said = $"^{Regex.Escape(_address.Value)}: the job book has version 1000, and this program knows versions to [0-9]+: use the later Tagend that wrote it; nothing in the book was changed$";
        Assert.Matches(said, Assert.Throws<TagendException>(() => Open()).Message);
        Assert.Matches(said, Assert.Throws<TagendException>(() => Address.OpenExisting(TimeProvider.System)).Message);
    }

    [Fact]
    public void Record_AfterALaterProgramHasChangedTheBook_IsRefused()
    {
        using var book = Open();
        server.Run(Name, "UPDATE tagend.book SET version = 1000");
        Assert.Contains("has version 1000", Assert.Throws<TagendException>(() => book.Record([TestBook.Piece()])).Message, StringComparison.Ordinal);
        Assert.Equal(0L, server.Run(Name, "SELECT count(*) FROM tagend.jobs"));
    }

    [Theory]
    [InlineData("UPDATE events SET reason = 'other'")]
    [InlineData("DELETE FROM events")]
    public void Log_InAnyProgram_IsOnlyEverAddedTo(string sql)
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        book.Enter("D-101", null, EventKind.Cancelled, "", "called off", Guid.NewGuid());
        Assert.Contains("the log is only ever added to", Assert.ThrowsAny<Exception>(() => Run(sql)).Message, StringComparison.Ordinal);
        Assert.Single(book.Events("D-101"));
    }

    [Fact]
    public void Open_NoSuchDatabase_SaysHowItIsMade()
    {
        _ = Address;
        var address = server.AddressOf("nowhere");
        Assert.Equal(
            $"{address}: the server has no such database; make it with: createdb --owner USER DATABASE",
            Assert.Throws<TagendException>(() => JobBookAddressReader.Read(address).OpenExisting(TimeProvider.System)).Message);
    }

    [Fact]
    public void Record_ServerThatIsReadOnly_SaysSo()
    {
        using (Open())
        {
            server.Run(Name, $"ALTER DATABASE {Name} SET default_transaction_read_only = on");
        }

        using var book = Open();
        Assert.Equal(
            $"{_address.Value}: the server is read-only, maybe a standby; name the server that takes writes",
            Assert.Throws<TagendException>(() => book.Record([TestBook.Piece()])).Message);
    }

    [Fact]
    public void Open_UserWhoMayMakeNothing_SaysWhatToDo()
    {
        _ = Address;
        server.Run(Name, "CREATE ROLE guest LOGIN");
        var fault = Assert.Throws<TagendException>(() => JobBookAddressReader.Read(_address.Value.Replace("shop@", "guest@", StringComparison.Ordinal)).OpenOrBegin(TimeProvider.System));
        Assert.Contains("may not do this in the database", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("jobs", "laid_up_nm = laid_up_nm + 65536", "job 1 does not fit its check")]
    [InlineData("builds", "turns = 44.5", "build 1 does not fit its check")]
    [InlineData("jobs", "builds = 2", "of 2 builds of job 1 1 are found")]
    public void Built_RowThatWasChanged_IsDamage(string table, string change, string said)
    {
        using var book = Open();
        book.Log(TestBook.Piece().Spec, TestBook.Built, Guid.NewGuid());
        Run($"UPDATE {table} SET {change}");
        Assert.Contains($"the job book is damaged ({said})", Assert.Throws<TagendException>(() => book.Built()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_ConnectionThatIsCut_IsSentAgainAndEnteredOnce()
    {
        using var book = Open();
        book.Record([TestBook.Piece()]);
        for (var i = 0; i < 5; i++)
        {
            server.Run("postgres", $"SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = '{Name}'");
            book.Log(TestBook.Piece().Spec, TestBook.Built with { Turns = i }, Guid.NewGuid());
        }

        Assert.Equal([0, 1, 2, 3, 4], Assert.Single(book.Find(new JobSearch())).Builds.Select(b => b.Built.Turns));
    }
}

/// <summary>A server that is stopped and started again, which no other test may share.</summary>
public sealed class PostgresRestartTests(PostgresServer server) : IClassFixture<PostgresServer>
{
    [Fact]
    public void Open_ServerThatIsAway_SaysSo()
    {
        var address = server.NewDatabase();
        using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
        server.Stop();
        foreach (var use in new Action[] { () => JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System), () => book.Record([TestBook.Piece()]) })
        {
            Assert.StartsWith($"{address}: the server of the job book does not answer (", Assert.Throws<TagendException>(use).Message, StringComparison.Ordinal);
        }

        server.Start();
        Assert.Equal(1, book.Record([TestBook.Piece()]));
    }

    [Fact]
    public async Task Log_WhileTheServerIsRestarted_EntersEachOnce()
    {
        var address = server.NewDatabase();
        JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System).Dispose();
        using var stop = new CancellationTokenSource();
        var benches = Enumerable.Range(0, 3).Select(bench => Task.Run(() =>
        {
            using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
            var logged = new List<double>();
            while (!stop.IsCancellationRequested)
            {
                var turns = (bench * 100_000) + logged.Count;
                book.Log(TestBook.Piece().Spec, TestBook.Built with { Turns = turns }, Guid.NewGuid());
                logged.Add(turns);
            }

            return logged;
        })).ToList();
        for (var i = 0; i < 4; i++)
        {
            await Task.Delay(300, TestContext.Current.CancellationToken);
            server.Stop();
            server.Start();
        }

        stop.Cancel();
        var acknowledged = (await Task.WhenAll(benches)).SelectMany(b => b).ToList();
        using var all = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
        Assert.Equal(acknowledged.Order(), Assert.Single(all.Built()).Builds.Select(b => b.Built.Turns).Order());
        Assert.True(acknowledged.Count > 10, $"{acknowledged.Count} entries");
    }
}
