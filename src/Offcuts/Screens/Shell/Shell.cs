using System.Runtime.ExceptionServices;
using Offcuts.Core.Faults;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// Carries out what the places ask, by the use cases, and hands back the next state. The only part of the full screen that touches
/// the yard. Its members are called on the screen's thread; the yard is used where <see cref="IHands.Away"/> works.
/// </summary>
internal sealed class Shell
{
    private readonly YardFile _yard;
    private readonly Surroundings _world;
    private readonly IHands _hands;
    private readonly Errands _errands;
    private readonly Searches _searches;
    private readonly CancellationTokenSource _leaving = new();
    private readonly YardWatch _reader;
    private bool _polling;
    private DateOnly? _toldOfBackup;

    // Refusals that were not shown yet.
    private readonly List<News.Refused> _unheard = [];
    private CancellationTokenSource? _match;
    private volatile object? _progress;
    private MatchProgress? _sofar;
    private long _begunAt;
    private int _seconds;
    private volatile LongErrand? _long;

    // Before that nobody wonders.
    private static readonly TimeSpan SoonEnough = TimeSpan.FromMilliseconds(400);

    /// <summary>
    /// Begins to read the yard, away from the screen: a large one takes seconds. Until then the state says so. Where it can't be read,
    /// <see cref="YardUnavailableException"/> is thrown on the screen's thread.
    /// </summary>
    public Shell(YardFile yard, Surroundings world, IHands hands)
    {
        (_yard, _world, _hands) = (yard, world, hands);
        _errands = new Errands(yard, world);
        _searches = new Searches(_errands, world);
        _reader = new YardWatch(yard, world, _leaving.Token, work => _long = work);
        yard.FinishesBackupLater = true;
        State = ShellModel.Start(_reader.Read) with { Ascii = world.Ascii };
        hands.Away(ReadFirst);
    }

