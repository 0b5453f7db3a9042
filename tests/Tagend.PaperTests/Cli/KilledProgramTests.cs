using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Tagend.Jobs;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>What the job book has acknowledged stays, whenever the program is killed.</summary>
public class KilledProgramTests
{
    private const int Kills = 200;
    private const int Entries = 40;

    [Fact]
    public void Built_KilledAtRandomMoments_LosesNothingItAcknowledged()
    {
        using var folder = TagendProgram.NewFolder();
        var path = folder["book.db"];
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--out", folder["out"], "--only", "cards", "--job-book", path);
        var acknowledged = new Dictionary<long, string>();
        var random = new Random(20260314);
        var killedAtWork = 0;
        for (var kill = 0; kill < Kills; kill++)
        {
            var builders = Enumerable.Range(0, Entries).Select(e => $"{kill}-{e}").ToList();
            var said = Killed(path, builders, random);
            foreach (Match match in Regex.Matches(said, @"^build (\d+) logged: .*, (\S+)\n", RegexOptions.Multiline))
            {
                acknowledged.Add(long.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), match.Groups[2].Value);
            }

            killedAtWork += said.Length > 0 && !said.Contains(builders[^1], StringComparison.Ordinal) ? 1 : 0;
            AssertAllThere(path, acknowledged);
        }

        Assert.True(killedAtWork >= Kills / 4, $"only {killedAtWork} of {Kills} kills came while entries were made");
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var check = connection.CreateCommand();
        check.CommandText = "PRAGMA integrity_check";
        Assert.Equal("ok", check.ExecuteScalar());
    }

    /// <summary>Lets the program log builds and kills it, some time after its start or its first entry.</summary>
    private static string Killed(string path, IEnumerable<string> builders, Random random)
    {
        using var process = TagendProgram.Start(Path.GetDirectoryName(path)!, "built", "--job-book", path);
        foreach (var who in builders)
        {
            process.StandardInput.Write($"1001/string\n61 1/4\n45\n60 5/16\n300\n20\n{who}\n");
        }

        process.StandardInput.Close();
        var waitsForFirst = random.Next(4) > 0;
        var after = random.Next(0, 120);
        var first = waitsForFirst ? process.StandardOutput.ReadLine() + "\n" : "";
        Thread.Sleep(after);
        process.Kill();
        var said = first + process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said;
    }

    private static void AssertAllThere(string path, Dictionary<long, string> acknowledged)
    {
        using var book = JobBook.Open(path, make: false, TimeProvider.System);
        var found = book.Find(new JobSearch()).SelectMany(j => j.Builds).ToDictionary(b => b.Number, b => b.Built.Who);
        Assert.All(acknowledged, a => Assert.Equal(a.Value, found.GetValueOrDefault(a.Key)));
    }
}
