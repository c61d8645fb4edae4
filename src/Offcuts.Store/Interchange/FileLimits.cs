namespace Offcuts.Store.Interchange;

/// <summary>How much of a file is taken in before it is taken for a mistake.</summary>
public sealed record FileLimits
{
    /// <summary>200 MB, and at most 1000 faults listed.</summary>
    public static FileLimits Usual { get; } = new();

    /// <summary>A file with more bytes is refused.</summary>
    public long MostBytes { get; init; } = 200_000_000;

    /// <summary>Faults listed one by one; the rest are only counted.</summary>
    public int MostFaults { get; init; } = 1000;

    /// <summary>A row that goes on past its first 64 KB and has more bytes than this ends the reading.</summary>
    public int MostRowBytes { get; init; } = 128 * 1024;
}
