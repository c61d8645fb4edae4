using Offcuts.Core.Faults;

namespace Offcuts.UseCases;

/// <summary>A file that can't be written, with its sentence.</summary>
public sealed class FileTroubleException(Fault fault, Exception? inner = null) : IOException(fault.Sentence, inner)
{
    /// <summary>What to tell the user.</summary>
    public Fault Fault => fault;
}

/// <summary>What a disk, a pipe or a folder that does not do its part means to the user: a sentence of ours, never the system's own words.</summary>
public static class FileTrouble
{
    // Numbers of Linux, from its errno: no space left, quota used up, file too large; and those of Windows: the disk is full.
    private static readonly int[] Full = [28, 122, 27, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    /// <summary>True where the file could not be written for want of room.</summary>
    public static bool IsFull(Exception error) => Full.Contains(error.HResult) || (error.InnerException is { } inner && IsFull(inner));

    /// <summary>The sentence.</summary>
    public static Fault Told(Exception error) => error switch
    {
        FileTroubleException known => known.Fault,
        _ when IsFull(error) => CommandFaults.DiskFullElsewhere(),
        DirectoryNotFoundException or UnauthorizedAccessException => CommandFaults.CannotReach(error is UnauthorizedAccessException),
        PathTooLongException => CommandFaults.NameTooLong(),
        _ => CommandFaults.DiskFails(),
    };
}
