using Microsoft.Data.Sqlite;
using Tagend.Catalog;
using Tagend.Fits;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Fuzz;

/// <summary>
/// Job books with flipped bits, wrong bytes and lost parts, or with a value of another type in any column of any table. What
/// is found in them is what was entered, and what a shop learns of them is what it learned before, or the book is damaged.
/// </summary>
internal sealed class BooksTarget : ITarget
{
    private const int Logged = 12;
    private const string Sheet = "letter-2x5";

    private static readonly DateTimeOffset Now = new(2026, 3, 14, 9, 30, 0, TimeSpan.Zero);

    private readonly Corpus _corpus;
    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;
    private readonly BuildSpec _spec;
    private readonly IReadOnlyList<byte[]> _books;
    private readonly IReadOnlyList<(string Table, string Column)> _columns;
    private readonly IReadOnlyList<PrintedJob> _jobs;
    private readonly IReadOnlyList<FittedTakeUp?> _fits;
    private readonly IReadOnlyList<object> _beside;

    public BooksTarget(Corpus corpus)
    {
        _corpus = corpus;
        var builds = corpus.Sets.SelectMany(s => s.Builds).ToList();
        _spec = builds[0].Spec;
        using (var book = Open())
        {
            book.Record(builds);
            var spool = new NewSpool(StockKind.Strand, _spec.Bundle.Material, "", "H88-4", Length.FromInches(36_000), new DateOnly(2026, 3, 14));
            book.Spools.Receive([spool, spool with { Lot = "H88-5" }], new Guid(1, 1, 0, new byte[8]));
            book.Spools.Mount(1, "bench 1");
            book.Spools.Count(2, Length.FromInches(9_000), new Guid(2, 1, 0, new byte[8]));
            for (var i = 0; i < Logged; i++)
            {
                var spec = builds[i % 3].Spec;
                var built = BuiltQuestion.CardOf(spec) with { Turns = spec.Twist.Turns + (i % 5), Who = "AB", Measured = spec.FinishedLength - Length.FromInches(0.01 * i), Lots = ["H88-4"], Spools = [new SpoolUse(1, Length.FromInches(900))] };
                book.Log(spec, built, new Guid(i, 0, 0, new byte[8]));
            }

            book.Enter(_spec.Order, null, EventKind.Shipped, "AB", "", new Guid(3, 1, 0, new byte[8]));
            book.KeepLabel(Sheet, 4);
            _jobs = [.. book.Find(new JobSearch()).Select(j => j with { Number = 0 })];
            _fits = Fits(book);
            _beside = Beside(book);
        }

        _books = [File.ReadAllBytes(Book)];
        _columns = Read(
            "SELECT t.name, c.name FROM sqlite_master t, pragma_table_info(t.name) c WHERE t.type = 'table' ORDER BY 1, 2",
            row => (row.GetString(0), row.GetString(1)));
    }

    public IReadOnlyList<byte[]> Tokens { get; } =
        Corpus.Words("TE1*", "*E", "2026-03-14", "2026-03-14T09:30:00Z", "CREATE TABLE", "jobs", "builds", "spools", "spool_uses", "events", "label_sheets", "STRICT", "SQLite format 3");

    private string Book => Path.Combine(_folder, "book.db");

    public bool Run(Mutation mutation)
    {
        switch (mutation.Random.Next(4))
        {
            case 0:
                File.WriteAllBytes(Book, mutation.Of(_books));
                break;
            case 1:
                File.WriteAllBytes(Book, _books[0]);
                PlantValue(mutation);
                break;
            default:
                File.WriteAllBytes(Book, Flipped(mutation));
                break;
        }

        mutation.Spoiled = File.ReadAllBytes(Book);
        using var book = Open();
        foreach (var job in book.Find(new JobSearch()).Concat(book.Find(new JobSearch { Customer = "exa" })).Append(book.Newest(_spec.Order, _spec.Piece)))
        {
            if (job is not null && !_jobs.Contains(job with { Number = 0 }))
            {
                throw new FaultException($"nobody has entered {job}");
            }
        }

        if (!Fits(book).SequenceEqual(_fits))
        {
            throw new FaultException("the shop learns something else");
        }

        if (Beside(book).Except(_beside).FirstOrDefault() is { } other)
        {
            throw new FaultException($"nobody has entered {other}");
        }

        var logged = book.Log(_spec, BuiltQuestion.CardOf(_spec), Guid.NewGuid());
        book.LeaveOut([logged.Number], isLeftOut: true);
        return true;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>What the book has beside jobs and builds.</summary>
    private List<object> Beside(IJobBook book) =>
        [.. book.Spools.All(withFinished: true), .. book.Events(_spec.Order), .. book.NextLabel(Sheet) is { } label ? new object[] { label } : []];

    private List<FittedTakeUp?> Fits(IJobBook book) => [.. TakeUpFit.All(BuildPoint.Of(book.Built()), _corpus.Catalog).Select(f => f.Fit)];

    private IJobBook Open()
    {
        File.Delete(Book + "-journal");
        return new SqliteAddress(Book, TimeSpan.FromSeconds(1)).OpenOrBegin(new StoppedClock());
    }

    private byte[] Flipped(Mutation mutation)
    {
        var bytes = (byte[])_books[0].Clone();
        for (var flips = mutation.Random.Next(1, 8); flips > 0; flips--)
        {
            bytes[mutation.Random.Next(bytes.Length)] ^= (byte)(1 << mutation.Random.Next(8));
        }

        return bytes;
    }

    /// <summary>Puts a value of any type in a column of a row, whatever the table allows.</summary>
    private void PlantValue(Mutation mutation)
    {
        var (table, column) = mutation.Pick(_columns);
        string[] values = ["NULL", "''", "'x'", "x'00ff'", "0", "-1", "9223372036854775807", "1e308", "-0.5", "9e999", $"{column} || '0'", $"{column} + 1", $"-{column}"];
        using var connection = new SqliteConnection($"Data Source={Book};Pooling=False");
        connection.Open();
        using var loosen = connection.CreateCommand();
        loosen.CommandText =
            "PRAGMA writable_schema = ON; UPDATE sqlite_master SET sql = replace(replace(sql, ') STRICT', ')'), 'NOT NULL', ''); PRAGMA writable_schema = RESET";
        loosen.ExecuteNonQuery();
        using var plant = connection.CreateCommand();
        plant.CommandText =
            $"UPDATE {table} SET {column} = {mutation.Pick(values)} WHERE rowid IN (SELECT rowid FROM {table} LIMIT 1 OFFSET {mutation.Random.Next(4)})";
        try
        {
            plant.ExecuteNonQuery();
        }
        catch (SqliteException)
        {
            // A key takes whole numbers alone, and the tables of the trigrams have rules of their own: the book is whole then.
        }
    }

    private List<T> Read<T>(string sql, Func<SqliteDataReader, T> read)
    {
        using var connection = new SqliteConnection($"Data Source={Book};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(read(reader));
        }

        return rows;
    }

    private sealed class StoppedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => Now;
    }
}
