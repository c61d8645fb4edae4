using System.Runtime.CompilerServices;
using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.Store;
using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.Testing;
using Terminal.Gui.Time;

namespace Offcuts.Tests.Screens;

/// <summary>Tests of the full screen run one after the other: the terminal library keeps state of its own.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class OnScreen
{
    public const string Name = "on screen";

    /// <summary>Tells the library that no terminal is there, before anything of it runs.</summary>
    [ModuleInitializer]
    internal static void NoRealTerminal() => Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
}

/// <summary>Does everything at once on the test's own thread.</summary>
internal sealed class SameHands : IHands
{
    /// <summary>Work that is put aside instead of done while <see cref="Holding"/>.</summary>
    public Queue<Action> Held { get; } = [];

    public bool Holding { get; set; }

    /// <summary>True where nothing is shown any more, as when the screen was left.</summary>
    public bool Left { get; set; }

    public void Away(Action work) => Do(work);

    public void Apart(Action work) => Do(work);

    /// <summary>What is on its way to the screen while <see cref="Slow"/>.</summary>
    public Queue<Action> Brought { get; } = [];

    /// <summary>True where what is done reaches the screen only when it is let arrive.</summary>
    public bool Slow { get; set; }

    public void Home(Action work)
    {
        if (Left) return;
        if (Slow) Brought.Enqueue(work);
        else work();
    }

    /// <summary>What is on its way to the screen reaches it.</summary>
    public void Arrive()
    {
        Slow = false;
        while (Brought.TryDequeue(out var work)) work();
    }

    public void Release()
    {
        Holding = false;
        while (Held.TryDequeue(out var work)) work();
    }

    private void Do(Action work)
    {
        if (Holding) Held.Enqueue(work);
        else work();
    }
}

/// <summary>The full screen on a yard of its own, in a terminal that is only memory.</summary>
internal sealed class ScreenRun : IDisposable
{
    // A run that was asked to be long may be.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(Environment.GetEnvironmentVariable("OFFCUTS_KEYS") is null ? 2 : 60);

    private readonly IApplication _app;
    private readonly SessionToken? _session;
    private readonly ShellView _view;

    private ScreenRun(TryYard folder, int width, int height, bool colour, bool unread, Place? at)
    {
        Folder = folder;
        Yard = YardFile.Open(folder.YardPath, folder.Clock, TimeSpan.FromMilliseconds(100));
        _app = Application.Create(new VirtualTimeProvider());
        _app.Init("ansi");
        _app.Driver!.Force16Colors = true;
        _app.Driver.SetScreenSize(width, height);
        Hands.Holding = unread;
        var world = folder.World(TextWriter.Null, TextWriter.Null);
        Shell = new Shell(Yard, world, Hands) { MatchTime = null };
        Shell.Left += () => HasLeft = true;
        _view = new ShellView(Shell, new Palette(colour, darkGround: true, world.Ascii));
        _session = _app.Begin(_view);
        _view.Listen(_app);
        if (at is { } place) Shell.Take(new Intent.GoTo(place));
        Draw();
    }

    public TryYard Folder { get; }

    public YardFile Yard { get; }

    public Shell Shell { get; }

    public SameHands Hands { get; } = new();

    public bool HasLeft { get; private set; }

    /// <summary>The screen, line by line, without blanks at the ends.</summary>
    public string[] Lines => [.. _app.Driver!.ToString()!.ReplaceLineEndings("\n").Split('\n').Select(line => line.TrimEnd()).Take(_app.Driver.Rows)];

    /// <summary>The screen.</summary>
    public string Text => string.Join('\n', Lines);

    /// <summary>The screen with what steers colours.</summary>
    public string Ansi => _app.Driver!.ToAnsi();

    /// <summary>Where the cursor of the typed line stands, from 0.</summary>
    public int Cursor => _view.Line.InsertionPoint;

    /// <summary>Runs a test's part on the list of the known yard, or at another place; a test that hangs fails.</summary>
    public static void OnKnownYard(int width, int height, Action<ScreenRun> part, bool colour = true, Place at = Place.Yard, bool ascii = false) =>
        Run(width, height, part, KnownYard.WriteTo, colour, at: at, ascii: ascii);

