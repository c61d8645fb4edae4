using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Runs;

/// <summary>Runs in, a plan out.</summary>
public static class RunFiller
{
    /// <summary>
    /// The best plan that can be found within the limits. It never fails: what cannot be covered is listed with its reason, every figure
    /// comes with a bound that is true, and the plan has been derived again by <see cref="RunChecker"/>.
    /// </summary>
    /// <param name="problem">The runs of a wall, the yard and the prices.</param>
    /// <param name="limits">Time, cancellation, patience, progress. Without a time the work is counted, and the same problem gives the same plan.</param>
    public static RunPlan Fill(RunProblem problem, MatchLimits limits)
    {
        var effort = new Effort(limits);
        var parts = problem.Materials.Select(material => RunPart.Of(problem, material)).ToArray();
        var outcomes = Filled(problem, parts, effort, limits);
        var tiers = Tiers(problem, outcomes);
        var plan = RunPlanWriter.Write(problem, [.. outcomes.Select(outcome => outcome.Filling)], tiers, Savings(problem, outcomes, effort));
        var faults = RunChecker.Faults(problem, plan);
        return faults.Count == 0 ? plan : throw new InvalidOperationException("a wrong run plan was made: " + string.Join("; ", faults));
    }

    private static PartOutcome[] Filled(RunProblem problem, RunPart[] parts, Effort effort, MatchLimits limits)
    {
        var outcomes = parts.Select(PartOutcome.First).ToArray();
        // What needs no time is made once, by whoever asks for it first; who asks later waits for it.
        Lazy<PartOutcome>[] atOnce = [.. parts.Select(part => new Lazy<PartOutcome>(() => PartFiller.AtOnce(part, effort)))];
        var (telling, closed) = (new Lock(), false);
        if (limits.Patience is not { } patience || !limits.Cancel.CanBeCanceled)
        {
            Work();
            return outcomes;
        }

        var work = Task.Run(Work);
        if (Matcher.Ended(work, patience, limits.Cancel))
        {
            work.GetAwaiter().GetResult();
            return outcomes;
        }

        // Nobody waits for a solver that can't be interrupted: the door is closed on what is known. A part of which nothing is laid yet is laid
        // once: at once where that can be, else made anew, since what still solves goes on with its own.
        lock (telling) closed = true;
        return [.. outcomes.Select((one, p) => one.Filling.Bars.Count > 0 ? one : Made(p))];

        PartOutcome Made(int part) => atOnce[part].Value is var known && (known.Proven || known.Filling.Bars.Count > 0)
            ? known : PartFiller.Laid(RunPart.Of(problem, parts[part].Material), new Effort(limits));

        void Work()
        {
            // Of every material what needs no time comes first.
            for (var p = 0; p < parts.Length; p++)
            {
                if (atOnce[p].Value is { Filling.Bars.Count: > 0 } known) Hear(p, known);
            }

            var ended = Round(TimeShares.Order([.. parts.Select(part => part.Rows.Length)]), p => atOnce[p].Value);
            // What the larger ones left over those have that their share had ended.
            if (ended.Length < parts.Length && !effort.Over && effort.Seconds > TimeShares.WorthARound * limits.Time?.TotalSeconds) Round(ended, p => outcomes[p]);
        }

        // Fills these parts one after the other, and hands back those that used most of their share of the time and are not proven: a search that its time ends leaves a part of its last phase over.
        int[] Round(int[] order, Func<int, PartOutcome> known)
        {
            var ended = new List<int>();
            for (var n = 0; n < order.Length; n++)
            {
                var (number, before) = (order[n], known(order[n]));
                var share = effort.Share(TimeShares.First([.. order[n..].Select(p => parts[p].Rows.Length)]));
                var given = share.Seconds;
                var outcome = PartFiller.Fill(parts[number], before, share, better => Hear(number, better.Beside(before))).Beside(before);
                if (share.Seconds < given * TimeShares.Used && !outcome.Proven) ended.Add(number);
                lock (telling)
                {
                    if (closed) return [];
                    outcomes[number] = outcome;
                }
            }

            return [.. ended];
        }

        void Hear(int part, PartOutcome better)
        {
            MatchProgress told;
            lock (telling)
            {
                if (closed) return;
                outcomes[part] = better;
                if (limits.Progress is null) return;
                told = Progress(problem, parts[part], outcomes);
            }

            limits.Progress.Report(told);
        }
    }

    // The tiers are sums over materials, compared one after the other, so the bounds are too.
    private static RunTiers Tiers(RunProblem problem, PartOutcome[] outcomes)
    {
        var levels = problem.Runs.SelectMany(run => run.Courses).Select(course => course.Number).Distinct().Order().Select(number => new CourseFigure(
            number, Sum(outcomes, outcome => Array.IndexOf(outcome.Filling.Part.Levels, number) is >= 0 and var level ? outcome.Figure(level) : default)));
        Figure Of(int tier) => Sum(outcomes, outcome => outcome.Figure(outcome.Filling.Part.Levels.Length + tier));
        return new RunTiers([.. levels], Of(0), Of(1), Of(2), Of(3), Of(4));
    }

    private static Figure Sum(PartOutcome[] outcomes, Func<PartOutcome, Figure> figure)
    {
        var figures = outcomes.Select(figure).ToArray();
        return new Figure(figures.Sum(one => one.Value), figures.Sum(one => one.Bound));
    }

    private static MatchProgress Progress(RunProblem problem, RunPart part, PartOutcome[] outcomes)
    {
        var tiers = Tiers(problem, outcomes);
        return new MatchProgress(part.Material.Name, tiers.UnfilledInAll, tiers.Spend, tiers.ValueGivenUp);
    }

    // The same rows from new pieces alone, without limits of the store, in what time is left: not worth a second long search.
    private static PlanSavings Savings(RunProblem problem, PartOutcome[] outcomes, Effort effort)
    {
        var (cost, spend, proven) = (0L, 0L, true);
        var unpriced = new List<string>();
        foreach (var outcome in outcomes)
        {
            var part = outcome.Filling.Part;
            spend += outcome.Figure(part.Levels.Length).Value;
            var prices = problem.Prices.Of(part.Material);
            if (prices.Count == 0) unpriced.Add(part.Material.Name);
            if (prices.Count == 0 || !outcome.Filling.Filled.Contains(true)) continue;
            var fresh = PartFiller.AllNew(part, outcome.Filling.Filled, prices, effort);
            cost += fresh.Cost;
            proven &= fresh.Proven;
        }

        return new PlanSavings(new Money(cost), new Money(spend), proven, unpriced);
    }
}
