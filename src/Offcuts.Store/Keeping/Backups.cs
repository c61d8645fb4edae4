using System.Globalization;
using System.Text.RegularExpressions;
using Dapper;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>Why a backup was made. The last ten of each kind are kept, so that none crowds another out.</summary>
public enum BackupKind
{
    /// <summary>Before the first change of a day.</summary>
    Daily,

    /// <summary>Before the file was brought to a newer version.</summary>
    Upgrade,

    /// <summary>Because somebody asked for it.</summary>
    ByHand,

    /// <summary>What was there before somebody went back to another.</summary>
    Restore,
}

/// <summary>One backup: a whole yard, that was opened and checked when it was made.</summary>
/// <param name="Number">Its number, from 1, never used again while it is there; a later one has a higher, whatever the clock says.</param>
/// <param name="Day">The day it was made, by the clock of that day.</param>
/// <param name="Kind">Why.</param>
/// <param name="Path">The file.</param>
/// <param name="Bytes">How large it is.</param>
public sealed record Backup(int Number, DateOnly Day, BackupKind Kind, string Path, long Bytes);

/// <summary>A copy of the yard that is to become the day's backup once it is checked.</summary>
/// <param name="Part">The file.</param>
/// <param name="Day">The day.</param>
internal sealed record DayCopy(string Part, DateOnly Day);

/// <summary>
/// The backups of a yard, in the folder <c>yard.offcuts.backups</c> beside it: files that are yards themselves, named by number, day and
/// kind. One that is there is whole: it is made under another name, opened and checked, and only then given its own.
/// </summary>
public sealed partial class Backups(string yardPath)
{
    /// <summary>How many of each kind are kept.</summary>
    public const int Kept = 10;

    // What has to be free besides the copy itself, so that the backup never takes the room that the change needs.
    private const long RoomToLeave = 20_000_000;

    private static readonly TimeSpan LeftOver = TimeSpan.FromHours(1);

    private static readonly (BackupKind Kind, string Word)[] KindWords =
        [(BackupKind.Daily, "daily"), (BackupKind.Upgrade, "upgrade"), (BackupKind.ByHand, "by-hand"), (BackupKind.Restore, "restore")];

    /// <summary>The folder, there or not.</summary>
    public string Folder => yardPath + ".backups";

    /// <summary>Every backup, the latest first. A file of another name is none.</summary>
    public IReadOnlyList<Backup> All() => !Directory.Exists(Folder)
        ? []
        : [.. new DirectoryInfo(Folder).GetFiles().Select(Named).OfType<Backup>().OrderByDescending(one => one.Number).ThenByDescending(one => one.Path, StringComparer.Ordinal)];

    /// <summary>
    /// Copies the yard for the day's backup where no daily one has this day, without checking the copy yet, since that takes much longer than the copy: whoever
    /// enters something need not wait for it. A copy of this day that a program left when it was killed before it was checked is taken over: only that one is
    /// from before the day's first change. A clock set back makes another day, and so another backup.
    /// </summary>
    /// <returns>The copy, to be ended with <see cref="EndDay"/>; null where the day has its backup; or why it could not be made.</returns>
    internal Result<DayCopy?> BeginDay(DateOnly today, TimeSpan patience) => Told<DayCopy?>(Folder, () =>
    {
        if (HasDay(today)) return Result<DayCopy?>.Of(null);
        if (TakenOver(today, patience) is { } left) return left;
        if (!HasRoom()) return KeepFaults.NoRoomForBackup(Folder);
        YardCopy.SettleJournal(yardPath, patience);
        PrivateFile.Folder(Folder);
        DropLeftOvers();
        var part = Path.Combine(Folder, $".{Path.GetRandomFileName()}.part");
        try
        {
            YardCopy.Copy(yardPath, part, patience);
            // By its name, it is a whole copy from before the day's first change.
            var copy = Path.Combine(Folder, DayPart(today) + Path.GetFileName(part)[1..]);
            File.Move(part, copy, overwrite: false);
            return new DayCopy(copy, today);
        }
        catch
        {
            File.Delete(part);
            throw;
        }
    });

