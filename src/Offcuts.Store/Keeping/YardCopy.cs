using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>Copies a yard, page by page as one moment left it, and looks whether a file is a whole one.</summary>
internal static class YardCopy
{
    /// <summary>
    /// Copies into a file that is not there yet, opens the copy and checks it; the copy is on the disk then. A fault where it came out damaged.
    /// Throws <see cref="SqliteException"/> and <see cref="IOException"/>; what it made stays for the caller to remove.
    /// </summary>
    public static Fault? Make(string from, string to, TimeSpan patience)
    {
        Copy(from, to, patience);
        return Checked(to, patience);
    }

    /// <summary>Only copies, into a file that is not there yet; whether it came out right, <see cref="Checked"/> says. Takes much less time than that.</summary>
    public static void Copy(string from, string to, TimeSpan patience)
    {
        PrivateFile.New(to).Dispose();
        using var source = Connect(from, SqliteOpenMode.ReadOnly, patience);
        using var copy = Connect(to, SqliteOpenMode.ReadWrite, patience);

        // What is cut off is thrown away whole, so the copy needs no journal of its own.
        copy.Execute("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF");
        source.BackupDatabase(copy);
    }

    /// <summary>Brings a copy to the disk, opens it and checks it; what is wrong with it, or null.</summary>
    public static Fault? Checked(string to, TimeSpan patience)
    {
        using (var written = new FileStream(to, FileMode.Open, FileAccess.ReadWrite)) written.Flush(flushToDisk: true);
        return Wrong(to, patience);
    }

    /// <summary>
    /// Puts a change back that was cut off, as whoever opens the yard would do; only a connection that may write can. Where it can't be done,
    /// whoever reads the file next is told.
    /// </summary>
    public static void SettleJournal(string path, TimeSpan patience)
    {
        if (!File.Exists(path + "-journal")) return;
        try
        {
            using var connection = Connect(path, SqliteOpenMode.ReadWrite, patience);
            connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_schema");
        }
        catch (SqliteException)
        {
        }
    }

    /// <summary>What is wrong with a file as a database, or null where it is whole.</summary>
    public static Fault? Wrong(string path, TimeSpan patience)
    {
        using var connection = Connect(path, SqliteOpenMode.ReadOnly, patience);
        var found = connection.ExecuteScalar<string>("PRAGMA integrity_check(1)");
        return found == "ok" ? null : KeepFaults.BackupNotWhole(found ?? "it can't be checked");
    }

    /// <summary>A connection that keeps nothing open once it is closed.</summary>
    public static SqliteConnection Connect(string path, SqliteOpenMode mode, TimeSpan patience)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = Math.Max(1, (int)Math.Ceiling(patience.TotalSeconds)),
        }.ToString());
        try
        {
            connection.Open();
            connection.Execute($"PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}; PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
