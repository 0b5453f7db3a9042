using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What the job book has acknowledged stays, whenever the program is killed.</summary>
public class KilledProgramTests
{
    private const int Entries = 40;
    private const int SpoolsAtOnce = 3;
    private static readonly int Kills = TagendProgram.IsLong ? 200 : 60;

    [Fact]
    public void Program_KilledAtRandomMoments_LosesNothingItAcknowledged()
    {
        using var folder = TagendProgram.NewFolder();
        var path = folder["book.db"];
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--only", "cards", "--job-book", path);
        var (builds, orders, lots) = (new Dictionary<long, string>(), new HashSet<string>(), new HashSet<string>());
        var whole = Stopwatch.StartNew();
        KilledReceiving(folder, path, "whole", TimeSpan.FromMinutes(1));
        whole.Stop();
        var random = new Random(20260314);
        var killedAtWork = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            if (kill % 4 == 0)
            {
                orders.UnionWith(KilledPrinting(folder, path, $"K-{kill}", random) ? [$"K-{kill}"] : []);
            }
            else if (kill % 4 == 2)
            {
                lots.UnionWith(KilledReceiving(folder, path, $"L-{kill}", whole.Elapsed * random.NextDouble()) ? [$"L-{kill}"] : []);
            }
            else
            {
                var builders = Enumerable.Range(0, Entries).Select(e => $"{kill}-{e}").ToList();
                var said = KilledLogging(path, builders, random);
                foreach (Match match in Regex.Matches(said, @"^build (\d+) logged: .*, (\S+)\n", RegexOptions.Multiline))
                {
                    builds.Add(long.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture), match.Groups[2].Value);
                }

                killedAtWork += said.Length > 0 && !said.Contains(builders[^1], StringComparison.Ordinal) ? 1 : 0;
            }

            AssertAllThere(path, builds, orders, lots);
        }

        TagendProgram.NoteLong($"killed\t{Kills} times\t{builds.Count} builds, {orders.Count} orders, {lots.Count} lots acknowledged\t{killedAtWork} while builds were logged");
        Assert.True(killedAtWork >= Kills / 8, $"only {killedAtWork} of {Kills} kills came while entries were made");
        Assert.InRange(orders.Count, 1, Kills / 4);
        Assert.InRange(lots.Count, 0, Kills / 4);
        Assert.True(builds.Count >= Kills / 4, $"only {builds.Count} builds were acknowledged");
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var check = connection.CreateCommand();
        check.CommandText = "PRAGMA integrity_check";
        Assert.Equal("ok", check.ExecuteScalar());
    }

    /// <summary>Lets the program log builds and kills it, some time after its start or its first entry.</summary>
    private static string KilledLogging(string path, IEnumerable<string> builders, Random random)
    {
        using var process = TagendProgram.Start(Path.GetDirectoryName(path)!, "built", "--again", "--job-book", path);
        foreach (var who in builders)
        {
            process.StandardInput.Write($"1001/string\n61 1/4\n45\n60 5/16\n300\n20\n{who}\n\n");
        }

        process.StandardInput.Close();
        var waitsForFirst = random.Next(4) > 0;
        var after = random.Next(0, 120);
        var first = waitsForFirst ? process.StandardOutput.ReadLine() + "\n" : "";
        return first + Kill(process, after);
    }

    /// <summary>Lets the program print an order and kills it, some time after its start or when its papers are there.</summary>
    /// <returns>It said that the order is in the book.</returns>
    private static bool KilledPrinting(TagendProgram.Folder folder, string path, string order, Random random)
    {
        var orders = folder.Write($"{order}.csv", $"order,piece,kind,finished_length,material,strands\n{order},string,plain,60,hmpe-0145,24\n");
        using var process = TagendProgram.Start(
            folder.Path, "print", orders, "--out", folder["out"], "--only", "cards", "--job-book", path);
        process.StandardInput.Close();
        var waitsForPapers = random.Next(4) > 0;
        var after = random.Next(0, 60);
        while (waitsForPapers && process.StandardOutput.ReadLine() is { } line && !line.Contains("printed, ", StringComparison.Ordinal))
        {
        }

        return Kill(process, after).Contains("1 piece entered in the job book\n", StringComparison.Ordinal);
    }

    /// <summary>Lets the program receive spools of a lot and kills it after a while, if it still runs.</summary>
    /// <returns>It said that they are received.</returns>
    private static bool KilledReceiving(TagendProgram.Folder folder, string path, string lot, TimeSpan after)
    {
        using var process = TagendProgram.Start(
            folder.Path, "spools", "receive", "polyester-0180", "--lot", lot, "--length", "900 m", "--count", $"{SpoolsAtOnce}", "--out", folder["out"], "--job-book", path);
        process.StandardInput.Close();
        process.WaitForExit(after);
        return Kill(process, 0).Contains("received", StringComparison.Ordinal);
    }

    private static string Kill(Process process, int after)
    {
        Thread.Sleep(after);
        process.Kill();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said;
    }

    private static void AssertAllThere(string path, Dictionary<long, string> builds, HashSet<string> orders, HashSet<string> lots)
    {
        using var book = new SqliteAddress(path).OpenExisting(TimeProvider.System)!;
        var jobs = book.Find(new JobSearch()).ToList();
        var found = jobs.SelectMany(j => j.Builds).ToDictionary(b => b.Number, b => b.Built.Who);
        Assert.All(builds, b => Assert.Equal(b.Value, found.GetValueOrDefault(b.Key)));
        Assert.Empty(orders.Except(jobs.Select(j => j.Order)));
        var spools = book.Spools.All(withFinished: true).CountBy(s => s.Spool.Lot).ToDictionary();
        Assert.All(spools.Values, count => Assert.Equal(SpoolsAtOnce, count));
        Assert.Empty(lots.Except(spools.Keys));
    }
}
