using System.Runtime.ExceptionServices;
using Tagend.Files;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A file to be written.</summary>
/// <param name="Write">Writes its content; the stream can be read and moved in.</param>
public sealed record NewFile(string Path, Action<Stream> Write)
{
    /// <summary>Whether its owner alone may read it, from its first byte on.</summary>
    public bool IsSecret { get; init; }
}

/// <summary>
/// Files that appear whole or not at all, a set of them together: written and forced to disk beside their places, under the
/// names of this run alone, then renamed. What was not renamed is gone at the end.
/// </summary>
/// <remarks>
/// One file replaces what was there in a step. Of several, what was there leaves before the first appears, and comes back
/// where one cannot have its name: a run that is killed in between leaves papers missing, never those of two runs.
/// </remarks>
public sealed class AtomicFiles : IDisposable
{
    private readonly IReadOnlyList<NewFile> _files;
    private readonly Dictionary<string, TempFiles> _folders = [];

    private AtomicFiles(IReadOnlyList<NewFile> files) => _files = files;

    /// <summary>Writes all files and lets them appear.</summary>
    /// <exception cref="TagendException">A file cannot be written; says which, why and what to do.</exception>
    public static void Write(IReadOnlyList<NewFile> files)
    {
        using var written = Prepare(files);
        written.Appear([]);
    }

    /// <summary>Writes all files, several at a time; none appears yet. Missing folders are made.</summary>
    /// <exception cref="TagendException">A file cannot be written; says which, why and what to do.</exception>
    public static AtomicFiles Prepare(IReadOnlyList<NewFile> files)
    {
        var set = new AtomicFiles(files);
        try
        {
            set.WriteAll();
            return set;
        }
        catch
        {
            set.Dispose();
            throw;
        }
    }

    /// <summary>Gives all files their names and forces these to disk.</summary>
    /// <param name="earlier">Paths of files that leave for them, in the same folders.</param>
    /// <exception cref="TagendException">A name cannot be given, and all is as it was; or the names may be lost.</exception>
    public void Appear(IEnumerable<string> earlier)
    {
        var paths = _files.Select(f => f.Path).ToList();
        List<string> leaving = [.. earlier.Except(paths), .. paths.Where(File.Exists)];
        if (paths.Count == 1 && leaving.TrueForAll(paths.Contains))
        {
            leaving.Clear();
        }

        var done = new Stack<Action>();
        try
        {
            foreach (var path in leaving)
            {
                Move(path, AsideOf(path));
                done.Push(() => Move(AsideOf(path), path));
            }

            foreach (var path in paths)
            {
                Move(DraftOf(path), path);
                done.Push(() => Move(path, DraftOf(path)));
            }
        }
        catch
        {
            TakeBack(done);
            throw;
        }

        foreach (var folder in _folders.Keys)
        {
            WriteFault.Named(folder, () => DiskSync.ForceNames(folder));
        }
    }

    public void Dispose()
    {
        foreach (var folder in _folders.Values)
        {
            folder.Dispose();
        }
    }

    private static void Move(string from, string to) => WriteFault.Named(to, () => File.Move(from, to, overwrite: true));

    private static void TakeBack(Stack<Action> done)
    {
        foreach (var undo in done)
        {
            try
            {
                undo();
            }
            catch (TagendException)
            {
                // What failed first is told.
            }
        }
    }

    private void WriteAll()
    {
        foreach (var inFolder in _files.GroupBy(f => FolderOf(f.Path)))
        {
            WriteFault.Named(inFolder.First().Path, () => _folders.Add(inFolder.Key, TempFiles.In(inFolder.Key)));
        }

        var faults = new ExceptionDispatchInfo?[_files.Count]; // a file more than there are cores, for one of them waits for the disk
        Parallel.For(0, _files.Count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount + 1 }, (i, loop) =>
        {
            try
            {
                WriteFault.Named(_files[i].Path, () => Write(_files[i]));
            }
            catch (Exception e)
            {
                faults[i] = ExceptionDispatchInfo.Capture(e);
                loop.Stop();
            }
        });
        Array.Find(faults, f => f is not null)?.Throw();
    }

    private void Write(NewFile file)
    {
        if (Directory.Exists(file.Path))
        {
            throw new IsFolderException();
        }

        if (SpecialFile.Is(file.Path))
        {
            throw new IsSpecialException();
        }

        using var stream = _folders[FolderOf(file.Path)].Make(Path.GetFileName(file.Path), file.IsSecret);
        file.Write(stream);
        DiskSync.Force(stream);
    }

    private string DraftOf(string path) => Path.Combine(_folders[FolderOf(path)].Folder, Path.GetFileName(path));

    /// <summary>No draft has such a name: no file is called so.</summary>
    private string AsideOf(string path) => Path.Combine(_folders[FolderOf(path)].Folder, $".{Path.GetFileName(path)}.before");

    /// <summary>A drive's own folder is in none, and no file is written over it.</summary>
    private static string FolderOf(string path) => Path.GetDirectoryName(Path.GetFullPath(path)) ?? path;
}
