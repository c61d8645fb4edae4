namespace Offcuts.Store;

/// <summary>
/// Files and folders that are the user's own: nobody else may read or write them where the system knows such rights (0600 and 0700 on
/// Unix, less what the user's own mask takes away).
/// </summary>
internal static class PrivateFile
{
    private const UnixFileMode OwnFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnFolder = OwnFile | UnixFileMode.UserExecute;

    // Numbers of Linux, from its errno: no space left, quota used up, file too large; of Windows: the disk is full.
    private static readonly int[] Full = [28, 122, 27, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    /// <summary>A new file, open for writing. Throws where one is there.</summary>
    public static FileStream New(string path) => Open(path, FileMode.CreateNew);

    /// <summary>Makes an empty file where there is none. Where that can't be, whoever opens it next is told why.</summary>
    public static void Touch(string path)
    {
        try
        {
            Open(path, FileMode.OpenOrCreate).Dispose();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
        }
    }

    /// <summary>Makes a folder, and those above it that are missing.</summary>
    public static void Folder(string path)
    {
        if (Directory.Exists(path)) return;
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, OwnFolder);
    }

    /// <summary>True where there was no room.</summary>
    public static bool IsFull(IOException error) => Full.Contains(error.HResult);

    /// <summary>True where the disk may only be read (errno 30 of Linux).</summary>
    public static bool IsReadOnly(IOException error) => error.HResult == 30;

    private static FileStream Open(string path, FileMode mode)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.Write, Share = FileShare.ReadWrite | FileShare.Delete };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnFile;
        return new FileStream(path, options);
    }
}
