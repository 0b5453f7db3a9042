using System.Runtime.InteropServices;

namespace Tagend.Problems;

/// <summary>
/// Why the system refused a file, in words. The messages of .NET are not for it: a program that is published ahead of time has
/// names of resources in their place.
/// </summary>
public static class SystemReason
{
    private const int WindowsFacility = unchecked((int)0x80070000);

    /// <summary>In a few words, without an end mark.</summary>
    public static string Of(Exception e) => e switch
    {
        UnauthorizedAccessException => "permission is denied",
        FileNotFoundException or DirectoryNotFoundException => "it is not there",
        PathTooLongException => "its name is too long",
        EndOfStreamException => "it ends too early",
        _ when IsDiskFull(e) => "the disk is full",
        _ when IsInUse(e) => "another program has it open",
        _ when IsOfSystem(e) => Marshal.GetPInvokeErrorMessage(Code(e)),
        _ => "the system does not say why",
    };

    /// <summary>Whether the system refused something, and not a library that reads what it got.</summary>
    public static bool IsOfSystem(Exception e) => e is UnauthorizedAccessException || Code(e) is > 0 and <= ushort.MaxValue;

    /// <summary>ENOSPC and EDQUOT of Unix, ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.</summary>
    public static bool IsDiskFull(Exception e) => e.HResult is 28 or 69 or 122 or WindowsFacility + 112 or WindowsFacility + 39;

    /// <summary>EEXIST of Unix, ERROR_FILE_EXISTS and ERROR_ALREADY_EXISTS of Windows.</summary>
    public static bool IsNameTaken(Exception e) => e.HResult is 17 or WindowsFacility + 80 or WindowsFacility + 183;

    /// <summary>EWOULDBLOCK of Linux and macOS, ERROR_SHARING_VIOLATION and ERROR_LOCK_VIOLATION of Windows.</summary>
    public static bool IsInUse(Exception e) => e.HResult is 11 or 35 or WindowsFacility + 32 or WindowsFacility + 33;

    /// <summary>The system's own number of an error.</summary>
    private static int Code(Exception e) => (e.HResult & WindowsFacility) == WindowsFacility ? e.HResult & ushort.MaxValue : e.HResult;
}
