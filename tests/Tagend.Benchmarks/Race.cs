namespace Tagend.Benchmarks;

/// <summary>Programs measured in turns, so that all meet the same machine.</summary>
/// <param name="Programs">The first is what the others are compared with.</param>
internal sealed record Race(string Title, int Rounds, IReadOnlyList<Contender> Programs)
{
    /// <param name="folder">For what they make; gone afterwards.</param>
    public IReadOnlyList<Standing> Run(string folder)
    {
        Directory.CreateDirectory(folder);
        var failures = new string?[Programs.Count];
        var rounds = new List<Outcome[]>();
        for (var round = Rounds > 3 ? -1 : 0; round < Rounds; round++) // where times are short the first warms the disk's cache
        {
            Console.Error.WriteLine($"{Title}: round {round + 1} of {Rounds}");
            var outcomes = Programs.Select((p, i) => failures[i] is null ? p.Run(folder) : new Outcome(0, 0, 0, 0, failures[i])).ToArray();
            failures = [.. outcomes.Select(o => o.Failure)];
            if (round >= 0)
            {
                rounds.Add(outcomes);
            }
        }

        Directory.Delete(folder, recursive: true);
        return [.. Programs.Select((p, i) => failures[i] is { } failure
            ? new Standing(Title, p, failure)
            : new Standing(Title, p, null)
            {
                Ratio = Programs.Count > 1 && failures[0] is null ? Median(rounds.Select(r => r[i].Milliseconds / r[0].Milliseconds)) : null,
                Milliseconds = Median(rounds.Select(r => r[i].Milliseconds)),
                CpuMilliseconds = Median(rounds.Select(r => r[i].CpuMilliseconds)),
                PeakMegabytes = Median(rounds.Select(r => r[i].PeakMegabytes)),
                Bytes = rounds[0][i].Bytes,
            })];
    }

    private static double Median(IEnumerable<double> numbers)
    {
        var sorted = numbers.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}

/// <summary>What became of a program in a race.</summary>
/// <param name="Failure">Why it did not take part; null where it did.</param>
internal sealed record Standing(string Race, Contender Program, string? Failure)
{
    /// <summary>Its time to that of the first program in the same round, the median of all rounds.</summary>
    public double? Ratio { get; init; }

    public double Milliseconds { get; init; }

    public double CpuMilliseconds { get; init; }

    public double PeakMegabytes { get; init; }

    public long Bytes { get; init; }
}
