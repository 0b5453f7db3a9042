using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Measures;
using Tagend.Specs;

namespace Tagend.Books;

/// <summary>What came of a trial.</summary>
/// <param name="Acknowledged">Builds that the book said it had.</param>
/// <param name="Refused">Writings that it said it did not take: the book was busy for too long, or its server away.</param>
/// <param name="Faults">Whatever is not as it must be.</param>
public sealed record Outcome(string Trial, int Acknowledged, int Refused, IReadOnlyList<string> Faults)
{
    public override string ToString() =>
        $"{Trial}: {Acknowledged} builds acknowledged, {Refused} refused, " + (Faults.Count == 0 ? "each acknowledged one there once" : $"{Faults.Count} FAULTS:\n  {string.Join("\n  ", Faults.Take(20))}");
}

/// <summary>Writers on one book, and what is in it afterwards.</summary>
/// <param name="root">The folder that holds Tagend.slnx.</param>
/// <param name="address">Of a book that is not begun yet.</param>
/// <param name="folder">For what the writers note.</param>
public sealed class Trial(string root, string address, string folder)
{
    private static readonly Length Received = Length.FromMillimeters(50_000_000);

    private readonly List<Writer> _writers = [];

    /// <summary>Begins the book, with a spool that every build takes a meter from.</summary>
    public void Begin()
    {
        using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
        book.Spools.Receive([new NewSpool(StockKind.Strand, "hmpe-0145", "black", "H88-4", Received, new DateOnly(2026, 3, 14))], Guid.NewGuid());
    }

    /// <summary>Programs that write at once until they are done, or until what is done beside them is.</summary>
    /// <param name="beside">Null where they are left alone.</param>
    public void Write(int programs, int writings, Action? beside = null)
    {
        var running = Enumerable.Range(0, programs).Select(_ => Next(writings).Start(root)).ToList();
        if (beside is not null)
        {
            SpinWait.SpinUntil(() => { Thread.Sleep(20); return _writers.TrueForAll(w => w.IsWriting); }, TimeSpan.FromSeconds(60));
            beside();
        }

        running.ForEach(p => End(p, kill: beside is not null));
    }

    /// <summary>Two programs write, and are killed at a random instant, again and again.</summary>
    /// <param name="kills">Programs that are killed.</param>
    public void Kill(int kills, Random random)
    {
        for (var killed = 0; killed < kills; killed += 2)
        {
            Writer[] writers = [Next(100_000), Next(100_000)];
            List<Process> running = [.. writers.Select(w => w.Start(root))];
            SpinWait.SpinUntil(() => { Thread.Sleep(5); return Array.TrueForAll(writers, w => w.IsWriting); }, TimeSpan.FromSeconds(60));
            Thread.Sleep(random.Next(0, 300));
            foreach (var program in running)
            {
                End(program, kill: true);
                Thread.Sleep(random.Next(0, 30));
            }
        }
    }

    /// <summary>Every acknowledged build is there once, none that was sent is there twice, and the spool has lost a meter for each.</summary>
    public Outcome Result(string trial)
    {
        using var book = JobBookAddressReader.Read(address).OpenExisting(TimeProvider.System)!;
        var jobs = book.Find(new JobSearch()).ToDictionary(j => j.Order);
        var faults = new List<string>();
        foreach (var order in _writers.SelectMany(w => w.Acknowledged.Select(n => Writer.OrderOf(w.Name, n))))
        {
            if (!jobs.TryGetValue(order, out var job) || job.Builds.Count == 0)
            {
                faults.Add($"{order} was acknowledged and is not there");
            }
        }

        faults.AddRange(jobs.Values.Where(j => j.Builds.Count > 1).Select(j => $"{j.Order} has {j.Builds.Count} builds"));
        var builds = book.Built().Sum(j => j.Builds.Count);
        var spool = book.Spools.Find(1)!;
        if (spool.Builds != builds || spool.Left != Received - Length.FromMillimeters(1000.0 * builds))
        {
            faults.Add($"spool 1 has {spool.Left.Millimeters} mm left after {builds} builds of a meter each");
        }

        return new Outcome(trial, _writers.Sum(w => w.Acknowledged.Count), _writers.Sum(w => w.Refused), faults);
    }

    /// <summary>What SQLite itself finds wrong with a book's file.</summary>
    public IReadOnlyList<string> Integrity()
    {
        using var connection = new SqliteConnection($"Data Source={address};Pooling=False");
        connection.Open();
        using var check = connection.CreateCommand();
        check.CommandText = "INSERT INTO job_texts (job_texts) VALUES ('integrity-check'); PRAGMA integrity_check";
        using var reader = check.ExecuteReader();
        var said = new List<string>();
        while (reader.Read())
        {
            said.Add(reader.GetString(0));
        }

        return said is ["ok"] ? [] : said;
    }

    private Writer Next(int writings)
    {
        var name = $"W{_writers.Count}";
        _writers.Add(new Writer(address, Path.Combine(folder, name), name, 1, writings));
        return _writers[^1];
    }

    private static void End(Process program, bool kill)
    {
        if (kill && !program.HasExited)
        {
            program.Kill();
        }

        program.WaitForExit();
        program.Dispose();
    }
}
