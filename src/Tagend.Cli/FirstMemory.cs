using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Tagend;

/// <summary>How a short run gets its memory: had from the system at once, and kept. A quarter of a cold order's processor time went into page faults.</summary>
internal static partial class FirstMemory
{
    /// <summary>What an order's papers take in objects: no collection is needed before.</summary>
    private const int Objects = 15 << 20;

    /// <summary>How far the heap reaches then, with what of its parts is left over.</summary>
    private const int Heap = 24 << 20;

    /// <summary>What libraries give back and take again: each stream of a PDF has its own compressor of a third of a megabyte.</summary>
    private const int Kept = 1 << 20;

    /// <summary>Of the heap, what an order's papers take when templates and orders are read.</summary>
    private const int Papers = 8 << 20;

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

    /// <summary>Has the pages cleared that an order's papers will take: for a core that has nothing else to do.</summary>
    public static void Prepare()
    {
        const int PopulateWrite = 23; // MADV_POPULATE_WRITE, since Linux 5.14; of memory that is not there it tells
        if (OperatingSystem.IsLinux() && Environment.ProcessorCount > 1)
        {
            var page = PageOfObjects() + LargePage;
            for (var left = Papers; left > 0 && madvise(page, LargePage, PopulateWrite) == 0; left -= LargePage)
            {
                page += LargePage; // one by one: the system lets nobody else have memory meanwhile
            }
        }
    }

    /// <summary>Where the system gives large pages to who asks, it has some to clear and not thousands. A hint: where the heap lies elsewhere nothing is lost.</summary>
    private static void AskForLargePages()
    {
        const int HugePage = 14; // MADV_HUGEPAGE of madvise(2)
        _ = madvise(PageOfObjects(), Heap, HugePage);
    }

    /// <summary>Where objects are made now.</summary>
    private static nuint PageOfObjects()
    {
        var made = new object();
        return Unsafe.As<object, nuint>(ref made) & ~(nuint)(LargePage - 1);
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
