using System.Text;
using Offcuts.Core.Faults;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Reading and writing the files that commands are given; <c>-</c> is standard input or output.</summary>
internal static class TextLines
{
    /// <summary>The lines of a text file that are not blank; none where no file is named.</summary>
    public static Result<IReadOnlyList<string>> Read(Surroundings world, string? path) => path is null
        ? Result<IReadOnlyList<string>>.Of([])
        : Open(world, path, (stream, name) =>
        {
            using var reader = new StreamReader(stream, new UTF8Encoding(false, throwOnInvalidBytes: true));
            try
            {
                return Result<IReadOnlyList<string>>.Of(
                    [.. reader.ReadToEnd().Split('\n').Select(line => line.TrimEnd('\r')).Where(line => line.Trim().Length > 0)]);
            }
            catch (DecoderFallbackException)
            {
                return CommandFaults.NotUtf8(name);
            }
        });

    /// <summary>Hands a file, and its name, to a reader of it.</summary>
    public static Result<T> Open<T>(Surroundings world, string path, Func<Stream, string, Result<T>> read) => Stream(world, path).Then(opened =>
    {
        using var stream = opened;
        return read(stream, path == "-" ? "standard input" : Path.GetFileName(path));
    });

    /// <summary>A file opened for reading, or why there is none.</summary>
    public static Result<Stream> Stream(Surroundings world, string path)
    {
        if (path == "-") return world.InBytes();
        return File.Exists(path) ? File.OpenRead(path) : Directory.Exists(path) ? CommandFaults.IsFolder(path) : CommandFaults.NoSuchFile(path);
    }

    /// <summary>Writes a text file, whole or not at all.</summary>
    public static int Write(CommandContext context, string path, Action<TextWriter> write)
    {
        if (path == "-")
        {
            write(context.World.Out);
            return Exit.Done;
        }

        WholeFile.Write(path, stream =>
        {
            using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
            write(writer);
        });
        context.Say($"Wrote {path}");
        return Exit.Done;
    }
}
