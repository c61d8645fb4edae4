using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Walls;

namespace Offcuts.Store.Interchange;

/// <summary>System sheets and wall sheets as files: UTF-8 text of a size that a person may have typed, read whole or not at all.</summary>
public static class SheetFile
{
    /// <summary>A larger file is no sheet: the longest one with every line full is smaller.</summary>
    public const long MostBytes = 2_000_000;

    /// <summary>Reads a system sheet, or tells every fault with file, line and column.</summary>
    public static Result<SystemSheet> ReadSystem(Stream file, string name) => Read(file, name, SystemText.Read);

    /// <summary>Reads a wall sheet, or tells every fault with file, line and column.</summary>
    public static Result<PlacedWallSheet> ReadWall(Stream file, string name) => Read(file, name, WallText.ReadPlaced);

    private static Result<T> Read<T>(Stream file, string name, Func<string, Result<T>> read)
    {
        var shown = TextRules.Harmless(name);
        using var guarded = new GuardedStream(file, MostBytes);
        using var reader = new StreamReader(guarded, new UTF8Encoding(false, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: false);
        try
        {
            var text = reader.ReadToEnd();
            if (guarded.TooLarge) return WallFaults.SheetTooLarge(MostBytes) with { File = shown };
            if (guarded.OtherEncoding) return CommandFaults.NotUtf8(shown);
            var sheet = read(text);
            return sheet.Ok ? sheet : Result<T>.Fail([.. sheet.Faults.Select(fault => fault with { File = shown, Sentence = TextRules.Harmless(fault.Sentence) })]);
        }
        catch (DecoderFallbackException)
        {
            return CommandFaults.NotUtf8(shown);
        }
    }
}
