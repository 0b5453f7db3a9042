using Tagend.Addresses;

namespace Tagend.Books;

/// <summary>All trials, on a file and on a server.</summary>
/// <param name="root">The folder that holds Tagend.slnx.</param>
/// <param name="folder">An empty folder for books and notes.</param>
/// <param name="server">Null where there is none: it is left out.</param>
public sealed class Trials(string root, string folder, Server? server, Random random)
{
    private int _books;

    /// <summary>A few writers, kills and restarts: seconds.</summary>
    /// <param name="only">Only those on a <c>file</c>, or on a <c>server</c>; null for all.</param>
    public IEnumerable<Outcome> Short(string? only) => All(2, 10, 4, 2, 40, only);

    /// <summary>8 programs with 500 writings each, 200 kills, 20 restarts, a season of 10,000 pieces: about an hour.</summary>
    /// <param name="only">As of <see cref="Short"/>.</param>
    public IEnumerable<Outcome> Long(string? only) => All(8, 500, 200, 20, 10_000, only);

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

    private IEnumerable<Outcome> All(int programs, int writings, int kills, int restarts, int pieces, string? only)
    {
        var ofFiles = only is "server" ? [] : OnFiles(programs, writings, kills, pieces);
        return only is "file" || server is null ? ofFiles : ofFiles.Concat(OnServers(programs, writings, kills, restarts, pieces));
    }

    private IEnumerable<Outcome> OnFiles(int programs, int writings, int kills, int pieces)
    {
        yield return OnFile($"{programs} programs, {writings} writings each, on a file", t => t.Write(programs, writings));
        yield return OnFile($"{kills} programs killed while writing to a file", t => t.Kill(kills, random));
        yield return new Season(root, Path.Combine(folder, "season.db")).Share($"two terminals share a season of {pieces} pieces in a file", pieces);
    }

    private IEnumerable<Outcome> OnServers(int programs, int writings, int kills, int restarts, int pieces)
    {
        yield return OnServer($"{programs} programs, {writings} writings each, on a server", t => t.Write(programs, writings));
        yield return OnServer($"{kills} programs killed while writing to a server", t => t.Kill(kills, random));
        yield return OnServer($"{restarts} restarts of the server while 4 programs write", t => t.Write(4, 100_000, () => Restart(restarts)));
        yield return new Season(root, NewDatabase().Address).Share($"two terminals share a season of {pieces} pieces on a server", pieces);
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
