using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>The resident memory of this process: what it holds, and the most it held since it was last begun anew.</summary>
internal static partial class Memory
{
    // Of the kernel, proc(5): forgets the most that was resident, so that the count begins at what is resident now.
    private const string Forget = "5";

    /// <summary>Gives back what no longer serves, then begins anew where the system can (Linux); elsewhere the most is that of the whole process.</summary>
    /// <returns>Bytes held now.</returns>
    public static long Begin()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        Trim();
        if (Anew) File.WriteAllText("/proc/self/clear_refs", Forget);
        using var process = Process.GetCurrentProcess();
        return process.WorkingSet64;
    }

    /// <summary>The most bytes since then.</summary>
    public static long Peak()
    {
        using var process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64;
    }

    /// <summary>True where the system begins anew when told to.</summary>
    public static bool Anew { get; } = Tried();

    // What the engines gave back to the library of C stays with the process until it is told; other libraries of C have no such call.
    private static void Trim()
    {
        if (!OperatingSystem.IsLinux()) return;
        try
        {
            Trim(0);
        }
        catch (EntryPointNotFoundException)
        {
            // As said: not a fault.
        }
    }

    [LibraryImport("libc", EntryPoint = "malloc_trim")]
    private static partial int Trim(nuint pad);

    private static bool Tried()
    {
        try
        {
            File.WriteAllText("/proc/self/clear_refs", Forget);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
