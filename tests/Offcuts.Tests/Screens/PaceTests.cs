using Offcuts.Screens;
using Terminal.Gui.App;
using Terminal.Gui.Time;
using Terminal.Gui.Views;

namespace Offcuts.Tests.Screens;

/// <summary>When the screen's thread goes round, and what is handed to it from others.</summary>
[Collection(OnScreen.Name)]
public sealed class PaceTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);

    [Fact]
    public void Keys_are_waited_for_on_Unix() =>
        WaitingInput.Fits.Should().Be(!OperatingSystem.IsWindows(), "the library's door for an input of one's own is where it was; where it is not, an idle program uses more of the processor");

    [Fact]
    public void Rounds_are_the_library_s_own_until_there_are_keys_that_wake_them()
    {
        var own = Application.MaximumIterationsPerSecond;
        try
        {
            using var pace = new Pace();
            using var app = Application.Create(new VirtualTimeProvider());
            app.Init("ansi");
            pace.Lead(app);
            GoRound(app);
            Application.MaximumIterationsPerSecond.Should().Be(own, "nothing would wake a round that waits, so each would last its longest");

            pace.KeysWake();
            GoRound(app);
            Application.MaximumIterationsPerSecond.Should().BeGreaterThan(own, "the waiting is done here now");
        }
        finally
        {
            Application.MaximumIterationsPerSecond = own;
        }
    }

    [Fact]
    public void What_was_brought_home_is_drawn_without_a_rest_before()
    {
        using var pace = new Pace();
        using var app = Application.Create(new VirtualTimeProvider());
        app.Init("ansi");
        using var hands = new Workbench(app, pace);
        var (seen, brought) = (false, new ManualResetEventSlim());
        pace.Rest().Should().BeTrue("the first round comes at once");
        hands.Apart(() =>
        {
            hands.Home(() => seen = true);
            brought.Set();
        });
        brought.Wait(Longest).Should().BeTrue();

        pace.Rest().Should().BeTrue("something is there to be done");
        app.TimedEvents!.RunTimers();
        seen.Should().BeTrue();
        pace.Rest().Should().BeTrue("what came of it is there to be drawn");
        pace.Rest().Should().BeFalse("then there is nothing more");
    }

    [Fact]
    public void What_ends_beside_the_yard_after_the_screen_was_left_harms_nothing()
    {
        var pace = new Pace();
        var app = Application.Create(new VirtualTimeProvider());
        app.Init("ansi");
        var hands = new Workbench(app, pace);
        var (gone, ended) = (new ManualResetEventSlim(), new ManualResetEventSlim());
        Exception? caught = null;
        var seen = false;
        hands.Apart(() =>
        {
            gone.Wait(Longest);
            try
            {
                hands.Home(() => seen = true);
            }
            catch (Exception error)
            {
                caught = error;
            }

            ended.Set();
        });

        hands.Dispose();
        app.Dispose();
        pace.Dispose();
        gone.Set();

        ended.Wait(Longest).Should().BeTrue();
        caught.Should().BeNull("the check of the day's copy may end when nothing is shown any more");
        seen.Should().BeFalse();
    }

    [Fact]
    public void A_key_or_a_signal_after_the_end_wakes_nothing_and_harms_nothing()
    {
        var pace = new Pace();
        pace.Dispose();
        pace.Invoking(one => one.Stir()).Should().NotThrow();
        pace.Invoking(one => one.Wake()).Should().NotThrow();
    }

    private static void GoRound(IApplication app)
    {
        using var view = new Runnable();
        app.StopAfterFirstIteration = true;
        app.Run(view);
    }
}
