using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Tagend;

/// <summary>How a short run gets its memory: had from the system at once, and kept. A third of a cold order's processor time went into having pages cleared.</summary>
internal static partial class FirstMemory
{
    /// <summary>What an order's papers take in objects: no collection is needed before.</summary>
    private const int Objects = 15 << 20;

    /// <summary>How far the heap reaches then, with what of its parts is left over.</summary>
    private const int Heap = 24 << 20;

    /// <summary>What libraries give back and take again: each stream of a PDF has its own compressor of a third of a megabyte.</summary>
    private const int Kept = 1 << 20;

    private const int LargePage = 2 << 20;

    public static void Arrange()
    {
        GC.TryStartNoGCRegion(Objects, disallowFullBlockingGC: true);
        if (OperatingSystem.IsLinux())
        {
            AskForLargePages();
            KeepWhatIsFreed();
        }
    }

    /// <summary>Where the system gives large pages to who asks, it has some to clear and not thousands. A hint: where the heap lies elsewhere nothing is lost.</summary>
    private static void AskForLargePages()
    {
        const int HugePage = 14; // MADV_HUGEPAGE of madvise(2)
        var first = new object();
        var address = Unsafe.As<object, nuint>(ref first);
        _ = madvise(address & ~(nuint)(LargePage - 1), Heap, HugePage);
    }

    private static void KeepWhatIsFreed()
    {
        const int TrimThreshold = -1; // M_TRIM_THRESHOLD and M_MMAP_THRESHOLD of mallopt(3)
        const int MmapThreshold = -3;
        try
        {
            _ = mallopt(TrimThreshold, Kept);
            _ = mallopt(MmapThreshold, Kept);
        }
        catch (EntryPointNotFoundException)
        {
            // A C library that has its own ways.
        }
    }

#pragma warning disable IDE1006 // the names are the system's
    [LibraryImport("libc")]
    private static partial int madvise(nuint address, nuint length, int advice);

    [LibraryImport("libc")]
    private static partial int mallopt(int parameter, int value);
#pragma warning restore IDE1006
}
