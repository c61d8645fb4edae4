using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>What came of going back.</summary>
/// <param name="KeptAs">The backup that the present file is kept as; null where there was none.</param>
public sealed record Restored(Backup? KeptAs);

/// <summary>
/// Goes back to a backup or to any other file that is a whole yard. What is in the yard's place is kept first, as a backup of its own, whatever
/// state it is in; only then does a copy of the other take its place, in one step. Whoever has the yard open meanwhile saves nothing any more and
/// is told so.
/// </summary>
public sealed class Restoring(string yardPath, TimeSpan patience)
{
    /// <summary>Does it. Throws <see cref="YardUnavailableException"/> where another program is saving all the while.</summary>
    public Result<Restored> From(string source, DateOnly today)
    {
        var newest = Migration.All[^1].Version;
        if (Path.GetFullPath(source) == Path.GetFullPath(yardPath)) return KeepFaults.RestoreFromItself(source);
        var fresh = yardPath + ".restored-" + Path.GetRandomFileName();
        try
        {
            var folder = Path.GetDirectoryName(Path.GetFullPath(yardPath))!;
            using var settled = SettledFile.Of(source, folder, patience);
            if (WhyNot(settled.Path, newest) is { } why) return KeepFaults.CanNotRestore(source, why);
            PrivateFile.Folder(folder);
            if (YardCopy.Make(settled.Path, fresh, patience) is { } damaged) return KeepFaults.CanNotRestore(source, damaged.Sentence);
            return !File.Exists(yardPath) ? Put(fresh, null) : Replace(fresh, today);
        }
        catch (SqliteException error) when (YardUnavailableException.From(error, source) is { } unavailable)
        {
            return KeepFaults.CanNotRestore(source, unavailable.Message);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return KeepFaults.CanNotRestore(source, error is IOException full && PrivateFile.IsFull(full) ? "there is no room for it" : "the yard's folder can't be written");
        }
        finally
        {
            File.Delete(fresh);
        }
    }

    private string? WhyNot(string source, long newest)
    {
        using var connection = YardCopy.Connect(source, SqliteOpenMode.ReadOnly, patience);
        if (connection.ExecuteScalar<long>("PRAGMA application_id") != YardOpening.ApplicationId) return "it is no yard";
        var version = connection.ExecuteScalar<long>("PRAGMA user_version");
        if (version > newest) return $"it is of version {version}, and this Offcuts knows versions up to {newest}";
        return connection.ExecuteScalar<string>("PRAGMA integrity_check(1)") is var found && found == "ok" ? null : $"it is damaged itself ({found})";
    }

    // Held, nobody saves anything between the moment it is kept and the moment it is replaced. One that can't be held is kept as it lies there.
    private Result<Restored> Replace(string fresh, DateOnly today)
    {
        using var held = Hold();
        var backups = new Backups(yardPath);
        if (held is not null && backups.Make(BackupKind.Restore, today, patience).TryGet(out var copied)) return PutOver(fresh, copied);
        var kept = backups.KeepAside(today, out var reading);

        // What is not held may be let go of; Windows replaces no file that is open.
        if (held is null) reading.Dispose();
        using (reading) return kept.Then<Restored>(aside => PutOver(fresh, aside));
    }

    private Restored PutOver(string fresh, Backup aside)
    {
        // A journal belongs to the file that goes, and would be put over the one that comes.
        File.Delete(yardPath + "-journal");
        return Put(fresh, aside);
    }

    private Restored Put(string fresh, Backup? aside)
    {
        LayJournalAside();
        File.Move(fresh, yardPath, overwrite: aside is not null);
        return new Restored(aside);
    }

    // Left of a yard that is lost, it would be put over the one that comes by whoever opens that next. It is kept, since the lost file may be found.
    private void LayJournalAside()
    {
        var journal = yardPath + "-journal";
        if (File.Exists(yardPath) || !File.Exists(journal)) return;
        var number = 1;
        while (Path.Exists($"{yardPath}.lost-journal-{number}")) number++;
        File.Move(journal, $"{yardPath}.lost-journal-{number}", overwrite: false);
    }

    private SqliteConnection? Hold()
    {
        SqliteConnection? connection = null;
        try
        {
            connection = YardCopy.Connect(yardPath, SqliteOpenMode.ReadWrite, patience);
            connection.Execute("BEGIN IMMEDIATE");
            return connection;
        }
        catch (SqliteException error)
        {
            connection?.Dispose();
            var told = YardUnavailableException.From(error, yardPath);
            if (told?.Reason == UnavailableReason.Locked) throw told;
            return null;
        }
    }
}
