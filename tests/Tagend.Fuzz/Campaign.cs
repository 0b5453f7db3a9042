using System.Diagnostics;
using Tagend.Problems;

namespace Tagend.Fuzz;

/// <summary>What came of all runs on a target.</summary>
/// <param name="Faults">A line each, to be run again by its seed and number.</param>
public sealed record Tally(string Target, int Runs, int Accepted, TimeSpan Slowest, int SlowestRun, IReadOnlyList<string> Faults)
{
    public override string ToString() => FormattableString.Invariant(
        $"{Target}: {Runs:N0} runs, {Accepted:N0} accepted, {Runs - Accepted:N0} refused, slowest {Slowest.TotalMilliseconds:N0} ms (run {SlowestRun}), {Faults.Count} faults");
}

/// <summary>Many runs on one target by several threads. A run depends on the seed and its number alone.</summary>
/// <param name="trail">
/// A folder for the number of the run each thread is at, which outlives a crash, and for the inputs of runs with a fault; null
/// for none.
/// </param>
/// <param name="patience">A run that takes longer of its thread's time is a fault.</param>
public sealed class Campaign(string name, Func<ITarget> make, int seed, TimeSpan patience, string? trail)
{
    /// <summary>The first run of its kind is slow, for it is compiled; it is only a fault where it is slow so many times.</summary>
    private const int SlowTimes = 2;

    /// <summary>A run that takes longer by the clock does not end, however busy the machine.</summary>
    private static readonly TimeSpan Hang = TimeSpan.FromMinutes(5);

    private const int MostFaults = 50;

    private readonly Lock _lock = new();
    private readonly List<string> _faults = [];
    private volatile bool _isEnding;
    private int _last;
    private int _runs;
    private int _accepted;
    private (TimeSpan Time, int Run) _slowest;

    /// <exception cref="TimeoutException">A run does not end.</exception>
    public Tally Run(int first, int count, int threads)
    {
        _last = first - 1;
        var workers = Enumerable.Range(0, threads).Select(i => new Worker(this, first + count, trail is null ? null : Path.Combine(trail, $"{name}-{i}"))).ToList();
        while (!Array.TrueForAll([.. workers], w => w.HasEnded(TimeSpan.FromSeconds(1) / threads)))
        {
            if (workers.Find(w => w.IsStuck) is { } stuck)
            {
                throw new TimeoutException($"{Line(stuck.At)} has not ended in {Hang.TotalMinutes} minutes");
            }
        }

        return new Tally(name, _runs, _accepted, _slowest.Time, _slowest.Run, _faults);
    }

    /// <summary>Lets the runs that have begun end, and no more begin.</summary>
    public void End() => _isEnding = true;

    private string Line(int run) => $"{name}: ./build.sh fuzz {seed} 1 {name} {run}";

    private void RunOne(ITarget target, int run)
    {
        var (time, isAccepted, fault, input) = Tried(target, run);
        for (var times = 1; times < SlowTimes && fault is null && time > patience; times++)
        {
            time = TimeSpan.FromTicks(Math.Min(time.Ticks, Tried(target, run).Time.Ticks));
        }

        fault ??= time > patience ? FormattableString.Invariant($"took {time.TotalSeconds:0.0} s") : null;
        lock (_lock)
        {
            _runs++;
            _accepted += isAccepted ? 1 : 0;
            _slowest = time > _slowest.Time ? (time, run) : _slowest;
            if (fault is not null)
            {
                _faults.Add($"{Line(run)}: {fault}");
                _isEnding |= _faults.Count == MostFaults;
                if (trail is not null)
                {
                    File.WriteAllBytes(Path.Combine(trail, $"{name}-{run}.input"), input);
                }
            }
        }
    }

    private (TimeSpan Time, bool IsAccepted, string? Fault, byte[] Input) Tried(ITarget target, int run)
    {
        var mutation = new Mutation(new Random(unchecked((seed * 1_000_003) + run)), target.Tokens);
        var (isAccepted, fault) = (false, default(string));
        var start = ThreadTime.Now;
        try
        {
            isAccepted = target.Run(mutation);
        }
        catch (TagendException)
        {
            // A sentence, and that is what a broken world gets.
        }
        catch (FaultException e)
        {
            fault = e.Message;
        }
#pragma warning disable CA1031 // whatever the program throws is what is looked for
        catch (Exception e)
#pragma warning restore CA1031
        {
            fault = e.ToString();
        }

        return (ThreadTime.Now - start, isAccepted, fault, mutation.Spoiled);
    }

    /// <summary>A thread that takes one run after the other.</summary>
    private sealed class Worker
    {
        private readonly Campaign _campaign;
        private readonly Thread _thread;
        private readonly int _end;
        private readonly string? _trail;
        private long _since = Stopwatch.GetTimestamp();
        private volatile int _at;

        public Worker(Campaign campaign, int end, string? trail)
        {
            (_campaign, _end, _trail) = (campaign, end, trail);
            _thread = new Thread(RunAll) { IsBackground = true };
            _thread.Start();
        }

        public int At => _at;

        public bool IsStuck => Stopwatch.GetElapsedTime(Volatile.Read(ref _since)) > Hang;

        public bool HasEnded(TimeSpan wait) => _thread.Join(wait);

        private void RunAll()
        {
            using var target = _campaign.Make();
            using var trail = _trail is null ? null : File.OpenHandle(_trail, FileMode.Create, FileAccess.Write);
            for (var run = Interlocked.Increment(ref _campaign._last); run < _end && !_campaign._isEnding; run = Interlocked.Increment(ref _campaign._last))
            {
                _at = run;
                Volatile.Write(ref _since, Stopwatch.GetTimestamp());
                if (trail is not null)
                {
                    RandomAccess.Write(trail, System.Text.Encoding.ASCII.GetBytes($"{_campaign.Line(run),-60}\n"), 0);
                }

                _campaign.RunOne(target, run);
            }
        }
    }

    private ITarget Make() => make();
}
