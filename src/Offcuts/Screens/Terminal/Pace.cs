using Terminal.Gui.App;

namespace Offcuts.Screens;

/// <summary>
/// When the screen's thread goes round again: at once where a key came or something was handed to it, else seldom while nobody does anything. The
/// library's own loop goes round 25 times a second whatever happens, and sleeps through keys in between; waiting here instead, an idle program
/// uses a third of the processor's time, and a key is seen sooner.
/// </summary>
internal sealed class Pace : IDisposable
{
    // Timers of the library that follow a key are short: a lone Esc is told from the beginning of a longer key within some hundredths of a second, a double
    // click within half a second.
    private static readonly TimeSpan AwakeFor = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Awake = TimeSpan.FromMilliseconds(15);
    private static readonly TimeSpan Resting = TimeSpan.FromMilliseconds(100);

    // The library's own sleep after each round would be on top of it: what is left of a thousandth of a second is none.
    private const ushort NoSleepOfItsOwn = 1000;

    private readonly AutoResetEvent _stirred = new(initialState: true);
    private readonly Lock _door = new();
    private long _last = Environment.TickCount64;
    private bool _closed;
    private volatile bool _keysWake;

    /// <summary>Something is there to be looked at. From any thread; after the end it does nothing.</summary>
    public void Stir()
    {
        lock (_door)
        {
            if (!_closed) _stirred.Set();
        }
    }

    /// <summary>A key or a click is there, and more may come. From any thread; after the end it does nothing.</summary>
    public void Wake()
    {
        Volatile.Write(ref _last, Environment.TickCount64);
        Stir();
    }

    /// <summary>Keys will call <see cref="Wake"/> from now on. Until that is said the library's own rounds stay, since a round that waits here would not see a key. From any thread.</summary>
    public void KeysWake() => _keysWake = true;

    /// <summary>Takes the application's rounds over, once keys wake them.</summary>
    public void Lead(IApplication app) => app.Iteration += (_, _) =>
    {
        if (!_keysWake) return;
        Application.MaximumIterationsPerSecond = NoSleepOfItsOwn;
        Rest();
    };

    /// <summary>Waits until something is there, or for as long as a round may last. True where something is.</summary>
    public bool Rest() => _stirred.WaitOne(Environment.TickCount64 - Volatile.Read(ref _last) < AwakeFor.TotalMilliseconds ? Awake : Resting);

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_door)
        {
            _closed = true;
            _stirred.Dispose();
        }
    }
}
