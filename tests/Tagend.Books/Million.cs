using System.Diagnostics;
using Tagend.Addresses;
using Tagend.Jobs;

namespace Tagend.Books;

/// <summary>A book of very many jobs, and how long its searches take.</summary>
public sealed class Million(string root, int jobs)
{
    private const int Customers = 20_000;
    private const int Rounds = 5;
    private const int FirstPage = 500;
    private const int Lots = 2_000;

    private static readonly string[] Cams = ["hybrid cam", "twin cam", "single cam", "binary cam"];

    private (string Name, JobSearch Search)[] Searches =>
    [
        ("an order", new JobSearch { Order = Order(jobs / 2) }),
        ("a customer's part that few jobs have", new JobSearch { Customer = $"customer {Customers / 2}" }),
        ("a customer's part that all jobs have", new JobSearch { Customer = "demo cus" }),
        ("a customer's part that none has", new JobSearch { Customer = "nobody" }),
        ("a customer's part of two characters that many have", new JobSearch { Customer = "77" }),
        ("a customer's part of two characters that none has", new JobSearch { Customer = "zz" }),
        ("a bow's part that few jobs have", new JobSearch { Bow = "binary cam, 77 lb" }),
        ("a bow's part that all jobs have", new JobSearch { Bow = "compound" }),
        ("parts of customer and bow", new JobSearch { Customer = "omer 77", Bow = "hybrid" }),
        ("a customer's part and an order", new JobSearch { Customer = "demo", Order = Order(jobs / 3) }),
        ("a lot", new JobSearch { Lot = "lot 77" }),
        ("a day", new JobSearch { From = Day(jobs / 2), To = Day(jobs / 2) }),
        ("the last week", new JobSearch { From = Day(jobs - 1).AddDays(-7) }),
    ];

    private int ADay => Math.Max(1, jobs / 1500);

    /// <summary>Enters the jobs, and a build with a lot for some of them.</summary>
    public void Fill(string address)
    {
        var pieces = new Pieces(root);
        using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
        foreach (var part in Enumerable.Range(0, jobs).Chunk(10_000))
        {
            book.Record(part.Select(i => pieces.Of(
                Order(i), $"Demo customer {i * 7919L % Customers}", $"compound bow, {Cams[i % 4]}, {40 + (i % 41)} lb", i / ADay)));
        }

        foreach (var i in Enumerable.Range(0, Lots))
        {
            var job = (int)(i * 104_729L % jobs);
            book.Log(pieces.Of(Order(job), day: job / ADay).Spec, pieces.Built([$"LOT {i % 200}"]) with { Spools = [] }, Guid.NewGuid());
        }
    }

    /// <summary>The median times to the first 500 jobs of each search, and the memory that a list of all takes.</summary>
    public IEnumerable<string> Times(string address)
    {
        using var book = JobBookAddressReader.Read(address).OpenExisting(TimeProvider.System)!;
        foreach (var (name, search) in Searches)
        {
            var found = 0;
            var times = Enumerable.Range(0, Rounds).Select(_ =>
            {
                var started = Stopwatch.GetTimestamp();
                found = book.Find(search).Take(FirstPage).Count();
                return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            }).Order().ToList();
            yield return FormattableString.Invariant($"  {name}: {times[Rounds / 2]:0.0} ms, {times[^1]:0.0} at most ({found} jobs)");
        }

        var (all, most) = (0, 0L);
        foreach (var _ in book.Find(new JobSearch()))
        {
            most = ++all % 50_000 == 0 ? Math.Max(most, GC.GetTotalMemory(forceFullCollection: true)) : most;
        }

        yield return FormattableString.Invariant($"  a list of all {all} jobs: {most / 1e6:0.0} MB held at most");
    }

    private static string Order(int i) => FormattableString.Invariant($"M-{i}");

    private DateOnly Day(int i) => new DateOnly(2026, 3, 14).AddDays(i / ADay);
}
