using System.Runtime.ExceptionServices;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A file to be written.</summary>
/// <param name="Write">Writes its content; the stream can be read and moved in.</param>
public sealed record NewFile(string Path, Action<Stream> Write);

/// <summary>
/// Files that appear whole or not at all, a set of them together: written and forced to disk beside their places, under the
/// names of this run alone, then renamed over what was there. What was not renamed is gone at the end.
/// </summary>
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
        written.Appear();
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

    /// <summary>Where this run's own bytes of a file are until it appears: another run may write the file itself meanwhile.</summary>
    /// <param name="path">As the file was given.</param>
    public string TempPathOf(string path) => Path.Combine(_folders[FolderOf(path)].Folder, Path.GetFileName(path));

    /// <summary>Gives all files their names and forces these to disk.</summary>
    /// <exception cref="TagendException">A name cannot be given, or may be lost.</exception>
    public void Appear()
    {
        foreach (var file in _files)
        {
            Named(file.Path, () => File.Move(TempPathOf(file.Path), file.Path, overwrite: true));
        }

        foreach (var folder in _folders.Keys)
        {
            Named(folder, () => DiskSync.ForceNames(folder));
        }
    }

    public void Dispose()
    {
        foreach (var folder in _folders.Values)
        {
            folder.Dispose();
        }
    }

    private void WriteAll()
    {
        foreach (var inFolder in _files.GroupBy(f => FolderOf(f.Path)))
        {
            Named(inFolder.First().Path, () => _folders.Add(inFolder.Key, TempFiles.In(inFolder.Key)));
        }

        var faults = new ExceptionDispatchInfo?[_files.Count];
        Parallel.For(0, _files.Count, (i, loop) =>
        {
            try
            {
                Named(_files[i].Path, () => Write(_files[i]));
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

        using var stream = _folders[FolderOf(file.Path)].Make(Path.GetFileName(file.Path));
        file.Write(stream);
        DiskSync.Force(stream);
    }

    /// <summary>Does what may fail for the disk's sake, and names the file that it failed for.</summary>
    private static void Named(string path, Action act)
    {
        try
        {
            act();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new TagendException($"{path}: {Reason(e)}", e);
        }
    }

    private static string FolderOf(string path) => Path.GetDirectoryName(Path.GetFullPath(path))!;

    private static string Reason(Exception e) => e switch
    {
        IsFolderException => "is a folder; name a file",
        UnauthorizedAccessException => "may not be written; choose a folder you may write to, or close the program that has the file open",
        DirectoryNotFoundException => "its folder cannot be made; choose another folder",
        PathTooLongException => "the name is too long; choose a shorter one",
        _ when IsDiskFull(e) => "the disk is full; free some space and run again",
        IOException when e.Message.Contains("already exists", StringComparison.Ordinal) => "a file stands where a folder is needed; choose another folder",
        _ => $"cannot be written ({e.Message}); choose another folder or try again",
    };

    /// <summary>ENOSPC and EDQUOT of Unix, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.</summary>
    private static bool IsDiskFull(Exception e) =>
        e.HResult is 28 or 69 or 122 or unchecked((int)0x80070070) or unchecked((int)0x80070027);

    private sealed class IsFolderException : IOException;
}