    /// <summary>
    /// Checks that copy and makes it the day's backup; or says why it is none, and it is gone. Where another program made the day's backup meanwhile, or took
    /// this copy over to do so, it is not needed any more.
    /// </summary>
    internal Fault? EndDay(DayCopy copy, TimeSpan patience)
    {
        if (!File.Exists(copy.Part)) return null;
        var made = InFolder(() =>
        {
            try
            {
                if (HasDay(copy.Day)) return All()[0];
                if (YardCopy.Checked(copy.Part, patience) is { } fault) return fault;
                if (HasDay(copy.Day)) return All()[0];
                var backup = Name(copy.Part, BackupKind.Daily, copy.Day);
                LetGo(BackupKind.Daily);
                return backup;
            }
            finally
            {
                File.Delete(copy.Part);
            }
        });
        return made.Ok ? null : KeepFaults.NoBackupMade(made.Fault.Sentence);
    }

    /// <summary>
    /// Makes one of the yard as it is saved, checks it, and lets go of those of its kind beyond the last ten. The yard may be open, and be
    /// held for writing by a connection that has written nothing yet.
    /// </summary>
    public Result<Backup> Make(BackupKind kind, DateOnly day, TimeSpan patience) => InFolder(() =>
    {
        if (!HasRoom()) return KeepFaults.NoRoomForBackup(Folder);
        YardCopy.SettleJournal(yardPath, patience);
        return Publish(kind, day, part => YardCopy.Make(yardPath, part, patience));
    });

    /// <summary>Makes one in a file that is not there yet, checked as every other.</summary>
    public static Result<string> CopyTo(string yardPath, string file, TimeSpan patience)
    {
        var whole = Path.GetFullPath(file);
        if (Path.Exists(whole)) return KeepFaults.ThereAlready(file);
        var folder = Path.GetDirectoryName(whole) ?? whole;
        if (!Directory.Exists(folder)) return KeepFaults.BackupFolderShut(folder);
        var part = Path.Combine(folder, $".{Path.GetRandomFileName()}.part");
        return Told(folder, () =>
        {
            try
            {
                YardCopy.SettleJournal(yardPath, patience);
                if (YardCopy.Make(yardPath, part, patience) is { } fault) return fault;
                File.Move(part, whole, overwrite: false);
                return Result<string>.Of(whole);
            }
            finally
            {
                File.Delete(part);
            }
        });
    }

