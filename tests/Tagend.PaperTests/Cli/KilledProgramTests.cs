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
    private const int Kills = 200;
    private const int Entries = 40;

    [Fact]
    public void Program_KilledAtRandomMoments_LosesNothingItAcknowledged()
    {
        using var folder = TagendProgram.NewFolder();
        var path = folder["book.db"];
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--only", "cards", "--job-book", path);
        var (builds, orders) = (new Dictionary<long, string>(), new HashSet<string>());
        var random = new Random(20260314);
        var killedAtWork = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            if (kill % 4 == 0)
            {
                orders.UnionWith(KilledPrinting(folder, path, $"K-{kill}", random) ? [$"K-{kill}"] : []);
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

            AssertAllThere(path, builds, orders);
        }

        Assert.True(killedAtWork >= Kills / 4, $"only {killedAtWork} of {Kills} kills came while entries were made");
        Assert.InRange(orders.Count, 1, Kills / 4);
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
            process.StandardInput.Write($"1001/string\n61 1/4\n45\n60 5/16\n300\n20\n{who}\n");
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

    private static string Kill(Process process, int after)
    {
        Thread.Sleep(after);
        process.Kill();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said;
    }

    private static void AssertAllThere(string path, Dictionary<long, string> builds, HashSet<string> orders)
    {
        using var book = new SqliteAddress(path).OpenExisting(TimeProvider.System)!;
        var jobs = book.Find(new JobSearch()).ToList();
        var found = jobs.SelectMany(j => j.Builds).ToDictionary(b => b.Number, b => b.Built.Who);
        Assert.All(builds, b => Assert.Equal(b.Value, found.GetValueOrDefault(b.Key)));
        Assert.Empty(orders.Except(jobs.Select(j => j.Order)));
    }
}
