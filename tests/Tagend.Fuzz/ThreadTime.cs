using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Tagend.Fuzz;

/// <summary>Time that this thread has worked: on Linux without the time it waited for a processor.</summary>
internal static partial class ThreadTime
{
    /// <summary>CLOCK_THREAD_CPUTIME_ID of Linux.</summary>
    private const int ThreadClock = 3;

    public static TimeSpan Now
    {
        get
        {
            if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess)
            {
                return Stopwatch.GetElapsedTime(0);
            }

            _ = GetTime(ThreadClock, out var time);
            return TimeSpan.FromSeconds(time.Seconds) + TimeSpan.FromMicroseconds(time.Nanoseconds / 1000);
        }
    }

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int GetTime(int clock, out Timespec time);

    private struct Timespec
    {
        public long Seconds;
        public long Nanoseconds;
    }
}
