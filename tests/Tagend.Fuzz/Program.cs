using System.Globalization;
using Tagend.Fuzz;

// tagend-fuzz SEED RUNS [TARGET [FIRST-RUN]], in the project's folder: spoiled inputs for each target, and a line of what came of them.
// Ctrl-C ends a target early.
int Number(int index) => int.Parse(args[index], CultureInfo.InvariantCulture);
var (seed, runs, only, first) = (Number(0), Number(1), args.ElementAtOrDefault(2), args.Length > 3 ? Number(3) : 1);
var corpus = new Corpus(Environment.CurrentDirectory);
var trail = Directory.CreateDirectory(Path.Combine("out", "fuzz")).FullName;
var tallies = new List<Tally>();
foreach (var (name, make) in Targets.All.Where(t => only is null || t.Key == only))
{
    var campaign = new Campaign(name, () => make(corpus), seed, TimeSpan.FromSeconds(1), trail);
    Console.CancelKeyPress += End;
    var tally = campaign.Run(first, runs, Environment.ProcessorCount);
    Console.CancelKeyPress -= End;

    void End(object? sender, ConsoleCancelEventArgs e)
    {
        e.Cancel = true;
        campaign.End();
    }

    tallies.Add(tally);
    tally.Faults.ToList().ForEach(Console.WriteLine);
    Console.WriteLine(tally);
}

return tallies.Count > 0 && tallies.TrueForAll(t => t.Faults.Count == 0) ? 0 : 1;
