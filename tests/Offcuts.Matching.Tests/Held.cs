namespace Offcuts.Matching.Tests;

/// <summary>Stands for a solver that can't be interrupted: it stops the work, and whoever tells of progress is held for longer than anybody waits.</summary>
/// <param name="stop">Stops the work.</param>
/// <param name="through">Set once all is over.</param>
internal sealed class Held(CancellationTokenSource stop, ManualResetEventSlim through) : IProgress<MatchProgress>
{
    public int Told;

    public void Report(MatchProgress value)
    {
        if (Interlocked.Increment(ref Told) > 1) return;
        stop.Cancel();
        through.Wait(TimeSpan.FromSeconds(60));
    }
}
