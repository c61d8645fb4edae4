using Offcuts.Core.Faults;

namespace Offcuts.Store;

/// <summary>
/// The backup of the day, while a yard is open: copied before the first change, checked behind it. A copy that could not be made is tried again some time later, since
/// a full disk is not asked at each change.
/// </summary>
/// <param name="backups">Where the yard's backups lie.</param>
/// <param name="clock">Tells when one could not be made.</param>
/// <param name="patience">How long another program is waited for.</param>
internal sealed class DayBackup(Backups backups, TimeProvider clock, TimeSpan patience)
{
    private static readonly TimeSpan TryAgain = TimeSpan.FromMinutes(10);

    // Held while the copy is checked, so that nobody closes the yard before; and while what is known of backups is read or written.
    private readonly Lock _finishing = new();
    private readonly Lock _keeping = new();

    // What was copied for the day and is not checked yet.
    private DayCopy? _copy;

    // The day of which it is known that a backup is there; or when one could not be made.
    private DateOnly? _made;
    private DateTimeOffset? _failed;

    /// <summary>Why no backup of today could be made, or null.</summary>
    public Fault? Trouble { get; private set; }

    /// <summary>True while the day's copy is made and not checked yet.</summary>
    public bool IsUnfinished => Volatile.Read(ref _copy) is not null;

    /// <summary>Copies the yard as the last day of work left it, before anything is added to it; the copy is checked after that, by <see cref="Finish"/>.</summary>
    public void BeginOnceADay(DateOnly today)
    {
        if (IsUnfinished) return;
        lock (_keeping)
        {
            if (_made == today) return;
            if (_failed is { } failed && (clock.GetUtcNow() - failed).Duration() < TryAgain) return;
        }

        var begun = backups.BeginDay(today, patience);
        Told(begun.Ok ? null : KeepFaults.NoBackupMade(begun.Fault.Sentence), today);
        if (begun.TryGet(out var copy)) _copy = copy;
    }

    /// <summary>Checks the copy and makes it a backup, where there is one that is not checked yet. On any thread.</summary>
    public void Finish()
    {
        lock (_finishing)
        {
            if (Interlocked.Exchange(ref _copy, null) is not { } copy) return;
            Told(backups.EndDay(copy, patience), copy.Day);
        }
    }

    // Of the day of the copy, which may be over by the time it is checked.
    private void Told(Fault? trouble, DateOnly day)
    {
        lock (_keeping)
        {
            Trouble = trouble;
            _failed = trouble is null ? null : clock.GetUtcNow();
            _made = trouble is null ? day : null;
        }
    }
}
