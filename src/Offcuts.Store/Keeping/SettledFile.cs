using Dapper;
using Microsoft.Data.Sqlite;

namespace Offcuts.Store;

/// <summary>
/// A file to read from that is itself left untouched, byte for byte: mostly the file; where a change was cut off in it, which only writing puts
/// back, a copy in which that is done, gone when this is disposed of.
/// </summary>
internal sealed class SettledFile : IDisposable
{
    // So often somebody else may put the change back while the two are being copied.
    private const int MostTries = 5;

    private readonly string? _folder;

    private SettledFile(string path, string? folder) => (Path, _folder) = (path, folder);

    /// <summary>What to read.</summary>
    public string Path { get; }

    /// <summary>
    /// The file, or a settled copy of it in a folder of its own beneath <paramref name="near"/>, or where that is not there among the system's
    /// temporary files. Throws <see cref="IOException"/> and <see cref="UnauthorizedAccessException"/> where no copy can be made.
    /// </summary>
    public static SettledFile Of(string path, string? near, TimeSpan patience)
    {
        for (var tries = 0; tries < MostTries && IsCutOff(path, patience); tries++)
        {
            var folder = NewFolder(near);
            var copy = new SettledFile(System.IO.Path.Combine(folder, "copy.offcuts"), folder);
            try
            {
                if (!copy.Take(path)) continue;
                YardCopy.SettleJournal(copy.Path, patience);
                return copy;
            }
            catch
            {
                copy.Dispose();
                throw;
            }
        }

        return new SettledFile(path, null);
    }

    /// <summary>Removes the copy, where there is one.</summary>
    public void Dispose()
    {
        if (_folder is not null && Directory.Exists(_folder)) Directory.Delete(_folder, recursive: true);
    }

    private static bool IsCutOff(string path, TimeSpan patience)
    {
        if (!File.Exists(path + "-journal")) return false;
        try
        {
            using var connection = YardCopy.Connect(path, SqliteOpenMode.ReadOnly, patience);
            connection.ExecuteScalar<long>("SELECT count(*) FROM sqlite_schema");
            return false;
        }
        catch (SqliteException error)
        {
            // SQLITE_READONLY_ROLLBACK, by SQLite's page of result codes.
            const int readOnlyRollback = 776;
            return error.SqliteExtendedErrorCode == readOnlyRollback;
        }
    }

    // The journal is as it was before the file was read: what the file may have had of the change meanwhile, the journal puts back.
    private bool Take(string path)
    {
        var journal = new FileInfo(path + "-journal");
        var (length, written) = journal.Exists ? (journal.Length, journal.LastWriteTimeUtc) : default;
        Copy(path, Path);
        try
        {
            Copy(journal.FullName, Path + "-journal");
        }
        catch (FileNotFoundException)
        {
            Dispose();
            return false;
        }

        journal.Refresh();
        if (journal.Exists && (journal.Length, journal.LastWriteTimeUtc) == (length, written)) return true;
        Dispose();
        return false;
    }

    private static void Copy(string from, string to)
    {
        using var target = PrivateFile.New(to);
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        source.CopyTo(target);
    }

    private static string NewFolder(string? near)
    {
        var folder = System.IO.Path.Combine(near is not null && Directory.Exists(near) ? near : System.IO.Path.GetTempPath(), $".offcuts-{System.IO.Path.GetRandomFileName()}");
        PrivateFile.Folder(folder);
        return folder;
    }
}
