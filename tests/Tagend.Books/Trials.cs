using Tagend.Addresses;

namespace Tagend.Books;

/// <summary>All trials, on a file and on a server.</summary>
/// <param name="root">The folder that holds Tagend.slnx.</param>
/// <param name="folder">An empty folder for books and notes.</param>
/// <param name="server">Null where there is none: it is left out.</param>
public sealed class Trials(string root, string folder, Server? server, Random random)
{
    private int _books;

    /// <summary>A few writers, kills and restarts: a minute.</summary>
    /// <param name="only">A part of the names of those that are wanted; null for all.</param>
    public IEnumerable<Outcome> Short(string? only) => Run(All(2, 10, 4, 2, 40), only);

    /// <summary>8 programs with 500 writings each, 200 kills, 20 restarts, a season of 10,000 pieces: about an hour.</summary>
    /// <param name="only">A part of the names of those that are wanted; null for all.</param>
    public IEnumerable<Outcome> Long(string? only) => Run(All(8, 500, 200, 20, 10_000), only);

    /// <summary>Times of searches in books of very many jobs.</summary>
    public IEnumerable<string> Searches(int jobs)
    {
        var (million, file) = (new Million(root, jobs), Path.Combine(folder, "many.db"));
        million.Fill(file);
        yield return FormattableString.Invariant($"{jobs} jobs in a file of {new FileInfo(file).Length / 1e6:0} MB, the first 500 of a search, median of 5:");
        foreach (var line in million.Times(file))
        {
            yield return line;
        }

        if (server is null)
        {
            yield break;
        }

        var (address, name) = NewDatabase();
        using (var book = JobBookAddressReader.Read(file).OpenExisting(TimeProvider.System)!)
        {
            yield return $"{book.CopyTo(JobBookAddressReader.Read(address))} rows copied to the server, and each read again there";
        }

        server.Run(name, "ANALYZE");
        yield return $"{jobs} jobs on the server:";
        foreach (var line in million.Times(address))
        {
            yield return line;
        }
    }

    private static IEnumerable<Outcome> Run(IEnumerable<(string Name, Func<string, Outcome> Try)> trials, string? only) =>
        trials.Where(t => only is null || t.Name.Contains(only, StringComparison.Ordinal)).Select(t => t.Try(t.Name));

    private IEnumerable<(string Name, Func<string, Outcome> Try)> All(int programs, int writings, int kills, int restarts, int pieces)
    {
        (string, Func<string, Outcome>)[] ofFiles =
        [
            ($"{programs} programs, {writings} writings each, on a file", name => OnFile(name, t => t.Write(programs, writings))),
            ($"{kills} programs killed while writing to a file", name => OnFile(name, t => t.Kill(kills, random))),
            ($"two terminals share a season of {pieces} pieces in a file", name => new Season(root, Path.Combine(folder, "season.db")).Share(name, pieces)),
        ];
        (string, Func<string, Outcome>)[] ofServers =
        [
            ($"{programs} programs, {writings} writings each, on a server", name => OnServer(name, t => t.Write(programs, writings))),
            ($"{kills} programs killed while writing to a server", name => OnServer(name, t => t.Kill(kills, random))),
            ($"{restarts} restarts of the server while 4 programs write", name => OnServer(name, t => t.Write(4, 100_000, () => Restart(restarts)))),
            ($"two terminals share a season of {pieces} pieces on a server", name => new Season(root, NewDatabase().Address).Share(name, pieces)),
        ];
        return server is null ? ofFiles : ofFiles.Concat(ofServers);
    }

    private Outcome OnFile(string name, Action<Trial> act)
    {
        var trial = new Trial(root, Path.Combine(folder, $"trial{++_books}.db"), Notes());
        trial.Begin();
        act(trial);
        var outcome = trial.Result(name);
        return outcome with { Faults = [.. outcome.Faults, .. trial.Integrity()] };
    }

    private Outcome OnServer(string name, Action<Trial> act)
    {
        var (address, database) = NewDatabase();
        var trial = new Trial(root, address, Notes());
        trial.Begin();
        act(trial);
        var outcome = trial.Result(name);
        server!.Client("pg_amcheck", "--install-missing", "--heapallindexed", "-d", database); // throws where it finds anything
        return outcome;
    }

    /// <summary>Half of them without a shutdown.</summary>
    private void Restart(int times)
    {
        for (var i = 0; i < times; i++)
        {
            Thread.Sleep(random.Next(800, 2000));
            server!.Stop(isCrash: i % 2 == 0);
            server.Start();
        }

        Thread.Sleep(1500); // what was sent while it was away comes now
    }

    private (string Address, string Name) NewDatabase()
    {
        var name = server!.NewDatabase();
        return (server.AddressOf(name), name);
    }

    private string Notes() => Directory.CreateDirectory(Path.Combine(folder, $"notes{_books++}")).FullName;
}
