using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Tagend.Files;

/// <summary>Forces what was written to disk, and says so where that fails.</summary>
/// <remarks>
/// FileStream.Flush(true) and RandomAccess.FlushToDisk of .NET 10 pass over the error of a failing fsync (POSIX.1-2017), and a
/// full or broken disk may report it nowhere else.
/// </remarks>
public static partial class DiskSync
{
    /// <summary>EINVAL: the file system has no such call.</summary>
    private const int Invalid = 22;

    /// <summary>ENOTSUP of Linux and of macOS.</summary>
    private static readonly int[] NotSupported = [95, 45];

    /// <summary>Forces the bytes of a file to disk.</summary>
    /// <exception cref="IOException">The bytes may not be on the disk; its HResult is the system's error number.</exception>
    public static void Force(FileStream file)
    {
        file.Flush();
        if (OperatingSystem.IsWindows())
        {
            Check(FlushFileBuffers(file.SafeFileHandle) != 0);
            return;
        }

        if (OperatingSystem.IsMacOS())
        {
            // Beyond the drive's own cache, which fsync leaves alone there.
            RandomAccess.FlushToDisk(file.SafeFileHandle);
        }

        Check(fsync(file.SafeFileHandle) == 0);
    }

    /// <summary>Forces the names in a folder to disk. Windows has no such call; NTFS keeps a journal of renames.</summary>
    /// <exception cref="IOException">The names may not be on the disk.</exception>
    public static void ForceNames(string folder)
    {
        const int ReadOnly = 0;
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var handle = open(folder, ReadOnly);
        Check(!handle.IsInvalid);
        Check(fsync(handle) == 0);
    }

    private static void Check(bool isDone)
    {
        var error = Marshal.GetLastPInvokeError();
        if (!isDone && error != Invalid && !NotSupported.Contains(error))
        {
            throw new IOException(Marshal.GetPInvokeErrorMessage(error), error);
        }
    }

#pragma warning disable IDE1006 // the names are the systems'
    [LibraryImport("libc", SetLastError = true)]
    private static partial int fsync(SafeFileHandle file);

    [LibraryImport("libc", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial SafeFileHandle open(string path, int flags);

    [LibraryImport("kernel32", SetLastError = true)]
    private static partial int FlushFileBuffers(SafeFileHandle file);
#pragma warning restore IDE1006
}
