using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>
/// The yard: one file with everything in it. Everything is read as it stands at that moment; everything is changed by
/// <see cref="Change"/>, whole or not at all, and taken back by <see cref="Undo"/>. Safe to copy whenever no program writes to it.
/// For one thread at a time; several programs may have one file open.
/// </summary>
/// <remarks>
/// Every member throws <see cref="YardUnavailableException"/> where the file can't be used (locked, damaged, no room left). What
/// was saved stays saved.
/// </remarks>
public sealed partial class YardFile : IDisposable
{
    /// <summary>How long one waits for another program to finish with the file.</summary>
    public static TimeSpan UsualPatience { get; } = TimeSpan.FromSeconds(5);

    private readonly TimeProvider _clock;
    private readonly YardOpening _opening;
    private readonly DayBackup _backup;
    private readonly TimeSpan _patience;
    private readonly HashSet<Code> _drawn = [];
    private readonly long _version;
    private YardReader _reader;

    // True while nothing was ever saved in the file: what is read meanwhile is an empty yard in memory.
    private bool _missing;

    private YardFile(string path, TimeProvider clock, TimeSpan patience, IReadOnlyList<Migration> migrations)
    {
        (Path, _clock, _patience, _version) = (path, clock, patience, migrations[^1].Version);
        _opening = new YardOpening(path, patience, migrations, () => Today);
        _backup = new DayBackup(new Backups(path), clock, patience);
        _missing = _opening.IsMissing();
        Database = new Database(_missing ? _opening.OpenNowhere() : _opening.Open());
        _reader = new YardReader(Database, path);
    }

    /// <summary>The file, from the root of its drive.</summary>
    public string Path { get; }

    /// <summary>Why no backup of today could be made, or null. It is tried again at the first change ten minutes later. No change is held up by it.</summary>
    public Fault? BackupTrouble => _backup.Trouble;

    /// <summary>
    /// True where the day's copy is checked when <see cref="FinishBackup"/> is called, and at the latest when the file is closed, so that nobody waits for it; else it is
    /// checked at the end of the first change of the day.
    /// </summary>
    public bool FinishesBackupLater { get; set; }

    /// <summary>True while the day's copy is made and not checked yet.</summary>
    public bool HasUnfinishedBackup => _backup.IsUnfinished;

    internal Database Database { get; private set; }

    /// <summary>
    /// Opens a yard. Where the file is missing, the yard is empty, and the first change that is saved makes the file and its folder; brings a yard of an older version to this one, with
    /// a backup of it first. What is no yard, damaged, or of a newer version is left untouched.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="clock">Tells the time of each entry of the history.</param>
    public static YardFile Open(string path, TimeProvider clock) => Open(path, clock, UsualPatience);

    /// <summary>Opens a yard as above, waiting that long whenever another program holds the file.</summary>
    public static YardFile Open(string path, TimeProvider clock, TimeSpan patience) => Open(path, clock, patience, Migration.All);

    internal static YardFile Open(string path, TimeProvider clock, TimeSpan patience, IReadOnlyList<Migration> migrations) =>
        new(System.IO.Path.GetFullPath(path), clock, patience, migrations);

    /// <summary>A name for a hand-over, drawn by chance.</summary>
    public static string NewTransfer() => Transfers.Draw(RandomNumberGenerator.GetInt32);

    /// <summary>A code drawn by chance, unlike any that this yard ever had, undone or not, and any drawn here before.</summary>
    public Code NewCode() => Guard(() =>
    {
        while (true)
        {
            var code = Code.Draw(RandomNumberGenerator.GetInt32);
            if (_drawn.Add(code) && Database.Number("code_was_issued", ("code", code.Text)) == 0) return code;
        }
    });

    /// <summary>
    /// One change of the yard: everything that <paramref name="work"/> does is saved together as one entry of the history, or,
    /// where it meets a fault or throws, nothing is. Every fault is reported. Reading from this yard meanwhile shows the change so far.
    /// </summary>
    /// <param name="what">What is done, in a few words: <c>catalogued 12 pieces</c>.</param>
    /// <param name="work">Makes the change.</param>
    public Result<HistoryEntry> Change(string what, Action<YardChange> work) => InTransaction(() => Entry(what, work));

    /// <summary>
    /// The same, for work that rests on what was read before: refused where anybody has changed the yard since it stood at
    /// <paramref name="seen"/>, so that no other program's change is ever overwritten.
    /// </summary>
    /// <param name="seen">The <see cref="ChangeNumber"/> before the first reading.</param>
    /// <param name="what">What is done, in a few words.</param>
    /// <param name="work">Makes the change.</param>
    public Result<HistoryEntry> ChangeSince(long seen, string what, Action<YardChange> work) => InTransaction(() =>
        Database.Number("history_last_number") == seen
            ? Entry(what, work)
            : StoreFaults.ChangedMeanwhile());

    /// <summary>
    /// Does again what was refused because another program changed the yard meanwhile, for as long as one waits for a yard that is in use; then
    /// it is in use. For what is as right after the other's change as before it: more pieces, say.
    /// </summary>
    /// <param name="work">Reads, and ends in <see cref="ChangeSince"/>.</param>
    public Result<T> Insist<T>(Func<Result<T>> work)
    {
        var began = _clock.GetTimestamp();
        while (true)
        {
            var done = work();
            if (done.Ok || done.Fault != StoreFaults.ChangedMeanwhile()) return done;
            if (_clock.GetElapsedTime(began) > _patience) throw YardUnavailableException.Locked(Path);
        }
    }

