using System.Diagnostics;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Plans;
using Offcuts.Matching;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// The project's own matcher, by its public door. Every plan has passed the plan checker before it comes out. A good plan is the
/// first one reported that leaves no more unfilled than the last one and is within 2 % of its spend or, where nothing is
/// spent, within 2 % of its value given up. Where the rips, which come before it, are not proven, no bound of the value given up is told.
/// </summary>
internal static class TheMatcher
{
    /// <summary>Solves one instance within so many seconds.</summary>
    public static Outcome Run(Instance instance, double seconds)
    {
        var watch = Stopwatch.StartNew();
        var heard = new Heard(watch);
        var plan = Matcher.Match(
            Problem.Create(instance.Request).Value,
            new MatchLimits { Time = TimeSpan.FromSeconds(seconds), Clock = TimeProvider.System, Progress = heard });
        var took = watch.Elapsed.TotalSeconds;
        var tiers = plan.Tiers;
        return new Outcome(
            instance.Name, [.. tiers.UnfilledByStage.Select(Of)], Of(tiers.Spend), tiers.Rips is { Proven: false } ? new Reached(tiers.ValueGivenUp.Value, null) : Of(tiers.ValueGivenUp), took,
            heard.All.Count > 0 ? heard.All[0].Seconds : took,
            heard.All.Where(report => Good(report.Progress, tiers)).Select(report => (double?)report.Seconds).FirstOrDefault() ?? took,
            0, "");
    }

    private static bool Good(MatchProgress report, Tiers last) =>
        report.Unfilled.Value <= last.Unfilled.Value
        && report.Spend.Value <= last.Spend.Value * 1.02
        && (last.Spend.Value > 0 || report.ValueGivenUp.Value <= last.ValueGivenUp.Value + 0.02 * Math.Abs(last.ValueGivenUp.Value));

    private static Reached Of(Figure figure) => new(figure.Value, figure.Bound);

    private sealed class Heard(Stopwatch watch) : IProgress<MatchProgress>
    {
        public List<(double Seconds, MatchProgress Progress)> All { get; } = [];

        public void Report(MatchProgress value)
        {
            lock (All) All.Add((watch.Elapsed.TotalSeconds, value));
        }
    }
}
