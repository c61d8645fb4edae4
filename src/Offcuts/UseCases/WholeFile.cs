using Offcuts.Core.Faults;

namespace Offcuts.UseCases;

/// <summary>Writes a file whole or not at all: under another name beside it first, then put in its place.</summary>
public static class WholeFile
{
    /// <summary>Writes the file; whatever was there before is replaced only when the new one is complete.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        // An empty name and a folder are the user's slips, told as any path that can't be written.
        if (path.Length == 0 || Path.GetFileName(path).Length == 0) throw new IOException($"\"{path}\" names no file to write");
        var whole = Path.GetFullPath(path);
        if (Directory.Exists(whole)) throw new IOException(CommandFaults.IsFolder(path).Sentence);
        var beside = Path.Combine(Path.GetDirectoryName(whole)!, $".{Path.GetFileName(whole)}.{Path.GetRandomFileName()}");
        try
        {
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write))
            {
                write(stream);
                // On the disk before it takes the old file's name: a power cut leaves one of the two whole.
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, whole, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}
