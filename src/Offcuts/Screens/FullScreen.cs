using Offcuts.Commands;
using Offcuts.Core.Faults;
using Offcuts.Store;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;

namespace Offcuts.Screens;

/// <summary>Opens the full screen on a yard, and leaves the terminal as it was however it ends.</summary>
internal static class FullScreen
{
    // Between two looks at the yard's change number: another program's change shows within a second.
    private static readonly TimeSpan TickEvery = TimeSpan.FromMilliseconds(500);

    private static readonly TimeSpan StopEvery = TimeSpan.FromMilliseconds(50);

    // By the terminals' common controls: moves (1003), numbers the old way (1015), clicks (1000), numbers of any size (1006).
    private const string NoMoves = "\u001b[?1003l\u001b[?1015l\u001b[?1006l";
    private const string Clicks = "\u001b[?1000h\u001b[?1006h";
    private const string OldScreen = "\u001b[?2004l\u001b[?1049l\u001b[?25h\u001b[0m";

    private static readonly TimeSpan LongestPutAway = TimeSpan.FromSeconds(1);

    private static volatile IApplication? _open;

    private static volatile Shell? _shell;

    /// <summary>What was typed and not saved on the screen that is open, or was when it failed.</summary>
    public static IReadOnlyList<TypedText> Typed => _shell is { } shell ? Unsaved.Of(shell.State) : [];

    private const string NoMouse = "\u001b[?1000l\u001b[?1006l";

    /// <summary>Runs until the person leaves or a signal comes; gives the exit status. What was refused when the screen was gone is told on standard error.</summary>
    /// <param name="yard">Gives the yard, which is opened meanwhile.</param>
    /// <param name="world">The doors to the outside.</param>
    public static int Open(Func<YardFile> yard, Surroundings world)
    {
        if (!world.InIsTerminal || !world.OutIsTerminal || world.Environment("TERM") == "dumb" || !Driver.IsAttachedToTerminal(out _, out _))
        {
            world.Error.WriteLine("the full screen needs a terminal to draw on; see what else there is with: offcuts --help");
            return Exit.Refused;
        }

        var unheard = new List<Fault>();
        var status = OnTerminal(yard, world, unheard);
        foreach (var fault in unheard) world.Error.WriteLine(TextRules.Harmless(fault.Sentence));
        return status == Exit.Done && unheard.Count > 0 ? Exit.Refused : status;
    }

    private static int OnTerminal(Func<YardFile> yard, Surroundings world, List<Fault> unheard)
    {
        using var pace = new Pace();
        using var app = WaitingInput.Application(pace);
        pace.Lead(app);
        app.Init();
        _open = app;
        try
        {
            return Run(app, pace, yard(), world, unheard);
        }
        finally
        {
            _open = null;
        }
    }

    /// <summary>
    /// Gives the terminal back from any thread, as well as that can be done while something fails: the library's own way first, for as long as one waits, then
    /// by the terminals' common controls.
    /// </summary>
    public static void GiveBackTerminal()
    {
        if (_open is not { } app) return;
        var putAway = new Thread(() =>
        {
            try
            {
                app.Dispose();
            }
            catch (Exception)
            {
                // Something has failed already, and that is what is told.
            }
        })
        { IsBackground = true };
        putAway.Start();
        putAway.Join(LongestPutAway);
        Console.Out.Write(NoMouse + OldScreen);
        Console.Out.Flush();
    }

    private static int Run(IApplication app, Pace pace, YardFile yard, Surroundings world, List<Fault> unheard)
    {
        Tune(app, world);
        try
        {
            return Shown(app, pace, yard, world, unheard);
        }
        finally
        {
            // What the library did not ask for it does not take back.
            app.Driver?.WriteRaw(NoMouse);
        }
    }

    private static int Shown(IApplication app, Pace pace, YardFile yard, Surroundings world, List<Fault> unheard)
    {
        using var hands = new Workbench(app, pace);
        var shell = new Shell(yard, world, hands);
        _shell = shell;
        var palette = new Palette(world.Colour, IsDark(app), world.Ascii);
        using var view = new ShellView(shell, palette);

        // The first picture comes first: reading the yard would take the processor from it.
        view.DrawComplete += (_, _) => hands.Begin();
        shell.Left += () => app.RequestStop(view);
        view.IsRunningChanged += (_, running) =>
        {
            if (running.Value) view.Listen(app);
        };
        app.AddTimeout(TickEvery, () =>
        {
            hands.Begin();
            shell.Tick();
            return true;
        });
        using var signals = new StopSignals(() =>
        {
            app.Invoke(() => StopAll(app));
            pace.Stir();
        });
        app.Run(view);
        shell.Stop();
        hands.Finish();
        unheard.AddRange(shell.Unheard());
        _shell = null;
        return signals.Status ?? Exit.Done;
    }

    // Whatever runs on top is stopped first, so it is asked for again until nothing runs.
    private static void StopAll(IApplication app)
    {
        app.RequestStop();
        app.AddTimeout(StopEvery, () =>
        {
            app.RequestStop();
            return true;
        });
    }

    // Clicks and the wheel are asked for, but not each step of the mouse, which would be much over a slow line. Who would rather choose and copy
    // text with the mouse as the terminal does sets OFFCUTS_MOUSE=0; most terminals do that with Shift held, too.
    private static void Tune(IApplication app, Surroundings world)
    {
        if (app.Driver is not { } driver) return;
        driver.Force16Colors = true;
        driver.WriteRaw(NoMoves + (world.Mouse ? Clicks : ""));
    }

    private static bool IsDark(IApplication app) => app.Driver?.DefaultAttribute?.Background.IsDarkColor() ?? true;
}
