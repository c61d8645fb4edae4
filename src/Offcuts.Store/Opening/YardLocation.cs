namespace Offcuts.Store;

/// <summary>Where the yard file is.</summary>
public static class YardLocation
{
    /// <summary>Variable of the environment that names the yard file.</summary>
    public const string Variable = "OFFCUTS_YARD";

    /// <summary>
    /// What the user named on the command line, else what <see cref="Variable"/> names, else <c>offcuts/yard.offcuts</c> in
    /// their data folder. An empty name counts as none; the caller may refuse one on the command line before.
    /// </summary>
    /// <param name="option">The file named on the command line, or null.</param>
    /// <param name="environment">A variable of the environment by its name, or null.</param>
    /// <param name="userDataFolder">Where the user's programs keep what belongs to them.</param>
    public static string Resolve(string? option, Func<string, string?> environment, string userDataFolder)
    {
        if (!string.IsNullOrEmpty(option)) return option;
        return environment(Variable) is { Length: > 0 } named ? named : Path.Combine(userDataFolder, "offcuts", "yard.offcuts");
    }

    /// <summary>
    /// True where the file lies in a folder of the network, as far as the system tells. The yard works there, one change after the other, but only as well as that
    /// folder's locks do.
    /// </summary>
    /// <param name="path">The file, there or not.</param>
    /// <param name="kindOf">Tells the kind of a folder's disk; the system where nothing is said.</param>
    public static bool IsOnNetwork(string path, Func<string, DriveType>? kindOf = null)
    {
        // A folder that Windows names by its server is no drive, so that nothing tells its kind.
        if (IsOfServer(path)) return true;
        try
        {
            var folder = Path.GetDirectoryName(Path.GetFullPath(path));
            while (folder is not null && !Directory.Exists(folder)) folder = Path.GetDirectoryName(folder);
            if (folder is not null && IsOfServer(folder)) return true;
            return folder is not null && (kindOf ?? (one => new DriveInfo(one).DriveType))(folder) == DriveType.Network;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return false;
        }
    }

    // \\?\C:\ and \\.\C:\ name a drive of this computer.
    private static bool IsOfServer(string path) =>
        path.StartsWith(@"\\", StringComparison.Ordinal) && (path.StartsWith(@"\\?\UNC\", StringComparison.OrdinalIgnoreCase) || !(path.Length > 3 && path[2] is '?' or '.' && path[3] == '\\'));
}
