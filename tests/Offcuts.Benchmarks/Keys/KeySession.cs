using System.Collections.Concurrent;
using System.Diagnostics;
using Offcuts.Screens;
using Offcuts.Store;
using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;

namespace Offcuts.Benchmarks.Keys;

/// <summary>What one key took.</summary>
/// <param name="Key">Its name.</param>
/// <param name="Took">From pressing it to the screen that it leads to.</param>
/// <param name="Worked">What the screen's thread worked for it; none where that can't be told.</param>
internal sealed record KeyTime(string Key, TimeSpan Took, TimeSpan? Worked);

/// <summary>
/// The full screen on a yard, in a terminal that is only memory, driven by keys. Each key is timed from the moment it is pressed until the screen it leads to is
/// drawn; what the yard's thread hands back is timed apart, since it keeps the screen's thread as busy as a key would.
/// </summary>
internal sealed class KeySession : IDisposable
{
    private readonly IApplication _app = Application.Create(new VirtualTimeProvider());
    private readonly Bench _hands = new();
    private readonly YardFile _yard;
    private readonly ShellView _view;
    private readonly SessionToken? _session;

    public KeySession(string yard, int width, int height)
    {
        _yard = YardFile.Open(yard, TimeProvider.System);
        _app.Init("ansi");
        _app.Driver!.Force16Colors = true;
        _app.Driver.SetScreenSize(width, height);
        var shell = new Shell(_yard, Surroundings.Real(), _hands);
        _view = new ShellView(shell, new Palette(colour: true, darkGround: true));
        _session = _app.Begin(_view);
        _view.Listen(_app);
        _app.LayoutAndDraw(false);
        Settle();
    }

    /// <summary>The screen.</summary>
    public string Text => _app.Driver!.ToString()!;

    /// <summary>What each key took, with its name.</summary>
    public List<KeyTime> Keys { get; } = [];

    /// <summary>What it took on the screen's thread to show what the yard's thread handed back.</summary>
    public List<TimeSpan> Answers { get; } = [];

    /// <summary>Types text, letter by letter.</summary>
    public void Type(string text)
    {
        foreach (var rune in text.EnumerateRunes()) Press(new Key(rune.Value), rune.ToString());
    }

    /// <summary>Presses keys by the names that the places use.</summary>
    public void Press(params string[] chords)
    {
        foreach (var chord in chords) Press(Chord.ToKey(chord), chord);
    }

    /// <summary>Waits until nothing runs beside the screen and shows all that came of it.</summary>
    public void Settle()
    {
        while (_hands.Busy || !_hands.Back.IsEmpty)
        {
            if (!_hands.Back.TryDequeue(out var work))
            {
                Thread.Sleep(1);
                continue;
            }

            var watch = Stopwatch.StartNew();
            work();
            _app.LayoutAndDraw(false);
            Answers.Add(watch.Elapsed);
        }
    }

    public void Dispose()
    {
        if (_session is not null) _app.End(_session);
        _view.Dispose();
        _app.Dispose();
        _hands.Dispose();
        _yard.Dispose();
    }

    private void Press(Key key, string name)
    {
        var watch = Stopwatch.StartNew();
        var before = ThreadTime.Now();
        _app.InjectKey(key);
        _app.LayoutAndDraw(false);
        Keys.Add(new KeyTime(name, watch.Elapsed, ThreadTime.Now() - before));
        Settle();
    }

    // One thread for the yard, as in the program; what comes back is put aside until it is asked for.
    private sealed class Bench : IHands, IDisposable
    {
        private readonly BlockingCollection<Action> _waiting = [];
        private int _open;

        public Bench() => new Thread(() =>
        {
            foreach (var work in _waiting.GetConsumingEnumerable())
            {
                work();
                Interlocked.Decrement(ref _open);
            }
        })
        { IsBackground = true }.Start();

        public ConcurrentQueue<Action> Back { get; } = [];

        public bool Busy => Volatile.Read(ref _open) > 0;

        public void Away(Action work)
        {
            Interlocked.Increment(ref _open);
            _waiting.Add(work);
        }

        public void Apart(Action work) => Away(work);

        public void Home(Action work) => Back.Enqueue(work);

        public void Dispose() => _waiting.CompleteAdding();
    }
}
