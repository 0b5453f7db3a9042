namespace Tagend.Files;

/// <summary>
/// Where files are until they are whole: a folder of one run's own beside their places, and in it a lock that dies with the
/// run. What a killed run left behind is known by its lock, whatever its process number means by now.
/// </summary>
public sealed class TempFiles : IDisposable
{
    private const string Prefix = ".tagend-";
    private const string LockName = ".lock";

    /// <summary>How long the files of another machine are left alone: a network drive may know nothing of its locks.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromDays(1);

    private readonly LockFile _lock;

    private TempFiles(string folder, LockFile held) => (Folder, _lock) = (folder, held);

    /// <summary>The path of the run's own folder.</summary>
    public string Folder { get; }

    /// <summary>Makes a run's folder, and removes those of runs that are no more.</summary>
    /// <param name="folder">Where the files are to be; made if missing.</param>
    /// <exception cref="IOException">The folder cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be made.</exception>
    public static TempFiles In(string folder)
    {
        Directory.CreateDirectory(folder);
        while (true)
        {
            var own = Directory.CreateDirectory(Path.Combine(folder, $"{Prefix}{Environment.MachineName}-{Guid.NewGuid():N}"));
            try
            {
                if (Lock(own.FullName) is { } held)
                {
                    Quietly(() => RemoveAbandoned(folder, own.LastWriteTimeUtc));
                    return new TempFiles(own.FullName, held);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException && own.Exists)
            {
                Remove(own.FullName);
                throw;
            }

            // Another run took it for abandoned before it had its lock.
        }
    }

    /// <summary>A new file, which can be read and moved in.</summary>
    /// <param name="isSecret">Whether its owner alone may read it; on Windows that is the folder's matter.</param>
    /// <param name="use">What is special about its use.</param>
    public FileStream Make(string name, bool isSecret, FileOptions use = FileOptions.None)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.ReadWrite, BufferSize = 1 << 16, Options = use };
        if (isSecret && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return new FileStream(Path.Combine(Folder, name), options);
    }

    /// <summary>Removes the folder and what is in it.</summary>
    public void Dispose() => Remove(Folder, _lock);

    /// <param name="now">By the clock of the folder's drive.</param>
    private static void RemoveAbandoned(string folder, DateTime now)
    {
        foreach (var path in Directory.EnumerateDirectories(folder, $"{Prefix}*"))
        {
            try
            {
                var isOfThisMachine = Path.GetFileName(path).StartsWith($"{Prefix}{Environment.MachineName}-", StringComparison.Ordinal);
                if ((isOfThisMachine || Directory.GetLastWriteTimeUtc(path) < now - Patience) && Lock(path) is { } held)
                {
                    Remove(path, held);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Another user's, or just removed.
            }
        }
    }

    /// <summary>Null where another run has it, or had it and removed the folder.</summary>
    private static LockFile? Lock(string folder) => LockFile.TryTake(Path.Combine(folder, LockName));

    private static void Remove(string folder, LockFile held)
    {
        foreach (var inner in Directory.EnumerateDirectories(folder))
        {
            Quietly(() => Directory.Delete(inner, recursive: true));
        }

        foreach (var file in Directory.EnumerateFiles(folder).Where(f => Path.GetFileName(f) != LockName))
        {
            Quietly(() => File.Delete(file));
        }

        held.Dispose();
        Remove(folder);
    }

    private static void Remove(string emptyFolder) => Quietly(() => Directory.Delete(emptyFolder));

    private static void Quietly(Action remove)
    {
        try
        {
            remove();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What was told the user already matters more than files left behind; the next run tries again.
        }
    }
}
