using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace Offcuts.Screens;

/// <summary>
/// Lays out what stands around every place: the places on top, the typed line with its reading, the place, what was said last,
/// the keys. Turns keys into intents by the lists of the places; decides nothing.
/// </summary>
internal sealed class ShellView : Runnable
{
    private const int LineRow = 2;

    private readonly Shell _shell;
    private readonly Palette _palette;
    private readonly RowsView _head;
    private readonly RowsView _label;
    private readonly TextField _line;
    private readonly RowsView _reading;
    private readonly RowsView _said;
    private readonly RowsView _foot;
    private readonly RowsView _help;
    private readonly RowsView _small;
    private readonly Dictionary<Place, PlaceView> _places;
    private readonly View _body;
    private readonly Queue<Action> _held = [];
    private IApplication? _app;
    private Ask? _asked;
    private bool _showing;
    private bool _releasing;

    public ShellView(Shell shell, Palette palette)
    {
        (_shell, _palette) = (shell, palette);
        (Width, Height, CanFocus) = (Dim.Fill(), Dim.Fill(), true);
        SetScheme(palette.Scheme);
        _head = new RowsView(palette) { Width = Dim.Fill(), Height = 2 };
        _label = new RowsView(palette) { Y = LineRow, Width = ShellRows.LineLeft, Height = 1 };
        _line = new TextField { X = ShellRows.LineLeft, Y = LineRow, Width = Dim.Fill(1) };
        _reading = new RowsView(palette) { Y = LineRow + 1, Width = Dim.Fill() };
        _body = new View { Width = Dim.Fill(), CanFocus = false };
        _said = new RowsView(palette) { Width = Dim.Fill() };
        _foot = new RowsView(palette) { Width = Dim.Fill() };
        _help = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill(), Visible = false };
        _small = new RowsView(palette) { Width = Dim.Fill(), Height = Dim.Fill(), Visible = false };
        _places = new Dictionary<Place, PlaceView>
        {
            [Place.Today] = new TodayView(palette),
            [Place.Yard] = new YardView(palette),
            [Place.Strip] = new StripView(palette),
            [Place.Stages] = new StagesView(palette),
            [Place.Plan] = new PlanView(palette),
            [Place.Walls] = new WallsView(palette),
            [Place.Ledger] = new LedgerView(palette),
            [Place.Hand] = new HandView(palette),
            [Place.Prices] = new PricesView(palette),
            [Place.Settings] = new SettingsView(palette),
            [Place.Count] = new CountView(palette),
        };
        foreach (var place in _places.Values) _body.Add(place);
        _body.Add(_help);
        Add(_head, _label, _line, _reading, _body, _said, _foot, _small);