    /// <summary>
    /// Keeps a file as it is, readable or not, with the journal that belongs to it. Who holds the yard for writing meanwhile disposes of
    /// <paramref name="reading"/> only when it need not be held any more: on Unix, closing a file lets go of all that the program holds of it.
    /// </summary>
    internal Result<Backup> KeepAside(DateOnly day, out IDisposable reading)
    {
        var from = Stream.Null;
        var kept = InFolder(() => Publish(BackupKind.Restore, day, part =>
        {
            using var to = PrivateFile.New(part);
            from = new FileStream(yardPath, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            from.CopyTo(to);
            to.Flush(flushToDisk: true);
            return null;
        }).Then<Backup>(backup =>
        {
            if (File.Exists(yardPath + "-journal")) File.Copy(yardPath + "-journal", backup.Path + "-journal", overwrite: true);
            return backup;
        }));
        reading = from;
        return kept;
    }

    private static string DayPart(DateOnly day) => string.Create(CultureInfo.InvariantCulture, $".{day:yyyy-MM-dd}.");

    private bool HasDay(DateOnly day) => All().FirstOrDefault(one => one.Kind == BackupKind.Daily) is { } last && last.Day == day;

    // The oldest of this day that opens as a yard; whether it is whole, its check says, as of every copy.
    private DayCopy? TakenOver(DateOnly today, TimeSpan patience)
    {
        if (!Directory.Exists(Folder)) return null;
        foreach (var left in new DirectoryInfo(Folder).GetFiles(DayPart(today) + "*.part").OrderBy(file => file.LastWriteTimeUtc))
        {
            try
            {
                using (var connection = YardCopy.Connect(left.FullName, SqliteOpenMode.ReadOnly, patience)) connection.ExecuteScalar<long>("SELECT count(*) FROM piece");
                var own = Path.Combine(Folder, DayPart(today) + Path.GetRandomFileName() + ".part");
                left.MoveTo(own);
                return new DayCopy(own, today);
            }
            catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
            {
            }
        }

        return null;
    }

    private Result<Backup> Publish(BackupKind kind, DateOnly day, Func<string, Fault?> copy)
    {
        PrivateFile.Folder(Folder);
        DropLeftOvers();
        var part = Path.Combine(Folder, $".{Path.GetRandomFileName()}.part");
        try
        {
            if (copy(part) is { } fault) return fault;
            var backup = Name(part, kind, day);
            LetGo(kind);
            return backup;
        }
        finally
        {
            File.Delete(part);
        }
    }

    // Another program may take the number at the same moment; then the next is tried.
    private Backup Name(string part, BackupKind kind, DateOnly day)
    {
        var word = KindWords.Single(known => known.Kind == kind).Word;
        for (var number = (All().FirstOrDefault()?.Number ?? 0) + 1; ; number++)
        {
            var path = Path.Combine(Folder, string.Create(CultureInfo.InvariantCulture, $"{number:0000}-{day:yyyy-MM-dd}-{word}.offcuts"));
            if (Directory.GetFiles(Folder, string.Create(CultureInfo.InvariantCulture, $"{number:0000}-*.offcuts")).Length > 0) continue;
            try
            {
                File.Move(part, path, overwrite: false);
                return new Backup(number, day, kind, path, new FileInfo(path).Length);
            }
            catch (IOException) when (File.Exists(path) && File.Exists(part))
            {
            }
        }
    }

    private void LetGo(BackupKind kind)
    {
        foreach (var old in All().Where(one => one.Kind == kind).Skip(Kept))
        {
            File.Delete(old.Path);
            File.Delete(old.Path + "-journal");
        }
    }

    // What a program that was killed was making.
    private void DropLeftOvers()
    {
        foreach (var part in new DirectoryInfo(Folder).GetFiles(".*.part*"))
            if ((DateTime.UtcNow - part.LastWriteTimeUtc).Duration() > LeftOver) part.Delete();
    }

    private bool HasRoom()
    {
        try
        {
            return new DriveInfo(Path.GetDirectoryName(yardPath)!).AvailableFreeSpace > new FileInfo(yardPath).Length + RoomToLeave;
        }
        catch (Exception error) when (error is IOException or ArgumentException or UnauthorizedAccessException)
        {
            return true;
        }
    }

    private Result<Backup> InFolder(Func<Result<Backup>> work) => Told(Folder, work);

    private static Result<T> Told<T>(string folder, Func<Result<T>> work)
    {
        try
        {
            return work();
        }
        catch (UnauthorizedAccessException)
        {
            return KeepFaults.BackupFolderShut(folder);
        }
        catch (IOException error)
        {
            return PrivateFile.IsFull(error) ? KeepFaults.NoRoomForBackup(folder) : PrivateFile.IsReadOnly(error) ? KeepFaults.BackupFolderShut(folder) : KeepFaults.BackupFails(folder);
        }
        catch (SqliteException error)
        {
            const int full = 13;
            return error.SqliteErrorCode == full ? KeepFaults.NoRoomForBackup(folder) : KeepFaults.BackupFails(folder);
        }
    }

    private static Backup? Named(FileInfo file)
    {
        var match = FileName().Match(file.Name);
        return match.Success
            && DateOnly.TryParseExact(match.Groups["day"].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            && int.TryParse(match.Groups["number"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && KindWords.FirstOrDefault(known => known.Word == match.Groups["kind"].Value) is { Word: not null } kind
                ? new Backup(number, day, kind.Kind, file.FullName, file.Length)
                : null;
    }

    [GeneratedRegex(@"^(?<number>\d{4,9})-(?<day>\d{4}-\d\d-\d\d)-(?<kind>[a-z-]+)\.offcuts$", RegexOptions.CultureInvariant)]
    private static partial Regex FileName();
}
