using Offcuts.Core.Faults;

namespace Offcuts.UseCases;

/// <summary>
/// Writes a file whole or not at all: under another name beside it first, then put in its place. What is there of another kind, a yard
/// above all, is never written over; a link is followed, and what is no file but a device is written to as it is. A new file is its
/// user's own (0600 on Unix, less what their mask takes away); one that is replaced keeps the rights it had.
/// </summary>
public static class WholeFile
{
    private static readonly byte[] PdfBegins = "%PDF-"u8.ToArray();

    private static readonly byte[] YardBegins = "SQLite format 3\0"u8.ToArray();

    /// <summary>Writes the file; whatever was there before is replaced only when the new one is complete.</summary>
    /// <exception cref="IOException">Where the path can't be written, or something of another kind is there.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        try
        {
            WriteThere(path, write);
        }
        catch (IOException error) when (FileTrouble.IsFull(error))
        {
            throw new FileTroubleException(CommandFaults.DiskFull(path), error);
        }
    }

    private static void WriteThere(string path, Action<Stream> write)
    {
        // An empty name and a folder are the user's slips, told as any path that can't be written.
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal) || Path.GetFileName(path).Length == 0) throw new FileTroubleException(CommandFaults.NamesNoFile(path));
        var whole = Path.GetFullPath(path);
        if (Directory.Exists(whole)) throw new FileTroubleException(CommandFaults.IsFolder(path));
        if (whole.StartsWith("/dev/", StringComparison.Ordinal))
        {
            using var device = new FileStream(whole, FileMode.Open, FileAccess.Write);
            write(device);
            return;
        }

        if (new FileInfo(whole).LinkTarget is not null && File.ResolveLinkTarget(whole, returnFinalTarget: true) is { } target) whole = target.FullName;
        var beside = Path.Combine(Path.GetDirectoryName(whole)!, $".{Path.GetFileName(whole)}.{Path.GetRandomFileName()}");
        try
        {
            using (var stream = new FileStream(beside, Own(whole)))
            {
                write(stream);
                // On the disk before it takes the old file's name: a power cut leaves one of the two whole.
                stream.Flush(flushToDisk: true);
            }

            if (IsOfAnotherKind(whole, beside)) throw new FileTroubleException(CommandFaults.OtherKindOfFile(path));
            File.Move(beside, whole, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }

    private static FileStreamOptions Own(string there)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = File.Exists(there) ? File.GetUnixFileMode(there) : UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }

    private static bool IsOfAnotherKind(string there, string made) =>
        new FileInfo(there) is { Exists: true, Length: > 0 } && (Begins(there, YardBegins) || Begins(there, PdfBegins) != Begins(made, PdfBegins));

    private static bool Begins(string path, byte[] with)
    {
        using var stream = File.OpenRead(path);
        var begin = new byte[with.Length];
        return stream.ReadAtLeast(begin, begin.Length, throwOnEndOfStream: false) == begin.Length && begin.AsSpan().SequenceEqual(with);
    }
}
