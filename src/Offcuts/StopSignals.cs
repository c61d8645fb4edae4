using System.Runtime.InteropServices;

namespace Offcuts;

/// <summary>
/// The signals that ask the program to end, heard instead of obeyed at once: what runs is told to stop and puts things in order,
/// and the program ends with the status that shells expect, 128 and the number of the signal.
/// </summary>
internal sealed class StopSignals : IDisposable
{
    private const int Killed = 128;

    // Longer than any save takes, unless another program holds the yard; an unfinished save is rolled back.
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(5);

    private static readonly (PosixSignal Signal, int Number)[] Heard =
        [(PosixSignal.SIGHUP, 1), (PosixSignal.SIGINT, 2), (PosixSignal.SIGTERM, 15)];

    // Where the terminal itself is gone, nothing that waits for it ever returns. Not disposed: it must outlive this.
    private static Timer? _last;

    private readonly List<PosixSignalRegistration> _registered = [];
    private volatile int _number;

    /// <summary>Hears them until disposed.</summary>
    /// <param name="stop">Called at each, on another thread.</param>
    public StopSignals(Action stop)
    {
        foreach (var (signal, number) in Heard)
            _registered.Add(PosixSignalRegistration.Create(signal, context =>
            {
                context.Cancel = true;
                Interlocked.CompareExchange(ref _number, number, 0);
                _last ??= new Timer(_ => Environment.Exit(Killed + number), null, LongestStop, Timeout.InfiniteTimeSpan);
                stop();
            }));
    }

    /// <summary>The exit status where one has come, else null.</summary>
    public int? Status => _number is var number and > 0 ? Killed + number : null;

    /// <summary>They end the program at once again.</summary>
    public void Dispose() => _registered.ForEach(one => one.Dispose());
}
