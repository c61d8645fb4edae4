using System.Security.Cryptography;
using Microsoft.Data.Sqlite;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Walls;
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
public sealed class YardFile : IDisposable
{
    /// <summary>How long one waits for another program to finish with the file.</summary>
    public static TimeSpan UsualPatience { get; } = TimeSpan.FromSeconds(5);

    private readonly TimeProvider _clock;
    private readonly YardOpening _opening;
    private readonly Backups _backups;
    private readonly TimeSpan _patience;
    private readonly HashSet<Code> _drawn = [];
    private readonly long _version;
    private YardReader _reader;

    // How long until a backup that could not be made is tried again: a full disk is not asked at each change.
    private static readonly TimeSpan TryBackupAgain = TimeSpan.FromMinutes(10);

    // The day of which it is known that a backup is there.
    private DateOnly? _backedUp;

    // What was copied for the day and is not checked yet.
    private DayCopy? _dayCopy;

    // Held while that is checked, so that nobody closes the file before; and while what is known of backups is read or written.
    private readonly Lock _finishing = new();
    private readonly Lock _keeping = new();

    // When one could not be made.
    private DateTimeOffset? _notBackedUp;

    // True while nothing was ever saved in the file: what is read meanwhile is an empty yard in memory.
    private bool _missing;

    private YardFile(string path, TimeProvider clock, TimeSpan patience, IReadOnlyList<Migration> migrations)
    {
        (Path, _clock, _patience, _version) = (path, clock, patience, migrations[^1].Version);
        _opening = new YardOpening(path, patience, migrations, () => Today);
        _backups = new Backups(path);
        _missing = _opening.IsMissing();
        Database = new Database(_missing ? _opening.OpenNowhere() : _opening.Open());
        _reader = new YardReader(Database, path);
    }

    /// <summary>The file, from the root of its drive.</summary>
    public string Path { get; }

    /// <summary>Why no backup of today could be made, or null. It is tried again at the first change ten minutes later. No change is held up by it.</summary>
    public Fault? BackupTrouble { get; private set; }

    /// <summary>
    /// True where the day's copy is checked when <see cref="FinishBackup"/> is called, and at the latest when the file is closed, so that nobody waits for it; else it is
    /// checked at the end of the first change of the day.
    /// </summary>
    public bool FinishesBackupLater { get; set; }

    /// <summary>True while the day's copy is made and not checked yet.</summary>
    public bool HasUnfinishedBackup => Volatile.Read(ref _dayCopy) is not null;

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

    /// <summary>Pieces in the yard's own order, the order of entry.</summary>
    /// <param name="onHandOnly">False for those too that are used, gone or missing.</param>
    /// <param name="stop">Ends the reading of a large yard; <see cref="OperationCanceledException"/> is thrown then.</param>
    /// <param name="told">Hears how many were read, after each.</param>
    public IReadOnlyList<Piece> Pieces(bool onHandOnly = true, CancellationToken stop = default, Action<int>? told = null) => Guard(() => _reader.Pieces(onHandOnly, stop, told));

    /// <summary>The piece of a code, whatever its state, or null.</summary>
    public Piece? Piece(Code code) => Guard(() => _reader.Piece(code));

    /// <summary>The bin of a code, or null.</summary>
    public Bin? Bin(Code code) => Guard(() => _reader.Bin(code));

    /// <summary>Every bin, in the order of entry.</summary>
    public IReadOnlyList<Bin> Bins() => Guard<IReadOnlyList<Bin>>(() => [.. _reader.Bins().Select(known => known.Bin)]);

    /// <summary>Every stage with its needs, in the order of the work.</summary>
    public IReadOnlyList<Stage> Stages() => Guard(() => _reader.Stages());

    /// <summary>Every system sheet, in the order of entry.</summary>
    public IReadOnlyList<SystemSheet> Systems() => Guard(() => _reader.Systems());

    /// <summary>Every wall, in the order of the work.</summary>
    public IReadOnlyList<StageWall> Walls() => Guard(() => _reader.Walls());

    /// <summary>How walls are filled, as it is kept, in the order of the work; a wall has one such plan at most.</summary>
    public IReadOnlyList<KeptWallPlan> WallPlans() => Guard(() => _reader.WallPlans());

    /// <summary>Courses of walls that stand, wall by wall and from the bottom up.</summary>
    public IReadOnlyList<StackedCourse> StackedCourses() => Guard(() => _reader.StackedCourses());

    /// <summary>Every name of a material that a piece, gone or not, a bin, a price or a stage has.</summary>
    public KnownNames Names() => Guard(() => new KnownNames(_reader.Materials()));

