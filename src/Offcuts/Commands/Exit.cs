namespace Offcuts.Commands;

/// <summary>Exit statuses, the same for every command.</summary>
internal static class Exit
{
    /// <summary>Done; a plan fills everything.</summary>
    public const int Done = 0;

    /// <summary>A plan leaves something unfilled, or nothing fits the place that a piece was looked for.</summary>
    public const int Unfilled = 1;

    /// <summary>There was no room for the file that was to be written.</summary>
    public const int NotWritten = 1;

    /// <summary>What was typed or read is refused; nothing was changed.</summary>
    public const int Refused = 2;

    /// <summary>The yard is locked, damaged, unreadable, read-only or from a newer version.</summary>
    public const int YardUnavailable = 3;

    /// <summary>The program itself failed.</summary>
    public const int Broken = 4;

    /// <summary>Stopped by Ctrl-C, as shells count it; by another signal it is 128 and its number.</summary>
    public const int Stopped = 130;
}
