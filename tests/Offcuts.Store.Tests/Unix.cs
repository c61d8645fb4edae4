using System.Runtime.InteropServices;

namespace Offcuts.Store.Tests;

/// <summary>A test of file permissions as Unix has them; skipped elsewhere, by name.</summary>
public sealed class UnixFactAttribute : FactAttribute
{
    public UnixFactAttribute()
    {
        if (OperatingSystem.IsWindows()) Skip = "permissions of this kind are Unix's";
    }
}

/// <summary>Looking at files as somebody who owns nothing here: a superuser may read and write whatever the permissions say.</summary>
internal static class Unix
{
    private const uint Nobody = 65534;

    public static void Allow(string path, string mode) =>
        System.Diagnostics.Process.Start("chmod", [mode, path]).WaitForExit();

    public static T AsNobody<T>(Func<T> work)
    {
        if (!Environment.IsPrivilegedProcess) return work();
        _ = setfsuid(Nobody);
        try
        {
            return work();
        }
        finally
        {
            _ = setfsuid(0);
        }
    }

    // Linux: the user by whose rights this one thread opens files.
    [DllImport("libc")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern int setfsuid(uint user);
}