    /// <summary>Everything that can be bought.</summary>
    public PriceBook Prices() => Guard(() => _reader.PriceBook());

    /// <summary>What the user has set.</summary>
    public YardSettings Settings() => Guard(() => _reader.Settings());

    /// <summary>Codes that were printed before their piece exists and that nothing has taken yet, in the order of issue.</summary>
    public IReadOnlyList<Code> BlankCodes() => Guard(() => _reader.Codes("blanks"));

    /// <summary>Codes whose label waits to be printed, in the order in which they queued.</summary>
    public IReadOnlyList<Code> LabelQueue() => Guard(() => _reader.Codes("label_queue"));

    /// <summary>The same with the moment when each was printed.</summary>
    public IReadOnlyList<UnusedLabel> UnusedLabels() => Guard(() => _reader.UnusedLabels());

    /// <summary>Labels that are void: no code of theirs is ever taken.</summary>
    public IReadOnlyList<Code> VoidCodes() => Guard(() => _reader.Codes("void_codes"));

    /// <summary>Places that have a label or were counted, in the order of entry. Pieces may name others.</summary>
    public IReadOnlyList<YardPlace> Places() => Guard(() => _reader.Places());

    /// <summary>Every bundle, opened or not, in the order of entry.</summary>
    public IReadOnlyList<Bundle> Bundles() => Guard(() => _reader.Bundles());

    /// <summary>What every printer must be corrected by, by name.</summary>
    public IReadOnlyList<PrinterOffset> Printers() => Guard(() => _reader.Printers());

    /// <summary>The latest entries of the history, newest first.</summary>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<HistoryEntry> History(int most = 100) => Guard(() => _reader.History("history", new { most }));

    /// <summary>Every entry that touched a piece, a bin or a label, newest first.</summary>
    public IReadOnlyList<HistoryEntry> HistoryOf(Code code) => Guard(() => _reader.History("history_of", new { code = code.Text }));

    /// <summary>The entry that <see cref="Undo"/> would take back, told as the change that it is or does again; or null.</summary>
    public HistoryEntry? NextToUndo() => Guard(() => _reader.History("history_to_undo").FirstOrDefault());

    /// <summary>When these pieces and bins were entered; a code of nothing is left out.</summary>
    public IReadOnlyDictionary<Code, DateTimeOffset> Entered(IEnumerable<Code> codes) => Guard(() => _reader.Entered(codes));

    /// <summary>The whole family of a piece, from the first piece it all was cut from; null where no piece has the code.</summary>
    public FamilyTree? Family(Code code) => Guard(() => _reader.Family(code));

    /// <summary>Every kept plan, oldest first.</summary>
    public IReadOnlyList<KeptPlan> Plans() => Guard(() => _reader.Plans());

    /// <summary>One kept plan, or null.</summary>
    public KeptPlan? Plan(int id) => Guard(() => _reader.Plan(id));

    /// <summary>What was saved, oldest first.</summary>
    public IReadOnlyList<LedgerLine> Ledger() => Guard(() => _reader.Ledger());

    /// <summary>Every bed or trailer, in the order of entry.</summary>
    public IReadOnlyList<Bed> Beds() => Guard(() => _reader.Beds());

    /// <summary>Everything that went to other builds, oldest first.</summary>
    public IReadOnlyList<HandOver> HandOvers() => Guard(() => _reader.HandOvers());

    /// <summary>Every hand-over of another yard that was taken in, oldest first.</summary>
    public IReadOnlyList<TakenIn> TakenIn() => Guard(() => _reader.TakenIn("taken_in_all"));

    /// <summary>The hand-over of this name that was taken in, or null.</summary>
    public TakenIn? TakenIn(string transfer) => Guard(() => _reader.TakenIn("taken_in", new { transfer }).FirstOrDefault());

    /// <summary>What a piece brought along from another yard, or null.</summary>
    public Brought? Brought(Code code) => Guard(() => _reader.Brought(code));

    /// <summary>What was done to a piece before a hand-over, oldest first, what was taken back left out.</summary>
    public IReadOnlyList<PastEntry> PastOf(Code code, int handOver) => Guard<IReadOnlyList<PastEntry>>(() =>
    {
        var entry = handOver == 0 ? long.MaxValue : Database.Number("hand_over_entry", ("id", handOver));
        return [.. _reader.History("history_of", new { code = code.Text }).Where(past => past is { Undone: false, Undoes: 0 } && past.Number < entry).Reverse().Select(past => new PastEntry(past.At, past.What))];
    });

