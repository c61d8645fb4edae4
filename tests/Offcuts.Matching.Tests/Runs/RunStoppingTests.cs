using System.Diagnostics;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Runs that are stopped while they are filled hand back at once what is known, whatever still solves.</summary>
public sealed class RunStoppingTests
{
    private static RunProblem Wall => RunProblem.Create(Request([Run(432, 4)], Offcut(1, 30), Offcut(2, 36))).Value;

    [Fact]
    public void Nobody_waits_for_a_solver_that_cannot_be_interrupted()
    {
        using var stop = new CancellationTokenSource();
        using var through = new ManualResetEventSlim();
        var (held, wall, watch) = (new Held(stop, through), Wall, Stopwatch.StartNew());

        var plan = RunFiller.Fill(wall, new MatchLimits { Cancel = stop.Token, Patience = TimeSpan.FromMilliseconds(100), Progress = held });

        watch.Elapsed.Should().BeLessThan(TimeSpan.FromSeconds(50), "the solver is held for a minute");
        RunChecker.Faults(wall, plan).Should().BeEmpty();
        plan.Tiers.UnfilledInAll.Value.Should().Be(0, "what was laid by then covers every course");
        var told = held.Told;
        through.Set();
        Thread.Sleep(300);
        held.Told.Should().Be(told, "what ends later is not heard any more");
    }

    [Fact]
    public void Where_nothing_was_laid_yet_it_is_laid_once()
    {
        var wall = Wall;

        var plan = RunFiller.Fill(wall, new MatchLimits { Cancel = new CancellationToken(canceled: true), Patience = TimeSpan.Zero });

        RunChecker.Faults(wall, plan).Should().BeEmpty();
        plan.Tiers.UnfilledInAll.Value.Should().Be(0);
    }
}
