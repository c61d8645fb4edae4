using Offcuts.Commands;
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

    /// <summary>Runs until the person leaves or a signal comes; gives the exit status.</summary>
    public static int Open(YardFile yard, Surroundings world)
    {
        if (!world.InIsTerminal || !world.OutIsTerminal || world.Environment("TERM") == "dumb" || !Driver.IsAttachedToTerminal(out _, out _))
        {
            world.Error.WriteLine("the full screen needs a terminal to draw on; see what else there is with: offcuts --help");
            return Exit.Refused;
        }

        using IApplication app = Application.Create();
        app.Init();
        return Run(app, yard, world);
    }

    private static int Run(IApplication app, YardFile yard, Surroundings world)
    {
        Quieten(app);
        using var hands = new Workbench(app);
        var shell = new Shell(yard, world, hands);
        var palette = new Palette(world.Colour, IsDark(app), world.Ascii);
        using var view = new ShellView(shell, palette);
        shell.Left += () => app.RequestStop(view);
        view.IsRunningChanged += (_, running) =>
        {
            if (running.Value) view.Listen(app);
        };
        app.AddTimeout(TickEvery, () =>
        {
            shell.Tick();
            return true;
        });
        using var signals = new StopSignals(() => app.Invoke(() => StopAll(app)));
        app.Run(view);
        shell.Stop();
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

    // No mouse is used, so the terminal's own way of choosing and copying text stays with the person.
    private static void Quieten(IApplication app)
    {
        if (app.Driver is not { } driver) return;
        driver.Force16Colors = true;
        driver.WriteRaw("\u001b[?1003l\u001b[?1015l\u001b[?1006l");
    }

    private static bool IsDark(IApplication app) => app.Driver?.DefaultAttribute?.Background.IsDarkColor() ?? true;
}