    /// <summary>What ever went from here by the hand-over of this name, also where it was taken back; nothing where it never was this yard's.</summary>
    public IReadOnlyList<Code> EverWent(string transfer) => Guard(() => _reader.Codes("hand_over_ever", new { transfer }));

    /// <summary>What went by a hand-over while its label still waited to be printed.</summary>
    public IReadOnlyList<Code> WentUnlabelled(int handOver) => Guard(() =>
        _reader.Codes("hand_over_unlabelled", new { entry = Database.Number("hand_over_entry", ("id", handOver)) }));

    /// <summary>A name for a hand-over, drawn by chance.</summary>
    public static string NewTransfer() => Transfers.Draw(RandomNumberGenerator.GetInt32);

    /// <summary>True where a code is another thing's here, or ever was, so that a piece of this hand-over can't keep it.</summary>
    public bool CodeIsTaken(Code code, string transfer) =>
        Guard(() => Database.Number("code_was_issued_elsewhere", ("code", code.Text), ("transfer", transfer)) == 1);

    /// <summary>The number of the last entry of the history; another one than before means that the yard has changed. Cheap.</summary>
    public long ChangeNumber => Guard(() => Database.Number("history_last_number"));

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
    public Result<HistoryEntry> Undo(long? seen = null) => TakeBack("history_to_undo", "took back", StoreFaults.NothingToUndo(), seen);

    /// <summary>
    /// Does again what the last undo took back, whole, where no new change was made since; again and again for the undos before it.
    /// That is an entry of the history too, which the next <see cref="Undo"/> takes back.
    /// </summary>
    /// <param name="seen">As for <see cref="Undo"/>.</param>
    public Result<HistoryEntry> Redo(long? seen = null) => TakeBack("history_to_redo", "did again", StoreFaults.NothingToRedo(), seen);

    /// <summary>
    /// Checks the day's copy and makes it a backup, where one was made and that is not done yet; what came of it, <see cref="BackupTrouble"/> says. Needs nothing of the
    /// yard, so that it may be called on any thread.
    /// </summary>
    public void FinishBackup()
    {
        lock (_finishing)
        {
            if (Interlocked.Exchange(ref _dayCopy, null) is not { } copy) return;
            Told(_backups.EndDay(copy, _patience), copy.Day);
        }
    }

    /// <summary>Closes the file, with the day's backup finished first.</summary>
    public void Dispose()
    {
        FinishBackup();
        Database.Dispose();
    }

    internal DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    // Saves what the work did where it gives a value; else, or where it throws, the yard stays as it was.
    private Result<HistoryEntry> InTransaction(Func<Result<HistoryEntry>> work) => Guard(() =>
    {
        if (Database.InTransaction) throw new InvalidOperationException("a change is being made already");
        if (!_missing) BackUpOnceADay();
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

    // The yard as the last day of work left it is copied before anything is added to it; the copy is checked after that.
    private void BackUpOnceADay()
    {
        if (HasUnfinishedBackup) return;
        var today = Today;
        lock (_keeping)
        {
            if (_backedUp == today) return;
            if (_notBackedUp is { } failed && (_clock.GetUtcNow() - failed).Duration() < TryBackupAgain) return;
        }

        var begun = _backups.BeginDay(today, _patience);
        Told(begun.Ok ? null : KeepFaults.NoBackupMade(begun.Fault.Sentence), today);
        if (begun.TryGet(out var copy)) _dayCopy = copy;
    }

    // Of the day of the copy, which may be over by the time it is checked.
    private void Told(Fault? trouble, DateOnly day)
    {
        lock (_keeping)
        {
            BackupTrouble = trouble;
            _notBackedUp = trouble is null ? null : _clock.GetUtcNow();
            _backedUp = trouble is null ? day : null;
        }
    }

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

    private Result<HistoryEntry> TakeBack(string which, string told, Fault none, long? seen) => InTransaction(() =>
    {
        if (seen is { } known && Database.Number("history_last_number") != known) return StoreFaults.ChangedMeanwhile();
        var last = _reader.History(which).FirstOrDefault();
        if (last is null) return none;
        if (_reader.HandOvers() is { Count: > 0 } gone && Database.Number("confirmed_in_entry", ("entry", last.Number)) is > 0 and var confirmed)
            return HandFaults.UndoOfConfirmed((int)confirmed, gone.First(one => one.Id == confirmed).Terms.To);
        return Entry($"{told}: {last.What}", last.Number, () =>
        {
            new TakingBack(Database, Path).Entry(last.Number);
            return [];
        });
    });

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
