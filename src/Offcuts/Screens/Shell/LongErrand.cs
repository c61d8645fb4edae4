using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>
/// The errand that the yard's thread is at, as the screen's thread sees it: since when, how far, and how to stop it. Told by the one and asked by the other.
/// </summary>
internal sealed class LongErrand
{
    private static int _last;

    private readonly CancellationTokenSource _stop = new();
    private readonly long _began;
    private readonly TimeProvider _clock;
    private object _progress;

    public LongErrand(TimeProvider clock, string what, bool mayStop)
    {
        (_clock, _began, MayStop) = (clock, clock.GetTimestamp(), mayStop);
        _progress = new WorkProgress(what, 0, 0);
        Work = new LongWork(told => Tell(told with { What = $"{what}, {told.What}" }), _stop.Token);
    }

    /// <summary>Which one it is, so that no other is stopped in its place.</summary>
    public int Id { get; } = Interlocked.Increment(ref _last);

    /// <summary>What the use case tells and is stopped by.</summary>
    public LongWork Work { get; }

    /// <summary>True where it can be stopped: an act on many, or one that is taken back, while it is not saved.</summary>
    public bool MayStop { get; }

    /// <summary>True once it is to stop.</summary>
    public bool Stopped => _stop.IsCancellationRequested;

    /// <summary>How far it is.</summary>
    public WorkProgress Progress => (WorkProgress)Volatile.Read(ref _progress);

    /// <summary>How long it has taken so far.</summary>
    public TimeSpan Took => _clock.GetElapsedTime(_began);

    /// <summary>It is somewhere else now.</summary>
    public void Tell(WorkProgress progress) => Volatile.Write(ref _progress, progress);

    /// <summary>It is to stop.</summary>
    public void Stop() => _stop.Cancel();

    /// <summary>An errand in a word or two.</summary>
    public static string Told(Errand errand) => errand switch
    {
        Errand.PutAt(_, var place) => $"putting at {place}",
        Errand.Mark(_, var state) => $"marking as {Words.Of(state)}",
        Errand.Judge(_, var condition) => $"judging {Words.Of(condition)}",
        Errand.Reserve(_, var stage) => $"reserving for {stage}",
        Errand.Free or Errand.FreeAll => "letting go",
        Errand.QueueLabels => "queueing labels",
        Errand.LookUp => "looking it up",
        Errand.TakeBack => "taking back",
        Errand.DoAgain => "doing again",
        Errand.PrintLabels or Errand.PrintBlanks or Errand.PrintSheet or Errand.PrintWall => "writing the file",
        Errand.CarryOut => "booking what was cut",
        Errand.StackWall => "booking what was stacked",
        Errand.HandOver => "handing over",
        Errand.AcceptCount => "accepting the count",
        Errand.CountAgain => "reckoning the count",
        Errand.OpenWall or Errand.AskToEnter => "reckoning the wall",
        Errand.DrawWall => "drawing the wall",
        Errand.FindFit => "looking what fits",
        _ => "saving",
    };

    /// <summary>True for what changes the yard or writes a file, false for what only looks.</summary>
    public static bool Saves(Errand errand) => errand is not (Errand.LookUp or Errand.OpenWall or Errand.AskToEnter or Errand.DrawWall or Errand.FindFit or Errand.PreviewLabel or Errand.CountAgain);

    /// <summary>
    /// True for an act on pieces, for taking back, and for what may give up a begun filling, which are not saved before their end. Handing over hears of no stop.
    /// </summary>
    public static bool MayBeStopped(Errand errand) => errand is not Errand.Mark { State: PieceState.HandedOver } && errand is Errand.PutAt or Errand.Mark or Errand.Judge or Errand.Reserve or Errand.Free or Errand.FreeAll or Errand.QueueLabels or Errand.TakeBack or Errand.DoAgain
            or Errand.DropPlan or Errand.SaveSheet or Errand.MoveWall or Errand.DropWall;
}
