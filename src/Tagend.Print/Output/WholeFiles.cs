using System.Runtime.ExceptionServices;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>A file to be written.</summary>
/// <param name="Write">Writes its content; the stream can be read and moved in.</param>
public sealed record NewFile(string Path, Action<Stream> Write);

/// <summary>Writes files that appear whole or not at all, a set of them together.</summary>
public static class WholeFiles
{
    /// <summary>
    /// Writes all files beside their places under other names, several at a time, then renames them over what was there.
    /// Until all are written nothing is renamed; missing folders are made.
    /// </summary>
    /// <exception cref="TagendException">A file cannot be written; says which, why and what to do.</exception>
    public static void Write(IReadOnlyList<NewFile> files)
    {
        var drafts = new string?[files.Count];
        var faults = new ExceptionDispatchInfo?[files.Count];
        try
        {
            foreach (var inFolder in files.GroupBy(f => FolderOf(f)))
            {
                Named(inFolder.First().Path, () => Drafts.RemoveAbandoned(inFolder.Key));
            }

            Parallel.For(0, files.Count, (i, loop) =>
            {
                try
                {
                    Named(files[i].Path, () => drafts[i] = WriteDraft(files[i]));
                }
                catch (Exception e)
                {
                    faults[i] = ExceptionDispatchInfo.Capture(e);
                    loop.Stop();
                }
            });
            Array.Find(faults, f => f is not null)?.Throw();
            foreach (var (draft, file) in drafts.Zip(files))
            {
                Named(file.Path, () => File.Move(draft!, file.Path, overwrite: true));
            }
        }
        finally
        {
            foreach (var draft in drafts.OfType<string>())
            {
                Drafts.Remove(draft);
            }
        }
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

    private static string WriteDraft(NewFile file)
    {
        if (Directory.Exists(file.Path))
        {
            throw new IsFolderException();
        }

        var folder = FolderOf(file);
        Directory.CreateDirectory(folder);
        var draft = Path.Combine(folder, Drafts.NameFor(Path.GetFileName(file.Path)));
        try
        {
            using var stream = new FileStream(draft, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16);
            file.Write(stream);
            stream.Flush(flushToDisk: true);
        }
        catch
        {
            Drafts.Remove(draft);
            throw;
        }

        return draft;
    }

    private static string FolderOf(NewFile file) => Path.GetDirectoryName(Path.GetFullPath(file.Path))!;

    private static string Reason(Exception e) => e switch
    {
        IsFolderException => "is a folder; name a file",
        UnauthorizedAccessException => "may not be written; choose a folder you may write to, or close the program that has the file open",
        DirectoryNotFoundException => "its folder cannot be made; choose another folder",
        PathTooLongException => "the name is too long; choose a shorter one",
        _ when IsDiskFull(e) => "the disk is full; make room and run again",
        IOException when e.Message.Contains("already exists", StringComparison.Ordinal) => "a file stands where a folder is needed; choose another folder",
        _ => $"cannot be written ({e.Message}); choose another folder or try again",
    };

    /// <summary>ENOSPC and EDQUOT of Unix, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.</summary>
    private static bool IsDiskFull(Exception e) =>
        e.HResult is 28 or 69 or 122 or unchecked((int)0x80070070) or unchecked((int)0x80070027);

    private sealed class IsFolderException : IOException;
}