        _line.TextChanged += (_, _) => Typed();
        shell.Changed += () =>
        {
            Show();
            Release();
        };
        FrameChanged += (_, _) => Show();
    }

    /// <summary>The typed line, for tests that look where the cursor is.</summary>
    internal TextField Line => _line;

    /// <summary>Takes the keys of the application. To be called once it runs.</summary>
    public void Listen(IApplication app)
    {
        _app = app;
        app.Keyboard.KeyDown += OnKey;
        app.Paste += OnPasted;
        app.Mouse.MouseEvent += OnMouse;
        _line.SetFocus();
        Show();
        Release();
    }

    // Before any view sees a key: what a place declares wins, what types goes to the line, everything else goes nowhere.
    private void OnKey(object? sender, Key key)
    {
        if (IsSmall())
        {
            key.Handled = true;
            if (Meant(key) is { } small and (Intent.Leave or Intent.Answer or Intent.Escape) && (small is Intent.Leave || _shell.State.Ask is not null)) _shell.Take(small);
            return;
        }

        if (_shell.State.Unread && !(_held.Count == 0 && Meant(key) is Intent.Leave))
        {
            var held = new Key(key);
            key.Handled = true;
            if (!_shell.State.Leaving) _held.Enqueue(() => _app!.Keyboard.RaiseKeyDownEvent(held));
            return;
        }

        if (Meant(key) is { } intent)
        {
            key.Handled = true;
            _shell.Take(Measured(intent));
            return;
        }

        var choosing = ShellKeys.Asking(_shell.State) is not null || _shell.State.Helping;
        key.Handled = choosing || !Chord.Edits(key);
        if (!key.Handled && _shell.State.Line.Marked) Unmark(key);
    }

    // A point is given in the whole screen, which this view fills.
    private void OnMouse(object? sender, Mouse mouse)
    {
        if (!IsSmall() && ShellMouse.IsForLine(mouse, LineRow)) return;
        mouse.Handled = true;
        if (IsSmall() || _shell.State.Unread) return;
        var state = _shell.State;
        foreach (var intent in new ShellMouse(state, _places[state.Place], Frame.Width, _body.Frame.Top, _foot.Frame.Top).Meant(mouse))
            _shell.Take(mouse.IsWheel && intent is Intent.Read ? intent : Measured(intent));
    }

    // These keep what was offered, to be changed; the line's own Backspace would take all that is marked.
    private void Unmark(Key key)
    {
        if (key.NoShift.NoCtrl.KeyCode is not (KeyCode.Backspace or KeyCode.CursorLeft or KeyCode.CursorRight or KeyCode.Home or KeyCode.End) || _line.SelectedLength != _line.Text.Length) return;
        _line.ClearAllSelection();
        _line.MoveEnd();
    }

    // What was pressed before the yard was read is pressed again, in the same order, once it is: nothing typed is lost, and nothing
    // is looked up in a yard that is not there yet. A key to leave waits its turn too, since leaving asks where a line would be lost.
    private void Release()
    {
        if (_releasing || _shell.State.Unread) return;
        _releasing = true;
        try
        {
            while (_held.TryDequeue(out var again)) again();
        }
        finally
        {
            _releasing = false;
        }
    }

    private Intent? Meant(Key key)
    {
        var letter = ShellKeys.Asking(_shell.State) is not null ? Chord.Typed(key) : null;
        foreach (var use in ShellKeys.Now(_shell.State))
        {
            if (letter is not null && use.Means is Intent.Answer(var answer) && string.Equals(letter, answer.ToString(), StringComparison.OrdinalIgnoreCase)) return use.Means;
            if (use.Means is not Intent.Answer && use.Chords.Any(chord => Chord.ToKey(chord) == key)) return use.Means;
        }

        return null;
    }

    // A screenful is as long as the list that is shown; the help stops at its end.
    private Intent Measured(Intent intent)
    {
        if (intent is Intent.Read(var read)) return new Intent.Read(_places[_shell.State.Place].ReadOn(_shell.State, read));
        var lines = intent switch
        {
            Intent.Page(var pages) => pages * PageLines(),
            Intent.Move(var by) => by,
            _ => 0,
        };
        if (intent is Intent.Edge(var end) && !_shell.State.Helping && _places[_shell.State.Place].Bounded(_shell.State, end ? int.MaxValue : int.MinValue) is { } whole) return new Intent.Move(whole);
        if (lines == 0) return intent;
        if (!_shell.State.Helping) return new Intent.Move(_places[_shell.State.Place].Bounded(_shell.State, lines) ?? lines);
        var last = Math.Max(0, ShellHelp.Of(_shell.State, _help.Viewport.Width).Count - _help.Viewport.Height);
        return new Intent.Move(Math.Clamp(_shell.State.HelpTop + lines, 0, last) - _shell.State.HelpTop);
    }

    private int PageLines() => _shell.State.Helping ? Math.Max(1, _help.Viewport.Height - 1) : _places[_shell.State.Place].PageLines;

    // A line at a time fits the line; several are handed over together, so that none is lost.
    private void OnPasted(object? sender, PasteEventArgs paste)
    {
        if (_shell.State.Unread && !IsSmall())
        {
            paste.Handled = true;
            if (!_shell.State.Leaving) _held.Enqueue(() => _app!.RaisePasteEvent(paste.Text));
            return;
        }

        var lines = paste.Text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries);
        var choosing = IsSmall() || ShellKeys.Asking(_shell.State) is not null || _shell.State.Helping;
        if (lines.Length < 2 && !choosing) return;
        paste.Handled = true;
        if (!choosing) _shell.Take(new Intent.Paste(lines));
    }

    private void Typed()
    {
        if (!_showing) _shell.Take(new Intent.Type(_line.Text));
    }

    private void Show()
    {
        if (_showing || !IsInitialized || Frame.Width == 0) return;
        _showing = true;
        try
        {
            if (IsSmall()) ShowSmall();
            else ShowState(_shell.State);
        }
        finally
        {
            _showing = false;
        }
    }

    private bool IsSmall() => Frame.Width < ShellRows.LeastWidth || Frame.Height < ShellRows.LeastHeight;

    private void ShowSmall()
    {
        foreach (var view in SubViews) view.Visible = view == _small;
        _small.Show(ShellRows.Small(_shell.State, Frame.Width, Frame.Height));
    }

    private void ShowState(ShellState state)
    {
        var wasSmall = _small.Visible;
        foreach (var view in SubViews) view.Visible = view != _small;
        if (wasSmall) TakeFocusBack();
        var width = Frame.Width;
        _head.Show([ShellRows.Head(state, width), ShellRows.Tape(width)]);
        _label.Show([Row.Of($"{ShellRows.Label(state)} ", Tone.Strong)]);
        ShowLine(state);

        var reading = ShellRows.Read(state, width, Frame.Height, _line.ScrollOffset);
        var said = ShellRows.Said(state, width);
        var foot = ShellRows.Foot(state, width);
        var top = LineRow + 1 + reading.Count;
        _reading.Height = reading.Count;
        _body.Y = top;
        _body.Height = Math.Max(1, Frame.Height - top - said.Count - foot.Count);
        _said.Y = Pos.AnchorEnd(said.Count + foot.Count);
        _said.Height = said.Count;
        _foot.Y = Pos.AnchorEnd(foot.Count);
        _foot.Height = foot.Count;
        foreach (var (place, view) in _places) view.Visible = place == state.Place && !state.Helping && !state.Unread;
        _help.Visible = state.Helping;
        Layout();

        _reading.Show(reading);
        _said.Show(said);
        _foot.Show(foot);
        if (state.Helping) ShowHelp(state);
        else if (!state.Unread) _places[state.Place].Show(state);
        SetNeedsDraw();
    }

    // A line that was hidden comes back with all of it chosen, so that the next letter would replace it.
    private void TakeFocusBack()
    {
        _line.SetFocus();
        _line.MoveEnd();
    }

    private void ShowLine(ShellState state)
    {
        var text = state.Line.Text;
        var opened = !ReferenceEquals(_asked, state.Line.Ask);
        _asked = state.Line.Ask;
        var changed = _line.Text != text;
        if (changed)
        {
            _line.Text = text;
            _line.MoveEnd();
        }

        if ((opened || changed) && state.Line.Marked) _line.SelectAll();
    }

    private void ShowHelp(ShellState state)
    {
        var rows = ShellHelp.Of(state, _help.Viewport.Width);
        _help.Show(rows, Math.Min(state.HelpTop, Math.Max(0, rows.Count - _help.Viewport.Height)));
    }
}
