using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Offcuts.Store;

/// <summary>
/// Opens a yard file: looks at it without writing, then brings it to the newest version. A file that is refused is left as it
/// was, byte for byte.
/// </summary>
internal sealed class YardOpening(string path, TimeSpan patience, IReadOnlyList<Migration> migrations, Func<DateOnly> today)
{
    /// <summary>Marks a file as a yard, in its header: the letters OFCT.</summary>
    public const int ApplicationId = 0x4F464354;

    private long Newest => migrations[^1].Version;

    /// <summary>
    /// True while there is no yard in the file. Throws <see cref="YardUnavailableException"/> where none could ever be.
    /// </summary>
    public bool IsMissing() => Told(() =>
    {
        if (Directory.Exists(path)) throw YardUnavailableException.Unreadable(path, "it is a folder");
        var file = new FileInfo(path);
        if (!file.Exists)
        {
            for (var folder = file.Directory; folder is { Exists: false }; folder = folder.Parent)
                if (File.Exists(folder.FullName)) throw YardUnavailableException.Unreadable(path, "its folder can't be made");
            return true;
        }

        if (file.IsReadOnly)
        {
            file.OpenRead().Dispose();
            throw YardUnavailableException.ReadOnly(path);
        }

        return file.Length == 0;
    });

    /// <summary>An open connection to a yard of the newest version. Throws <see cref="YardUnavailableException"/>.</summary>
    public SqliteConnection Open() => Told(() =>
    {
        LookWithoutWriting();
        var connection = OpenForWriting();
        return Ready(connection, () => Migrate(connection));
    });

    /// <summary>An empty yard that is in no file: what a yard that is not there yet looks like.</summary>
    public SqliteConnection OpenNowhere() => Told(() =>
    {
        var connection = Connect(SqliteOpenMode.Memory);
        return Ready(connection, () =>
        {
            Prepare(connection);
            Migrate(connection);
        });
    });

    /// <summary>
    /// Makes the file, and its folder, and begins the transaction in which the yard comes about: a yard that is not saved in the end was never there.
    /// Waits where another program is doing the same.
    /// </summary>
    public SqliteConnection BeginNew() => Told(() =>
    {
        PrivateFile.Folder(Path.GetDirectoryName(path)!);
        PrivateFile.Touch(path);
        var connection = OpenForWriting();
        return Ready(connection, () =>
        {
            try
            {
                connection.Execute("BEGIN IMMEDIATE");
                Bring(connection);
            }
            catch (Exception error) when (error is not SqliteException { SqliteErrorCode: 5 })
            {
                // Not where another program holds it, which is making the yard.
                GiveUpNew(connection);
                throw;
            }
        });
    });

    /// <summary>
    /// Ends what <see cref="BeginNew"/> began without saving it. A file that has nothing in it goes; that is done while nobody else can write to it, and the
    /// database refuses to write to a file that is gone, so that no other program's yard is lost with it.
    /// </summary>
    public void GiveUpNew(SqliteConnection connection)
    {
        // What the disk had no room for is rolled back by then: the file is held anew, which writes nothing.
        if (raw.sqlite3_get_autocommit(connection.Handle) != 0 && !HoldAgain(connection)) return;
        if (new FileInfo(path) is { Exists: true, Length: 0 } file)
        {
            try
            {
                file.Delete();
            }
            catch (IOException)
            {
                // Some systems don't let go of an open file: then an empty one stays, which is a yard with nothing in it.
            }
        }

        if (raw.sqlite3_get_autocommit(connection.Handle) == 0) connection.Execute("ROLLBACK");
    }

    private static bool HoldAgain(SqliteConnection connection)
    {
        try
        {
            // Even beginning opens a journal, for which there is no room.
            connection.Execute("PRAGMA journal_mode = MEMORY");
            connection.Execute("BEGIN IMMEDIATE");
            return true;
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    private T Told<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException error) when (YardUnavailableException.From(error, path) is { } unavailable)
        {
            throw unavailable;
        }
        catch (UnauthorizedAccessException error)
        {
            throw YardUnavailableException.Unreadable(path, "you may not open it or make its folder", error);
        }
        catch (IOException error)
        {
            throw YardUnavailableException.Unreadable(path, "its folder can't be made", error);
        }
    }

