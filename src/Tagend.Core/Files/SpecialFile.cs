using System.Runtime.InteropServices;

namespace Tagend.Files;

/// <summary>Names that are no files: devices, pipes and sockets. A file that got such a name would take their place for every program.</summary>
public static partial class SpecialFile
{
    /// <summary>Whether a name, or what it links to, is a device, a pipe or a socket.</summary>
    /// <returns>False where there is no such name, and where the system cannot be asked: .NET 10 has no call for it, and only Linux is.</returns>
    public static bool Is(string path)
    {
        Span<byte> found = stackalloc byte[StatusSize];
        return OperatingSystem.IsLinux()
            && statx(CurrentFolder, path, flags: 0, KindWanted, found) == 0
            && (MemoryMarshal.Read<ushort>(found[ModeAt..]) & KindBits) is not (RegularFile or Folder);
    }

    // struct statx of linux/stat.h, the same on every machine.
    private const int StatusSize = 256;
    private const int ModeAt = 28;
    private const int CurrentFolder = -100;
    private const uint KindWanted = 1;
    private const int KindBits = 0xF000;
    private const int RegularFile = 0x8000;
    private const int Folder = 0x4000;

#pragma warning disable IDE1006 // the name is the system's
    [LibraryImport("libc", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int statx(int folder, string path, int flags, uint wanted, Span<byte> found);
#pragma warning restore IDE1006
}
