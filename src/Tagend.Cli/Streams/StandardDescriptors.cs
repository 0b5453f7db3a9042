using System.Runtime.InteropServices;

namespace Tagend.Streams;

/// <summary>
/// The descriptors 0 to 2 of Unix (POSIX.1-2017, stdin, stdout and stderr). Where a program is started without one of them, the
/// next file that is opened gets its number: a job book could be written to as standard output, and random numbers were read as
/// a scanner's lines.
/// </summary>
internal static partial class StandardDescriptors
{
    private const int GetFlags = 1;
    private const int CloseOnExecute = 1;
    private const int ReadAndWrite = 2;
    private const string Null = "/dev/null";

    /// <summary>
    /// Opens those that are missing on the null device. The runtime may have taken them for files of its own, which are known by
    /// being closed on execution: then the program starts anew, with all three open.
    /// </summary>
    public static void Open(string[] arguments)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var missing = Enumerable.Range(0, 3).Where(d => fcntl(d, GetFlags) is var flags && (flags < 0 || (flags & CloseOnExecute) != 0)).ToList();
        if (missing.Count == 0 || Environment.ProcessPath is not { } program || open(Null, ReadAndWrite) is not (>= 0 and var opened))
        {
            return;
        }

        missing.ForEach(d => _ = dup2(opened, d));
        _ = execv(program, [program, .. ManagedProgram(program), .. arguments, null]);
    }

    /// <summary>What the runtime's own program is told first, where that is what runs.</summary>
    private static IEnumerable<string> ManagedProgram(string program) =>
        Path.GetFileNameWithoutExtension(program) == "dotnet" ? [Environment.GetCommandLineArgs()[0]] : [];

#pragma warning disable IDE1006 // the names are the system's
    [LibraryImport("libc")]
    private static partial int fcntl(int descriptor, int command);

    [LibraryImport("libc", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int open(string path, int flags);

    [LibraryImport("libc")]
    private static partial int dup2(int from, int to);

    [LibraryImport("libc", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int execv(string program, string?[] arguments);
#pragma warning restore IDE1006
}
