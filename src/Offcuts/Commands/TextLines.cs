using System.Text;
using Offcuts.Core.Faults;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Reading and writing the files that commands are given; <c>-</c> is standard input or output.</summary>
internal static class TextLines
{
    /// <summary>The lines of a text file that are not blank; none where no file is named.</summary>
    public static IEnumerable<string> Read(Surroundings world, string? path)
    {
        if (path is null) return [];
        var text = path == "-" ? world.In.ReadToEnd() : File.ReadAllText(path, new UTF8Encoding(false, throwOnInvalidBytes: true));
        return text.Split('\n').Select(line => line.TrimEnd('\r')).Where(line => line.Trim().Length > 0);
    }

    /// <summary>Hands a file, and its name, to a reader of it.</summary>
    public static Result<T> Open<T>(Surroundings world, string path, Func<Stream, string, Result<T>> read)
    {
        if (path == "-") return read(new MemoryStream(Encoding.UTF8.GetBytes(world.In.ReadToEnd())), "standard input");
        if (!File.Exists(path)) return CommandFaults.NoSuchFile(path);
        using var stream = File.OpenRead(path);
        return read(stream, Path.GetFileName(path));
    }

    /// <summary>Writes a text file, whole or not at all.</summary>
    public static int Write(Session session, string path, Action<TextWriter> write)
    {
        if (path == "-")
        {
            write(session.World.Out);
            return Exit.Done;
        }

        WholeFile.Write(path, stream =>
        {
            using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
            write(writer);
        });
        session.Say($"Wrote {path}");
        return Exit.Done;
    }
}