    /// <summary>
    /// Takes back the last entry that was not taken back yet, whole. That is an entry of the history too, which itself is not
    /// taken back by the next undo: that one goes on to the entry before.
    /// </summary>
    /// <param name="seen">The <see cref="ChangeNumber"/> that whoever asks has seen: refused where it is another by now. Any where nothing is said.</param>
    /// <param name="tell">Told often how many rows are back, and of how many; where it throws, nothing is taken back.</param>
    public Result<HistoryEntry> Undo(long? seen = null, Action<int, int>? tell = null) => TakeBack("history_to_undo", "took back", StoreFaults.NothingToUndo(), seen, tell);

    /// <summary>
    /// Does again what the last undo took back, whole, where no new change was made since; again and again for the undos before it.
    /// That is an entry of the history too, which the next <see cref="Undo"/> takes back.
    /// </summary>
    /// <param name="seen">As for <see cref="Undo"/>.</param>
    /// <param name="tell">As for <see cref="Undo"/>.</param>
    public Result<HistoryEntry> Redo(long? seen = null, Action<int, int>? tell = null) => TakeBack("history_to_redo", "did again", StoreFaults.NothingToRedo(), seen, tell);

    /// <summary>
    /// Checks the day's copy and makes it a backup, where one was made and that is not done yet; what came of it, <see cref="BackupTrouble"/> says. Needs nothing of the
    /// yard, so that it may be called on any thread.
    /// </summary>
    public void FinishBackup() => _backup.Finish();

    /// <summary>Closes the file, with the day's backup finished first.</summary>
    public void Dispose()
    {
        FinishBackup();
        Database.Dispose();
    }

    /// <summary>The clock that its days are told by.</summary>
    public TimeProvider Clock => _clock;

    /// <summary>The day by that clock.</summary>
    public DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    // Saves what the work did where it gives a value; else, or where it throws, the yard stays as it was.
    private Result<HistoryEntry> InTransaction(Func<Result<HistoryEntry>> work) => Guard(() =>
    {
        if (Database.InTransaction) throw new InvalidOperationException("a change is being made already");
        if (!_missing) _backup.BeginOnceADay(Today);
        var (making, saved) = (_missing, false);
        if (making) Use(_opening.BeginNew());
        else Database.Execute("BEGIN IMMEDIATE");
        try
        {
            RefuseNewerVersion();
            var done = work();
            if (done.Ok) Database.Execute("COMMIT");
            saved = done.Ok;
            return done;
        }
        finally
        {
            if (making && !saved) GiveUpMaking();
            else if (Database.InTransaction) Database.Execute("ROLLBACK");
            if (!FinishesBackupLater) FinishBackup();
        }
    });

    private void GiveUpMaking()
    {
        _opening.GiveUpNew(Database.Connection);
        _missing = true;
        Become(_opening.OpenNowhere());
    }

    private void Use(SqliteConnection connection)
    {
        _missing = false;
        Become(connection);
    }

    private void Become(SqliteConnection connection)
    {
        Database.Dispose();
        Database = new Database(connection);
        _reader = new YardReader(Database, Path);
    }

    private Result<HistoryEntry> TakeBack(string which, string told, Fault none, long? seen, Action<int, int>? tell) => InTransaction(() =>
    {
        if (seen is { } known && Database.Number("history_last_number") != known) return StoreFaults.ChangedMeanwhile();
        var last = _reader.History(which).FirstOrDefault();
        if (last is null) return none;
        if (Barred(last) is { } fault) return fault;
        return Entry($"{told}: {last.What}", last.Number, () =>
        {
            new TakingBack(Database, Path).Entry(last.Number, tell ?? ((_, _) => { }));
            return [];
        });
    });

    // What went to another's yard and was confirmed there is theirs to give back.
    private Fault? Barred(HistoryEntry last) =>
        _reader.HandOvers() is { Count: > 0 } gone && Database.Number("confirmed_in_entry", ("entry", last.Number)) is > 0 and var confirmed
            ? HandFaults.UndoOfConfirmed((int)confirmed, gone.First(one => one.Id == confirmed).Terms.To)
            : null;

    private Result<HistoryEntry> Entry(string what, Action<YardChange> work) => Entry(what, undoes: null, () =>
    {
        var change = new YardChange(this, _reader);
        work(change);
        return change.Close();
    });

    private Result<HistoryEntry> Entry(string what, long? undoes, Func<IReadOnlyList<Fault>> work)
    {
        var entry = new HistoryEntry(0, _clock.GetLocalNow(), Told(what), undoes ?? 0, Undone: false);
        entry = entry with { Number = Database.Number("history_add", ("at", Values.Moment(entry.At)), ("what", entry.What), ("undoes", undoes)) };
        Database.Run("entry_open", ("entry", entry.Number));
        var faults = work();
        Database.Run("entry_close");
        return faults.Count > 0 ? Result<HistoryEntry>.Fail(faults) : entry;
    }

    // A newer program may have migrated the file while this one had it open.
    private void RefuseNewerVersion()
    {
        var version = Database.Number("version");
        if (version != _version) throw YardUnavailableException.NewerVersion(Path, version, _version);
    }

    // The text may hold what a user typed; the history is read by people too.
    private static string Told(string what)
    {
        const int most = 300;
        if (string.IsNullOrWhiteSpace(what)) throw new ArgumentException("an entry says what was done", nameof(what));
        var told = TextRules.Harmless(what);
        return told.Length <= most ? told : told[..(char.IsHighSurrogate(told[most - 2]) ? most - 2 : most - 1)] + "…";
    }

    private T Guard<T>(Func<T> work)
    {
        try
        {
            // Another program may have made the yard meanwhile.
            if (_missing && !_opening.IsMissing()) Use(_opening.Open());
            return work();
        }
        catch (SqliteException error) when (YardUnavailableException.From(error, Path) is { } unavailable)
        {
            throw unavailable;
        }
    }
}
