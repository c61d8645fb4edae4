using System.Collections.Concurrent;
using Terminal.Gui.App;

namespace Offcuts.Screens;

/// <summary>The real hands: one thread that uses the yard, others beside it for long work. Its members are called on the screen's thread, but for <see cref="Home"/>.</summary>
internal sealed class Workbench : IHands, IDisposable
{
    private readonly IApplication _app;
    private readonly Pace _pace;
    private readonly BlockingCollection<Action> _waiting = [];
    private readonly Thread _thread;
    private readonly Lock _door = new();
    private bool _begun;
    private bool _finished;

    public Workbench(IApplication app, Pace pace)
    {
        (_app, _pace) = (app, pace);
        _thread = new Thread(() =>
        {
            foreach (var work in _waiting.GetConsumingEnumerable()) work();
        })
        {
            IsBackground = true,
            Name = "yard",
        };
    }

    /// <summary>Begins with what was asked for. Asked again, it does nothing.</summary>
    public void Begin()
    {
        if (_begun) return;
        _begun = true;
        _thread.Start();
    }

    /// <inheritdoc/>
    public void Away(Action work)
    {
        if (!_waiting.IsAddingCompleted) _waiting.Add(work);
    }

    /// <inheritdoc/>
    public void Apart(Action work) => new Thread(() => work()) { IsBackground = true, Name = "match" }.Start();

    /// <summary>
    /// Does work on the screen's thread, soon, and goes round again to draw what came of it. After <see cref="Finish"/> it does nothing: what was begun
    /// apart may end when the application is put away already.
    /// </summary>
    public void Home(Action work)
    {
        lock (_door)
        {
            if (_finished) return;
            _app.Invoke(() =>
            {
                work();
                _pace.Stir();
            });
            _pace.Stir();
        }
    }

    /// <summary>Lets what was asked for already be finished: nothing that a person saved is lost by leaving. What was begun apart isn't waited for.</summary>
    public void Finish()
    {
        lock (_door) _finished = true;
        _waiting.CompleteAdding();
        Begin();
        _thread.Join();
    }

    /// <summary>The same, at the latest now.</summary>
    public void Dispose()
    {
        Finish();
        _waiting.Dispose();
    }
}