    /// <summary>The same on the line of Strip with an empty yard, or with what is put into it.</summary>
    public static void On(int width, int height, Action<ScreenRun> part, Action<YardFile>? yard = null, bool colour = true, Place? at = null) =>
        Run(width, height, part, path =>
        {
            if (yard is null) return;
            using var file = YardFile.Open(path, new FixedClock());
            yard(file);
        }, colour, at: at ?? (yard is null ? Place.Strip : Place.Yard));

    /// <summary>The known yard's screen before the yard is read: that is done when the hands are let go.</summary>
    public static void BeforeKnownYardIsRead(int width, int height, Action<ScreenRun> part) =>
        Run(width, height, part, KnownYard.WriteTo, colour: true, unread: true);

    private static void Run(int width, int height, Action<ScreenRun> part, Action<string> prepare, bool colour, bool unread = false, Place? at = null, bool ascii = false)
    {
        Exception? caught = null;
        var thread = new Thread(() =>
        {
            try
            {
                using var folder = new TryYard();
                if (ascii) folder.Set("OFFCUTS_ASCII", "1");
                prepare(folder.YardPath);
                using var run = new ScreenRun(folder, width, height, colour, unread, at);
                part(run);
            }
            catch (Exception error)
            {
                caught = error;
            }
        });
        thread.IsBackground = true;
        thread.Start();
        thread.Join(Longest).Should().BeTrue("a screen test must end");
        if (caught is not null) System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(caught);
    }

    /// <summary>Types text, letter by letter.</summary>
    public ScreenRun Type(string text)
    {
        foreach (var rune in text.EnumerateRunes()) _app.InjectKey(new Key(rune.Value));
        return Draw();
    }

    /// <summary>Presses keys by the names that the places use.</summary>
    public ScreenRun Press(params string[] chords)
    {
        foreach (var chord in chords) _app.InjectKey(Chord.ToKey(chord));
        return Draw();
    }

    /// <summary>Presses a key by the name the terminal library has for it.</summary>
    public ScreenRun Raw(string key)
    {
        Key.TryParse(key, out var pressed).Should().BeTrue();
        _app.InjectKey(pressed!);
        return Draw();
    }

    /// <summary>A scanner: types a label's code and Enter.</summary>
    public ScreenRun Scan(Code code) => Type(code.QrText).Press("Enter");

    /// <summary>A click of the left button.</summary>
    public ScreenRun Click(int x, int y) => Mouse(MouseFlags.LeftButtonClicked, x, y);

    /// <summary>Two clicks, as the terminal library tells them: the first one, then that there were two.</summary>
    public ScreenRun DoubleClick(int x, int y) => Click(x, y).Mouse(MouseFlags.LeftButtonDoubleClicked, x, y);

    /// <summary>A turn of the wheel over the middle of the screen.</summary>
    public ScreenRun Wheel(bool down) => Mouse(down ? MouseFlags.WheeledDown : MouseFlags.WheeledUp, 20, 12);

    /// <summary>A click on a text that stands on the screen.</summary>
    public ScreenRun ClickOn(string text) => Click(Lines[LineOf(text)].IndexOf(text, StringComparison.Ordinal), LineOf(text));

    /// <summary>The line on which a text stands, the last one where there are several.</summary>
    public int LineOf(string text) => Array.FindLastIndex(Lines, line => line.Contains(text, StringComparison.Ordinal));

    /// <summary>Whatever the mouse does.</summary>
    public ScreenRun Mouse(MouseFlags flags, int x, int y)
    {
        _app.Mouse.RaiseMouseEvent(new Mouse { Flags = flags, ScreenPosition = new System.Drawing.Point(x, y) });
        return Draw();
    }

    /// <summary>Pastes.</summary>
    public ScreenRun Paste(string text)
    {
        _app.RaisePasteEvent(text);
        return Draw();
    }

    /// <summary>The window gets another size.</summary>
    public ScreenRun Resize(int width, int height)
    {
        _app.Driver!.SetScreenSize(width, height);
        return Draw();
    }

    /// <summary>What was held is done now.</summary>
    public ScreenRun LetGo()
    {
        Hands.Release();
        return Draw();
    }

    /// <summary>What the clock of the screen does now and then.</summary>
    public ScreenRun Tick()
    {
        Shell.Tick();
        return Draw();
    }

    public void Dispose()
    {
        if (_session is not null) _app.End(_session);
        _view.Dispose();
        _app.Dispose();
        Yard.Dispose();
    }

    private ScreenRun Draw()
    {
        _app.LayoutAndDraw(false);
        return this;
    }
}