    /// <summary>How long a search may take; none counts its steps instead, so that it gives the same every time.</summary>
    public TimeSpan? MatchTime { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>What is shown.</summary>
    public ShellState State { get; private set; }

    /// <summary>There is another state to show.</summary>
    public event Action? Changed;

    /// <summary>The person leaves, and what was asked for before is through.</summary>
    public event Action? Left;

    /// <summary>Takes in what a person means.</summary>
    public void Take(Intent intent) => Settle(ShellModel.Apply(State, intent));

    /// <summary>Looks whether another program has changed the yard, and how far a match has come. To be called now and then.</summary>
    public void Tick()
    {
        var latest = Interlocked.Exchange(ref _progress, null);
        TellOfMatch(latest as MatchProgress?);
        if (latest is CountProgress counting) Hear(new News.Counting(counting));
        TellOfWork();
        if (_polling || State.Leaving) return;
        _polling = true;
        _hands.Away(() =>
        {
            string? what = null;
            var fresh = Guarded(null, () =>
            {
                if (!_reader.IsBehind) return null;
                what = _yard.History(1).FirstOrDefault()?.What;
                return _reader.Reread();
            });
            _hands.Home(() =>
            {
                _polling = false;
                if (fresh is null) return;
                Hear(fresh);
                if (what is not null) Settle(new Turn<ShellState>(State, Notice: new Notice($"another program changed the yard: {what}")));
            });
        });
    }

    /// <summary>Ends what still runs beside the screen, and reading a yard that nobody will look at any more. What was to be saved is.</summary>
    public void Stop()
    {
        _match?.Cancel();
        _leaving.Cancel();
    }

    /// <summary>What was refused when nobody looked any more, a sentence each. To be asked once all that was to be saved is through.</summary>
    public IReadOnlyList<Fault> Unheard()
    {
        lock (_unheard) return [.. _unheard.SelectMany(one => one.Faults.Select(fault => AppFaults.RefusedAfterLeaving(LongErrand.Told(one.Errand), fault.ToString())))];
    }

    // Behind everything that was asked for: the screen says so at once and goes on drawing meanwhile.
    private void Leave()
    {
        Settle(ShellModel.Gone(State));
        Stop();
        _hands.Away(() => _hands.Home(() => Left?.Invoke()));
    }

    private void TellOfWork()
    {
        if (_long is { } work && work.Took >= SoonEnough) Hear(new News.Working(work.Progress, work.MayStop && !work.Stopped, work.Id));
        else if (State.Working is not null) Hear(new News.Working(null, MayStop: false));
    }

    // At each better figure, and at each second, so that a person sees it go on.
    private void TellOfMatch(MatchProgress? latest)
    {
        if (_match is null) return;
        var seconds = (int)_world.Clock.GetElapsedTime(_begunAt).TotalSeconds;
        if (latest is null && seconds == _seconds) return;
        (_sofar, _seconds) = (latest ?? _sofar, seconds);
        Hear(new News.Matching(_sofar) { Seconds = seconds });
    }

    private void Hear(News news) => Settle(ShellModel.Hear(State, news));

    private void Settle(Turn<ShellState> turn)
    {
        State = turn.Notice is { } notice ? turn.State with { Notice = notice } : turn.State;
        Changed?.Invoke();
        if (turn.Errand is { } errand) Send(errand);
    }

    private void Send(Errand errand)
    {
        switch (errand)
        {
            case Errand.Leave:
                Leave();
                break;
            case Errand.Search or Errand.FillWall or Errand.CountFiles or Errand.FindFree or Errand.MatchTheirs or Errand.MakeLoads:
                Beside(errand);
                break;
            case Errand.StopWork(var id):
                if (_long is { } work && work.Id == id) work.Stop();
                break;
            case Errand.StopMatch:
                _match?.Cancel();
                break;
            default:
                if (LongErrand.Saves(errand)) State = State with { Saving = State.Saving + 1 };
                _hands.Away(() => Carry(errand));
                break;
        }
    }

    private void Carry(Errand errand)
    {
        var saves = LongErrand.Saves(errand);
        var before = -1L;
        var work = new LongErrand(_world.Clock, LongErrand.Told(errand), LongErrand.MayBeStopped(errand));
        _long = work;
        var news = Guarded(errand, () =>
        {
            before = _yard.ChangeNumber;
            return _errands.Do(_reader.AsSeen(errand), work.Work);
        });
        _long = null;
        var refused = saves ? news as News.Refused : null;
        if (refused is not null) lock (_unheard) _unheard.Add(refused);
        var fresh = saves ? Guarded(null, () => _reader.Since(before, news)) : null;
        _hands.Home(() =>
        {
            // Who leaves sees nothing of it any more; it is told where the screen was.
            if (refused is not null && !State.Leaving) lock (_unheard) _unheard.Remove(refused);
            TellOfWork();
            if (fresh is not null) Hear(fresh);
            if (news is not null) Hear(news);
            if (!saves) return;
            CheckCopy();
            Settle(ShellModel.Through(State, refused is not null));
        });
    }

    // The copy of the day is checked beside everything else; the head says so meanwhile.
    private void CheckCopy()
    {
        if (!_yard.HasUnfinishedBackup || State.BackingUp)
        {
            TellOfBackup();
            return;
        }

        Settle(new Turn<ShellState>(State with { BackingUp = true }));
        _hands.Apart(() =>
        {
            var news = Guarded(null, () =>
            {
                _yard.FinishBackup();
                return null;
            });
            _hands.Home(() =>
            {
                Settle(new Turn<ShellState>(State with { BackingUp = false }));
                if (news is not null) Hear(news);
                TellOfBackup();
            });
        });
    }

    // Once a day at most: the change is saved, but the copy that should stand beside it is not there. A refusal stays until it was read; of what
    // was refused nothing is saved.
    private void TellOfBackup()
    {
        if (_yard.BackupTrouble is not { } trouble || _toldOfBackup == _world.Today || State.Notice.Tone == Tone.Fault) return;
        _toldOfBackup = _world.Today;
        Settle(new Turn<ShellState>(State, Notice: new Notice(trouble.Sentence)));
    }

    // There is nothing to show of a yard that can't be read, so whatever goes wrong here ends the screen.
    private void ReadFirst()
    {
        try
        {
            var fresh = _reader.Reread();
            _hands.Home(() => Hear(fresh));
        }
        catch (OperationCanceledException)
        {
            // The person has left.
        }
        catch (Exception error)
        {
            var caught = ExceptionDispatchInfo.Capture(error);
            _hands.Home(caught.Throw);
        }
    }

    // A second door to the same file: the match reads through it while the screen goes on with the first.
    private void Beside(Errand errand)
    {
        var cancel = new CancellationTokenSource();
        _match = cancel;
        (_sofar, _seconds, _begunAt) = (null, 0, _world.Clock.GetTimestamp());
        var limits = new MatchLimits { Time = MatchTime, Clock = _world.Clock, Cancel = cancel.Token, Patience = MatchLimits.UsualPatience, Progress = new Latest(this) };
        _hands.Apart(() =>
        {
            var news = Guarded(errand, () =>
            {
                using var yard = YardFile.Open(_yard.Path, _world.Clock);
                return _searches.Do(errand, yard, limits, done => _progress = done);
            });
            _hands.Home(() =>
            {
                // Not disposed where it was stopped: what goes on for longer than anybody waits still asks it.
                _match = null;
                if (!cancel.IsCancellationRequested) cancel.Dispose();
                if (news is not null) Hear(news);
            });
        });
    }

    // What is wrong with the world becomes a line; what is wrong with the program goes on to the screen's thread and ends it there.
    private News? Guarded(Errand? errand, Func<News?> work)
    {
        try
        {
            return work();
        }
        catch (Exception error) when (error is YardUnavailableException or IOException or UnauthorizedAccessException)
        {
            return new News.Refused(errand ?? new Errand.StopMatch(), [error is YardUnavailableException ? new Fault(error.Message) : FileTrouble.Told(error)]);
        }
        catch (OperationCanceledException) when (_leaving.IsCancellationRequested)
        {
            return null;
        }
        catch (OperationCanceledException) when (errand is not null && _long is { Stopped: true })
        {
            return new News.Refused(errand, [YardFaults.ActStopped()]);
        }
        catch (Exception error)
        {
            var caught = ExceptionDispatchInfo.Capture(error);
            _hands.Home(caught.Throw);
            return null;
        }
    }

    private sealed class Latest(Shell shell) : IProgress<MatchProgress>
    {
        public void Report(MatchProgress value) => shell._progress = value;
    }
}
