using System.Diagnostics;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Matching;
using Offcuts.Matching.Runs;

namespace Offcuts.Benchmarks.Contenders;

/// <summary>
/// The project's own filler of runs, by its public door. Every plan has passed the run checker before it comes out. A good plan is meant
/// as with the matcher: see <see cref="TheMatcher"/>. Where a later tier is not proven, those after the value are told beside it, each with its bound, since the tables show three.
/// </summary>
internal static class TheFiller
{
    /// <summary>Fills one wall within so many seconds.</summary>
    public static Outcome Run(string name, RunRequest wall, double seconds)
    {
        var watch = Stopwatch.StartNew();
        var heard = new Heard(watch);
        var plan = RunFiller.Fill(
            RunProblem.Create(wall).Value, new MatchLimits { Time = TimeSpan.FromSeconds(seconds), Clock = TimeProvider.System, Progress = heard });
        var took = watch.Elapsed.TotalSeconds;
        var tiers = plan.Tiers;
        var later = tiers.ExtraTies.Proven && tiers.Joints.Proven && tiers.SawCuts.Proven;
        return new Outcome(
            name, [.. tiers.Unfilled.Select(level => Of(level.Unfilled))], Of(tiers.Spend), Of(tiers.ValueGivenUp), took,
            heard.All.Count > 0 ? heard.All[0].Seconds : took,
            heard.All.Where(report => Good(report.Progress, tiers)).Select(report => (double?)report.Seconds).FirstOrDefault() ?? took,
            0, later ? "" : $"extra ties {Told(tiers.ExtraTies)}, joints {Told(tiers.Joints)}, saw cuts {Told(tiers.SawCuts)}");
    }

    private static string Told(Figure figure) => figure.Proven ? $"{figure.Value}" : $"{figure.Value} (at least {figure.Bound})";

    private static bool Good(MatchProgress report, RunTiers last) =>
        report.Unfilled.Value <= last.UnfilledInAll.Value
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
