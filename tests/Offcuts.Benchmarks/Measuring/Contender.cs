using System.Diagnostics;
using Offcuts.Benchmarks.Contenders;
using Offcuts.Matching.Runs;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>The three that are measured side by side.</summary>
internal enum Contender
{
    /// <summary>The project's matcher.</summary>
    Matcher,

    /// <summary>A plain assignment model for CP-SAT.</summary>
    Model,

    /// <summary>Best-fit decreasing by hand.</summary>
    Hand,
}

/// <summary>Lets one contender solve one instance.</summary>
internal static class Contest
{
    /// <summary>What it reached, with the most memory that the process held meanwhile.</summary>
    public static Outcome Run(Contender contender, Instance instance, double seconds)
    {
        var held = Memory.Begin();
        var outcome = contender switch
        {
            Contender.Matcher when instance.Wall is { } wall => TheFiller.Run(instance.Name, wall, seconds),
            Contender.Matcher => TheMatcher.Run(instance, seconds),
            Contender.Model when instance.Wall is { } wall => WallModelSearch.Run(instance, wall, seconds),
            Contender.Hand when instance.Wall is { } wall => Hand(instance.Name, wall),
            _ when instance.MayRip => Outcome.Nothing(instance, 0, "it does not rip"),
            Contender.Model => AssignmentSearch.Run(instance, seconds),
            _ => Hand(instance),
        };
        return outcome with { Known = instance.Known, PeakBytes = Memory.Peak(), HeldBytes = held };
    }

    private static Outcome Hand(string name, RunRequest wall)
    {
        var watch = Stopwatch.StartNew();
        var (unfilled, spend, given) = WallByHand.Fill(wall);
        return new Outcome(
            name, [.. unfilled.Select(count => new Reached(count, null))], new Reached(spend, null), new Reached(given, null), watch.Elapsed.TotalSeconds, null, null, 0, "");
    }

    private static Outcome Hand(Instance instance)
    {
        var watch = Stopwatch.StartNew();
        var plan = ByHand.Plan(instance.Request);
        return new Outcome(
            instance.Name, [.. plan.Unfilled.Select(count => new Reached(count, null))], new Reached(plan.Spend, null), new Reached(plan.GivenUp, null),
            watch.Elapsed.TotalSeconds, null, null, 0, "");
    }
}
