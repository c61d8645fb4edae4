using System.Diagnostics;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>A match that is stopped hands back at once what it knows, whatever still solves.</summary>
public sealed class StoppingTests
{
    private static Problem Two => Problem.Create(Request([Board("8'", 1), Board("10'", 2)], [Cut("40\"", 4), Cut("30\"", 3, name: "other")], Price("8'", 500), Price("12'", 800))).Value;

    [Fact]
    public void Nobody_waits_for_a_solver_that_cannot_be_interrupted()
    {
        using var stop = new CancellationTokenSource();
        using var through = new ManualResetEventSlim();
        var held = new Held(stop, through);
        var watch = Stopwatch.StartNew();

        var plan = Matcher.Match(Two, new MatchLimits { Cancel = stop.Token, Patience = TimeSpan.FromMilliseconds(100), Progress = held });

        watch.Elapsed.Should().BeLessThan(TimeSpan.FromSeconds(30), "the solver is held for a minute");
        PlanChecker.Faults(Two, plan).Should().BeEmpty();
        plan.Unfilled.Should().BeEmpty("a first plan is there at once");
        var (text, told) = (Text(plan), held.Told);
        through.Set();
        Thread.Sleep(300);
        held.Told.Should().Be(told, "what ends later is not heard any more");
        Text(plan).Should().Be(text);
        plan.Tiers.Spend.Bound.Should().BeLessThanOrEqualTo(Matcher.Match(Two, MatchLimits.None).Tiers.Spend.Value);
    }

    [Fact]
    public void Patience_changes_nothing_where_nobody_stops_the_match()
    {
        using var stop = new CancellationTokenSource();

        Text(Matcher.Match(Two, new MatchLimits { Cancel = stop.Token, Patience = TimeSpan.Zero })).Should().Be(Text(Matcher.Match(Two, MatchLimits.None)));
    }
}
