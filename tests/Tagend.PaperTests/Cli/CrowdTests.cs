using System.Diagnostics;
using System.Text.RegularExpressions;
using Tagend.Jobs;
using Tagend.Jobs.Sqlite;
using Xunit;

namespace Tagend.PaperTests.Cli;

/// <summary>Many programs at once on one job book and in one folder. TAGEND_LONG=1 in the environment makes it ten rounds.</summary>
public class CrowdTests
{
    private const int Programs = 20;
    private static readonly int Rounds = TagendProgram.IsLong ? 10 : 1;

    [Fact]
    public void Programs_TwentyAtOnce_EachDoAllOrSayWhyNot()
    {
        using var folder = TagendProgram.NewFolder();
        var book = folder["book.db"];
        TagendProgram.Run("print", TagendProgram.DemoOrders, "--order", "1001", "--only", "cards", "--out", folder["first"], "--job-book", book);
        var done = new HashSet<string>();
        var told = new List<string>();
        for (var round = 0; round < Rounds; round++)
        {
            var names = Enumerable.Range(0, Programs).Select(p => $"R{round}P{p}").ToList();
            var runs = names.ConvertAll(name => (Name: name, Run: Started(folder, name, book)));
            foreach (var (name, run) in runs)
            {
                var said = Ended(run);
                if (said.ExitCode == 0)
                {
                    done.Add(name);
                }
                else
                {
                    told.Add(name);
                    Assert.Equal(5, said.ExitCode);
                    Assert.Matches("another run is printing into this folder|another program is using the job book", said.Errors);
                }
            }

            Assert.Single(OrdersIn(folder["out"]));
            AssertEntered(book, done, names);
        }

        Assert.InRange(done.Count, Rounds, Rounds * Programs);
        TestContext.Current.AddAttachment("crowd", $"{done.Count} done, {told.Count} told why not");
        TagendProgram.NoteLong($"crowd\t{Rounds} rounds of {Programs}\t{done.Count} done\t{told.Count} told why not");
    }

    /// <summary>A program that prints an order, logs a build or receives a spool, known by its name.</summary>
    private static Process Started(TagendProgram.Folder folder, string name, string book)
    {
        string[] arguments = (name[^1] % 3) switch
        {
            0 => ["built", "1001/string", "--again", "--length", "60 5/16", "--who", name],
            1 => ["spools", "receive", "hmpe-0145", "--lot", name, "--length", "900 m", "--out", folder[name]],
            _ =>
            [
                "print", folder.Write($"{name}.csv", $"order,piece,kind,finished_length,material,strands\n{name},string,plain,60,hmpe-0145,24\n"),
                "--only", "cards,pulls", "--out", folder["out"],
            ],
        };
        var run = TagendProgram.Start(folder.Path, [.. arguments, "--job-book", book]);
        run.StandardInput.Close();
        return run;
    }

    /// <summary>Waits for its end; it says a few lines at most.</summary>
    private static Said Ended(Process run)
    {
        using (run)
        {
            var (output, errors) = (run.StandardOutput.ReadToEnd(), run.StandardError.ReadToEnd());
            run.WaitForExit();
            return new Said(run.ExitCode, output, errors);
        }
    }

    /// <summary>The orders that all papers of a folder are of, each paper whole.</summary>
    private static IEnumerable<string> OrdersIn(string folder) => Directory.GetFiles(folder)
        .SelectMany(f => Regex.Matches(OutsideTool.Run("pdftotext", f, "-").Output, @"\bR\d+P\d+\b").Select(m => m.Value).DefaultIfEmpty(f))
        .Distinct();

    /// <summary>What was said to be done is in the book, once.</summary>
    private static void AssertEntered(string path, HashSet<string> done, List<string> names)
    {
        using var book = new SqliteAddress(path).OpenExisting(TimeProvider.System)!;
        var jobs = book.Find(new JobSearch()).ToList();
        var entered = jobs.Select(j => j.Order)
            .Concat(jobs.SelectMany(j => j.Builds).Select(b => b.Built.Who))
            .Concat(book.Spools.All(withFinished: true).Select(s => s.Spool.Lot))
            .CountBy(n => n)
            .ToDictionary();
        Assert.All(names, n => Assert.InRange(entered.GetValueOrDefault(n), done.Contains(n) ? 1 : 0, 1));
    }
}
