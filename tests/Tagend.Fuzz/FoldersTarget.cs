using Tagend.Output;

namespace Tagend.Fuzz;

/// <summary>
/// Two runs that put papers into one folder at the same time, some of which fail in the middle: what is there is of one run, and
/// what a run finds there while the folder is its own, is its own.
/// </summary>
internal sealed class FoldersTarget : ITarget
{
    private static readonly string[] Kinds = ["cards.pdf", "tags.pdf", "sheets.pdf", "pulls.pdf"];

    private readonly string _folder = Directory.CreateTempSubdirectory("tagend-fuzz-").FullName;

    public IReadOnlyList<byte[]> Tokens => [];

    public bool Run(Mutation mutation)
    {
        var runs = Enumerable.Range(0, 2).Select(i => (
            Mark: $"run {mutation.Random.Next()} {i} ",
            Files: Kinds.Where(_ => !mutation.OneIn(4)).ToList(),
            Length: mutation.Random.Next(1, 200_000),
            Fails: mutation.OneIn(4))).ToList();
        var whole = 0;
        Parallel.ForEach(runs, run =>
        {
            try
            {
                Print(run.Mark, run.Files, run.Length, run.Fails);
                Interlocked.Increment(ref whole);
            }
            catch (FormatException)
            {
                // Its page could not be written.
            }
        });
        var found = Directory.GetFileSystemEntries(_folder).Select(f => Path.GetFileName(f)).ToList();
        if (found.Exists(f => f.StartsWith('.')))
        {
            throw new FaultException($"left behind: {string.Join(", ", found)}");
        }

        Marks(found);
        return whole == runs.Count;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Print(string mark, List<string> kinds, int length, bool fails)
    {
        if (kinds.Count == 0)
        {
            return;
        }

        using var files = AtomicFiles.Prepare([.. kinds.Select((k, i) => new NewFile(Path.Combine(_folder, k), stream => Fill(stream, mark, length, fails && i == kinds.Count - 1)))]);
        using var turn = FolderTurn.Take(_folder);
        files.Appear(Kinds.Select(k => Path.Combine(_folder, k)).Where(File.Exists));
        if (Marks(kinds) != mark)
        {
            throw new FaultException($"the papers of {mark} are another run's while it has the folder");
        }
    }

    private static void Fill(Stream stream, string mark, int length, bool fails)
    {
        for (var written = 0; written < length; written += mark.Length)
        {
            stream.Write(System.Text.Encoding.ASCII.GetBytes(mark));
        }

        if (fails)
        {
            throw new FormatException();
        }
    }

    /// <summary>The run that files are of; each is of one alone, and all of the same.</summary>
    private string Marks(List<string> files)
    {
        var all = files.Select(f => File.ReadAllText(Path.Combine(_folder, f))).ToList();
        var mark = all.Count == 0 ? "" : string.Join(' ', all[0].Split(' ').Take(3)) + " ";
        return all.TrueForAll(text => text.Replace(mark, "", StringComparison.Ordinal).Length == 0) ? mark : throw new FaultException($"{string.Join(", ", files)} are not of {mark}");
    }
}