    // A connection that fails on the way is closed.
    private static SqliteConnection Ready(SqliteConnection connection, Action work)
    {
        try
        {
            work();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    // A change that was cut off by a power failure is rolled back by whoever may write, so a file that can't be looked at for
    // that reason is looked at by the connection that will use it.
    private void LookWithoutWriting()
    {
        const int readOnly = 8, cannotOpen = 14;
        var interrupted = File.Exists(path + "-journal");
        try
        {
            using var connection = Connect(SqliteOpenMode.ReadOnly);
            RefuseWhatIsNoYard(connection);
            RefuseDamage(connection);
        }
        catch (SqliteException error) when (interrupted && error.SqliteErrorCode is readOnly or cannotOpen)
        {
        }
    }

    private SqliteConnection OpenForWriting()
    {
        var connection = Connect(SqliteOpenMode.ReadWriteCreate);
        return Ready(connection, () =>
        {
            if (raw.sqlite3_db_readonly(connection.Handle, "main") == 1) throw YardUnavailableException.ReadOnly(path);
            RefuseWhatIsNoYard(connection);
            connection.Execute("PRAGMA journal_mode = DELETE");
            Prepare(connection);
        });
    }

    // 64 MB of cache keep even a very large change from being written in parts before it is whole.
    // synchronous EXTRA also syncs the folder once the journal is gone, so that a power failure can't bring it back.
    private static void Prepare(SqliteConnection connection) => connection.Execute("""
        PRAGMA synchronous = EXTRA;
        PRAGMA foreign_keys = ON;
        PRAGMA recursive_triggers = ON;
        PRAGMA trusted_schema = OFF;
        PRAGMA cell_size_check = ON;
        PRAGMA cache_size = -65536;
        """);

    private SqliteConnection Connect(SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = mode == SqliteOpenMode.Memory ? ":memory:" : path,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = Math.Max(1, (int)Math.Ceiling(patience.TotalSeconds)),
        }.ToString());
        return Ready(connection, () =>
        {
            connection.Open();
            connection.Execute($"PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}");
        });
    }

    private void RefuseWhatIsNoYard(SqliteConnection connection)
    {
        var version = Version(connection);
        var id = connection.ExecuteScalar<long>("PRAGMA application_id");
        if (id != ApplicationId)
        {
            var empty = id == 0 && version == 0 && connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_schema") == 0;
            if (!empty) throw YardUnavailableException.NotAYard(path, "it is a database of some other program");
        }

        if (version > Newest) throw YardUnavailableException.NewerVersion(path, version, Newest);
    }

    private void RefuseDamage(SqliteConnection connection)
    {
        var found = connection.ExecuteScalar<string>("PRAGMA quick_check(1)");
        if (found != "ok") throw YardUnavailableException.Damaged(path, found ?? "it can't be checked");
    }

    private void Migrate(SqliteConnection connection)
    {
        if (Version(connection) == Newest) return;
        connection.Execute("BEGIN IMMEDIATE");
        try
        {
            Bring(connection);
            connection.Execute("COMMIT");
        }
        catch
        {
            if (raw.sqlite3_get_autocommit(connection.Handle) == 0) connection.Execute("ROLLBACK");
            throw;
        }
    }

    // Inside a transaction. Another program may have done it while this one waited for its turn.
    private void Bring(SqliteConnection connection)
    {
        var version = Version(connection);
        if (version >= Newest) return;
        if (version > 0) KeepCopy();
        foreach (var step in migrations.Where(step => step.Version > version)) connection.Execute(step.Sql);
        connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Newest}");
    }

    // The writing connection holds the lock and has written nothing yet, so another one still reads the yard as it was.
    private void KeepCopy()
    {
        var kept = new Backups(path).Make(BackupKind.Upgrade, today(), patience);
        if (!kept.Ok) throw YardUnavailableException.NotUpgraded(path, kept.Fault.Sentence);
    }

    private static long Version(SqliteConnection connection) => connection.ExecuteScalar<long>("PRAGMA user_version");
}
