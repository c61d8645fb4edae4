using System.Runtime.InteropServices;

namespace Offcuts.Benchmarks.Keys;

/// <summary>What a thread has worked, however many others wanted the processor meanwhile: by the clock of POSIX; none elsewhere.</summary>
internal static partial class ThreadTime
{
    // From the headers of Linux.
    private const int OfThisThread = 3;

    /// <summary>Work of this thread so far, or none where it can't be told.</summary>
    public static TimeSpan? Now() =>
        OperatingSystem.IsLinux() && Clock(OfThisThread, out var time) == 0 ? TimeSpan.FromSeconds(time.Seconds) + TimeSpan.FromTicks(time.Nanoseconds / 100) : null;

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int Clock(int clock, out Spec time);

    [StructLayout(LayoutKind.Sequential)]
    private struct Spec
    {
        public nint Seconds;
        public nint Nanoseconds;
    }
}
