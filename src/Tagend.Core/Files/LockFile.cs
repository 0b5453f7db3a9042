using Tagend.Problems;

namespace Tagend.Files;

/// <summary>A file that one holder at a time has. The lock dies with its process, and the file goes with its holder.</summary>
public sealed class LockFile : IDisposable
{
    private const int LongestMark = 1 << 16;

    private readonly FileStream _held;

    private LockFile(FileStream held) => _held = held;

    /// <summary>Takes the lock, if nobody has it.</summary>
    /// <returns>Null where another has it, or has just given it back.</returns>
    /// <exception cref="IOException">The file cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be made.</exception>
    public static LockFile? TryTake(string path)
    {
        // Windows alone removes a file together with its last handle.
        var options = OperatingSystem.IsWindows() ? FileOptions.DeleteOnClose : FileOptions.None;
        FileStream held;
        try
        {
            held = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, options);
        }
        catch (IOException e) when (e is DirectoryNotFoundException || SystemReason.IsInUse(e))
        {
            return null;
        }

        var taken = new LockFile(held);
        try
        {
            if (OperatingSystem.IsWindows() || IsAt(path, held))
            {
                return taken;
            }
        }
        catch
        {
            taken.Dispose();
            throw;
        }

        held.Dispose();
        return null;
    }

    /// <summary>Gives it back.</summary>
    public void Dispose()
    {
        if (!OperatingSystem.IsWindows())
        {
            try
            {
                File.Delete(_held.Name);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The next holder takes the file that is there.
            }
        }

        _held.Dispose();
    }

    /// <summary>
    /// A file may be locked that the last holder has just removed: then another is at its path, or none. The length tells
    /// them apart, for what it holds is locked to all others, this process too.
    /// </summary>
    private static bool IsAt(string path, FileStream held)
    {
        held.SetLength(Random.Shared.Next(1, LongestMark));
        var at = new FileInfo(path);
        return at.Exists && at.Length == held.Length;
    }
}
