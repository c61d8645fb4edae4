using Microsoft.Data.Sqlite;

namespace Offcuts.Store;

/// <summary>Why a yard file can't be used. What was saved in it is still there.</summary>
public enum UnavailableReason
{
    /// <summary>Another program has held it for longer than one waits.</summary>
    Locked,

    /// <summary>It was a yard, but parts of it are wrong or gone.</summary>
    Damaged,

    /// <summary>A newer version of the program has written it.</summary>
    NewerVersion,

    /// <summary>It, or its folder, may not be written.</summary>
    ReadOnly,

    /// <summary>It may not be read, or is no file, or its folder can't be made.</summary>
    Unreadable,

    /// <summary>There is no room for what was to be saved; nothing of it was.</summary>
    DiskFull,

    /// <summary>It is some other kind of file.</summary>
    NotAYard,

    /// <summary>It was put elsewhere, removed or replaced while it was open.</summary>
    Moved,

    /// <summary>It is of an older version and was not brought to this one, since no backup of it could be made.</summary>
    NotUpgraded,
}

/// <summary>The yard file can't be used. The message is one clear sentence for the user; nothing that was saved is lost.</summary>
public sealed class YardUnavailableException : Exception
{
    private YardUnavailableException(UnavailableReason reason, string path, string sentence, Exception? inner)
        : base(sentence, inner) => (Reason, YardPath) = (reason, path);

    /// <summary>Why.</summary>
    public UnavailableReason Reason { get; }

    /// <summary>The file.</summary>
    public string YardPath { get; }

    /// <summary>What is behind it, in short: the words of what was caught, else the sentence.</summary>
    internal string Inner => InnerException?.Message ?? Message;

    internal static YardUnavailableException Locked(string path, Exception? inner = null) =>
        new(UnavailableReason.Locked, path, $"{path} is in use by another program; nothing was changed, try again in a moment", inner);

    internal static YardUnavailableException Damaged(string path, string what, Exception? inner = null) =>
        new(UnavailableReason.Damaged, path, $"{path} is damaged ({what}) and was left as it is; offcuts check tells more, offcuts restore goes back to a backup", inner);

    internal static YardUnavailableException NewerVersion(string path, long version, long newest) =>
        new(UnavailableReason.NewerVersion, path, $"{path} is of version {version}, written by a newer Offcuts than this one, which knows versions up to {newest}; it was left as it is", null);

    internal static YardUnavailableException ReadOnly(string path, Exception? inner = null) =>
        new(UnavailableReason.ReadOnly, path, $"{path} or its folder may only be read, not written; nothing was changed", inner);

    internal static YardUnavailableException Unreadable(string path, string why, Exception? inner = null) =>
        new(UnavailableReason.Unreadable, path, $"{path} can't be opened: {why}", inner);

    internal static YardUnavailableException DiskFull(string path, Exception? inner = null) =>
        new(UnavailableReason.DiskFull, path, $"there is no room left to save in {path}; nothing of this change was saved, all that was saved before is still there", inner);

    internal static YardUnavailableException NotAYard(string path, string what, Exception? inner = null) =>
        new(UnavailableReason.NotAYard, path, $"{path} is no yard: {what}; it was left as it is", inner);

    internal static YardUnavailableException Moved(string path, Exception? inner = null) =>
        new(UnavailableReason.Moved, path, $"{path} was put elsewhere, removed or replaced while it was open; nothing of this change was saved: open the yard anew", inner);

    internal static YardUnavailableException NotUpgraded(string path, string why) =>
        new(UnavailableReason.NotUpgraded, path, $"{path} is of an older version and was left so, since no backup of it could be made first: {why}", null);

    /// <summary>What an error of the database means to the user, or null where it is a bug of the program.</summary>
    /// <remarks>Source of the numbers: the result codes of SQLite.</remarks>
    internal static YardUnavailableException? From(SqliteException error, string path)
    {
        const int sql = 1, perm = 3, busy = 5, locked = 6, readOnly = 8, inputOutput = 10, corrupt = 11, full = 13, cannotOpen = 14, auth = 23, notADatabase = 26, moved = 1032;
        return error.SqliteErrorCode switch
        {
            readOnly when error.SqliteExtendedErrorCode == moved => Moved(path, error),
            busy or locked => Locked(path, error),
            readOnly => ReadOnly(path, error),
            corrupt => Damaged(path, "its database is not whole", error),
            // The statements are always the same, so that it is the file's tables that are others.
            sql when error.Message.Contains("no such column", StringComparison.Ordinal) || error.Message.Contains("no such table", StringComparison.Ordinal) || error.Message.Contains("malformed database schema", StringComparison.Ordinal)
                => Damaged(path, "its tables are not those of a yard", error),
            full => DiskFull(path, error),
            notADatabase => NotAYard(path, "its first bytes are those of some other file", error),
            cannotOpen => Unreadable(path, "the file or its folder may not be opened", error),
            perm or auth => Unreadable(path, "you may not open it", error),
            inputOutput => Unreadable(path, "the disk reports a fault", error),
            _ => null,
        };
    }
}
