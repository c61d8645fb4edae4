using Dapper;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Offcuts.Store;

/// <summary>
/// Opens a yard file: looks at it without writing, then brings it to the newest version. A file that is refused is left as it
/// was, byte for byte.
/// </summary>
internal sealed class YardOpening(string path, TimeSpan patience, IReadOnlyList<Migration> migrations)
{
    /// <summary>Marks a file as a yard, in its header: the letters OFCT.</summary>
    public const int ApplicationId = 0x4F464354;

    private long Newest => migrations[^1].Version;

    /// <summary>An open connection to a yard of the newest version. Throws <see cref="YardUnavailableException"/>.</summary>
    public SqliteConnection Open()
    {
        var isNew = MakeReady();
        try
        {
            if (!isNew) LookWithoutWriting();
            return OpenForWriting();
        }
        catch (SqliteException error) when (YardUnavailableException.From(error, path) is { } unavailable)
        {
            throw unavailable;
        }
    }

    /// <summary>True where there is no yard in the file yet.</summary>
    private bool MakeReady()
    {
        if (Directory.Exists(path)) throw YardUnavailableException.Unreadable(path, "it is a folder");
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                return true;
            }

            if (file.IsReadOnly)
            {
                file.OpenRead().Dispose();
                throw YardUnavailableException.ReadOnly(path);
            }

            return file.Length == 0;
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
        try
        {
            if (raw.sqlite3_db_readonly(connection.Handle, "main") == 1) throw YardUnavailableException.ReadOnly(path);
            RefuseWhatIsNoYard(connection);

            // 64 MB of cache keep even a very large change from being written in parts before it is whole.
            // synchronous EXTRA also syncs the folder once the journal is gone, so that a power failure can't bring it back.
            connection.Execute("""
                PRAGMA journal_mode = DELETE;
                PRAGMA synchronous = EXTRA;
                PRAGMA foreign_keys = ON;
                PRAGMA recursive_triggers = ON;
                PRAGMA trusted_schema = OFF;
                PRAGMA cell_size_check = ON;
                PRAGMA cache_size = -65536;
                """);
            Migrate(connection);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private SqliteConnection Connect(SqliteOpenMode mode)
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
            connection.Execute($"PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
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
            // Another program may have done it while this one waited for its turn.
            var version = Version(connection);
            if (version is > 0 && version < Newest) KeepCopy(version);
            foreach (var step in migrations.Where(step => step.Version > version)) connection.Execute(step.Sql);
            connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Newest}");
            connection.Execute("COMMIT");
        }
        catch
        {
            if (raw.sqlite3_get_autocommit(connection.Handle) == 0) connection.Execute("ROLLBACK");
            throw;
        }
    }

    // The writing connection holds the lock and has written nothing yet, so another one still reads the yard as it was.
    private void KeepCopy(long version)
    {
        var copy = $"{path}.version-{version}";
        for (var i = 2; File.Exists(copy); i++) copy = $"{path}.version-{version}-{i}";
        using var from = Connect(SqliteOpenMode.ReadOnly);
        using var to = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = copy, Pooling = false }.ToString());
        to.Open();
        from.BackupDatabase(to);
    }

    private static long Version(SqliteConnection connection) => connection.ExecuteScalar<long>("PRAGMA user_version");
}
