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
    private long _last = Environment.TickCount64;

    /// <summary>Something is there to be looked at. From any thread.</summary>
    public void Stir() => _stirred.Set();

    /// <summary>A key or a click is there, and more may come. From any thread.</summary>
    public void Wake()
    {
        Volatile.Write(ref _last, Environment.TickCount64);
        _stirred.Set();
    }

    /// <summary>Takes the application's rounds over.</summary>
    public void Lead(IApplication app)
    {
        Application.MaximumIterationsPerSecond = NoSleepOfItsOwn;
        app.Iteration += (_, _) => Wait();
    }

    /// <inheritdoc/>
    public void Dispose() => _stirred.Dispose();

    private void Wait() => _stirred.WaitOne(Environment.TickCount64 - Volatile.Read(ref _last) < AwakeFor.TotalMilliseconds ? Awake : Resting);
}
