using System.Diagnostics;
using Tagend.Files;
using Tagend.Problems;

namespace Tagend.Output;

/// <summary>
/// The turn of one run to put papers into a folder, so that the papers there, and those sent to a printer, are of one run. It
/// ends when it is disposed of, or with its process.
/// </summary>
public sealed class FolderTurn : IDisposable
{
    private const string FileName = ".tagend.lock";

    /// <summary>Small runs are over by then; after a longer one, whoever waits would rather know.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    private readonly LockFile _lock;

    private FolderTurn(LockFile held) => _lock = held;

    /// <param name="folder">Made if missing.</param>
    /// <exception cref="TagendException">Another run has the folder, or nothing can be written there.</exception>
    public static FolderTurn Take(string folder)
    {
        var since = Stopwatch.GetTimestamp();
        LockFile? held;
        while ((held = WriteFault.Named(folder, () => TryTake(folder))) is null)
        {
            if (Stopwatch.GetElapsedTime(since) > Patience)
            {
                throw new TagendException(
                    $"{folder}: another run is printing into this folder; try again when it has ended, or choose another folder");
            }

            Thread.Sleep(Pause);
        }

        return new FolderTurn(held);
    }

    private static LockFile? TryTake(string folder)
    {
        Directory.CreateDirectory(folder);
        return LockFile.TryTake(Path.Combine(folder, FileName));
    }

    public void Dispose() => _lock.Dispose();
}
