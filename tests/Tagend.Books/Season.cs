using System.Diagnostics;
using System.Globalization;
using Tagend.Addresses;
using Tagend.Jobs;
using Tagend.Problems;

namespace Tagend.Books;

/// <summary>Two terminals on one book: both print the whole season, and each builds half of it.</summary>
public sealed class Season(string root, string address)
{
    private const string Verb = "season";
    private const int Volume = 250;

    /// <summary>As the command line says it.</summary>
    /// <returns>False where it says something else.</returns>
    public static bool Run(string[] args, string root)
    {
        if (args is not [Verb, var address, var half, var count])
        {
            return false;
        }

        new Season(root, address).Terminal(int.Parse(half, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture));
        return true;
    }

    /// <summary>Both terminals at once.</summary>
    /// <returns>What came of it.</returns>
    public Outcome Share(string trial, int count)
    {
        var terminals = Enumerable.Range(0, 2).Select(half => Process.Start(new ProcessStartInfo(
            "dotnet",
            [typeof(Season).Assembly.Location, Verb, address, half.ToString(CultureInfo.InvariantCulture), count.ToString(CultureInfo.InvariantCulture)])
        { WorkingDirectory = root })!).ToList();
        var faults = new List<string>();
        foreach (var terminal in terminals)
        {
            terminal.WaitForExit();
            faults.AddRange(terminal.ExitCode == 0 ? [] : new[] { $"a terminal ended with exit code {terminal.ExitCode}" });
        }

        using var book = JobBookAddressReader.Read(address).OpenExisting(TimeProvider.System)!;
        var jobs = book.Find(new JobSearch()).ToList();
        faults.AddRange(jobs.Count == count ? [] : new[] { $"{jobs.Count} pieces of {count}" });
        faults.AddRange(jobs.Where(j => j.Builds.Count != 1).Select(j => $"{j.Order} has {j.Builds.Count} builds"));
        return new Outcome(trial, jobs.Sum(j => j.Builds.Count), 0, faults);
    }

    private void Terminal(int half, int count)
    {
        var pieces = new Pieces(root);
        foreach (var volume in Enumerable.Range(1, count).Chunk(Volume))
        {
            using var book = JobBookAddressReader.Read(address).OpenOrBegin(TimeProvider.System);
            Again(() => book.Record(volume.Select(n => pieces.Of(OrderOf(n)))));
            foreach (var number in volume.Where(n => n % 2 == half))
            {
                var key = Guid.NewGuid();
                Again(() => book.Log(pieces.Of(OrderOf(number)).Spec, pieces.Built([]) with { Spools = [] }, key));
            }
        }
    }

    /// <summary>Sends a writing until it is acknowledged: a book in a file is busy while the other terminal writes without a pause.</summary>
    private static void Again<T>(Func<T> write)
    {
        while (true)
        {
            try
            {
                write();
                return;
            }
            catch (TagendException)
            {
                Thread.Sleep(100);
            }
        }
    }

    private static string OrderOf(int number) => FormattableString.Invariant($"S-{number}");
}
