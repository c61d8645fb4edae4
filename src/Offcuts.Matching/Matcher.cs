using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching;

/// <summary>A problem in, a plan out.</summary>
public static class Matcher
{
    // Small machines have two cores, and each material in work may need some hundred megabytes.
    private const int SideBySide = 2;
    private const double ShareOfSoon = 0.3;
    private const int MostRounds = 4;

    /// <summary>
    /// The best plan that is found within the limits, with the figure reached and a true bound for each tier. Never fails: what
    /// cannot be filled is listed with its reason. Checked by <see cref="PlanChecker"/> before it is handed out; a fault there
    /// is a bug and throws.
    /// </summary>
    /// <remarks>
    /// Each bound holds for every plan that reaches this plan's figures in all earlier tiers (material by
    /// material, or what ripping joins, and stage by stage within the first).
    /// Where all are proven, that makes the plan the best by the tiers; where an earlier one is not, a plan that is better
    /// there may be worse here.
    /// </remarks>
    public static Plan Match(Problem problem, MatchLimits limits)
    {
        var effort = new Effort(limits);
        var hardware = HardwareCount.Fill(problem);
        using var beside = Beside.Begin(problem, hardware, limits);
        var parts = SolveParts(problem, hardware, BoughtFreely(problem) ? effort : effort.Share(beside is null ? 0.9 : 0.95), limits);
        MaterialOutcome[] outcomes = [.. parts.SelectMany(part => part.Outcomes)];
        (CutRow Row, int Count)[] unserved = [.. Unmatched(problem).Concat(parts.SelectMany(part => part.Unserved)).Select(row => (row, row.Count))];
        var (pieces, left) = PlanWriter.Write(problem, outcomes);
        var unfilled = Reasons.All(problem, unserved.Concat(left), hardware, pieces);
        var tiers = WithBounds(problem, Score.Of(problem, pieces, hardware, unfilled), outcomes, unserved, hardware);
        var plan = new Plan
        {
            Stages = [.. problem.Stages.Select(stage => stage.Name)],
            Tiers = tiers,
            Pieces = pieces,
            Hardware = hardware,
            Unfilled = unfilled,
            Savings = Savings(problem, tiers, unserved.Concat(left), hardware, beside, effort),
            Unpriced = Unpriced(problem, pieces),
            Near = NearFoams.Bought(problem, pieces),
            Wishes = problem.Wishes,
            Buys = problem.Buy,
        };
        var faults = PlanChecker.Faults(problem, plan);
        return faults.Count == 0 ? plan : throw new InvalidOperationException("the matcher made a wrong plan: " + string.Join("; ", faults));
    }

    /// <summary>
    /// The cheapest way to buy everything new: what savings are measured against. Store limits are ignored here, since they say
    /// what can be had today, not what the cuts are worth.
    /// </summary>
    /// <param name="cuts">What is to be cut; stages do not matter.</param>
    /// <param name="hardware">What is to be counted out.</param>
    /// <param name="prices">What can be bought.</param>
    /// <param name="settings">Kerf and use rules.</param>
    /// <param name="limits">How long it may take.</param>
    /// <returns>
    /// The cost; whether it is proven the least; and the materials of which something can't be bought (no price, or every store length
    /// too short), which count as 0.
    /// </returns>
    public static (Money Cost, bool Proven, IReadOnlyList<string> Unpriced) AllNew(
        IReadOnlyList<RequiredCut> cuts, IReadOnlyList<HardwareNeed> hardware, PriceBook prices, YardSettings settings, MatchLimits limits) =>
        AllNew(cuts, hardware, prices, settings, new Effort(limits));

    private static (Money Cost, bool Proven, IReadOnlyList<string> Unpriced) AllNew(
        IReadOnlyList<RequiredCut> cuts, IReadOnlyList<HardwareNeed> hardware, PriceBook prices, YardSettings settings, Effort effort)
    {
        var unpriced = new SortedSet<string>(StringComparer.OrdinalIgnoreCase);
        var (cost, proven) = (Money.Zero, true);
        var materials = cuts.GroupBy(cut => cut.Material).OrderBy(group => group.Key).ToArray();
        for (var m = 0; m < materials.Length; m++)
        {
            var store = materials[m].Key is Sheet ? [] : prices.Of(materials[m].Key).Select(price => price with { Limit = null }).ToArray();
            var material = MaterialProblem.Of([materials[m].Key], [.. materials[m].Select(cut => new CutRow(cut, cut.Count))], _ => 0, [], store, prices, settings, [], [], out var unserved);
            if (unserved.Count > 0) unpriced.Add(materials[m].Key.Name);
            var outcome = MaterialSolver.AllNew(material, effort.Share(1.0 / (materials.Length - m)));
            cost += new Money(outcome.Plan.Spend);
            proven &= outcome.Plan.Spend == outcome.Bound;
        }

        foreach (var need in hardware)
        {
            if (prices.Of(need.Hardware) is { } price) cost += price.Price * need.Count;
            else unpriced.Add(need.Hardware.Name);
        }

        return (cost, proven, [.. unpriced]);
    }

    private static PartOutcome[] SolveParts(Problem problem, IReadOnlyList<HardwareFill> hardware, Effort effort, MatchLimits limits)
    {
        // Small ones first, so that what they leave of the time goes to the large ones; some side by side. None knows of the others,
        // so the plan does not depend on who comes first. What is left in the end goes to those for which their share was too short.
        var parts = Part.Of(problem);
        var outcomes = parts.Select(part => part.First()).ToArray();
        var (telling, closed) = (new Lock(), false);
        void Work()
        {
            var open = Enumerable.Range(0, outcomes.Length).OrderBy(p => parts[p].Size).ToArray();
            if (open.Length > 1) EachSideBySide(open, (p, _) => Report(p, parts[p].Soon(outcomes[p], effort.Share(ShareOfSoon / open.Length))));
            for (var round = 0; open.Length > 0 && round < MostRounds && (round == 0 || !effort.Over); round++) open = Round(open, again: round > 0);
        }

        if (limits.Patience is not { } patience || !limits.Cancel.CanBeCanceled)
        {
            Work();
            return outcomes;
        }

        var work = Task.Run(Work);
        if (Ended(work, patience, limits.Cancel))
        {
            work.GetAwaiter().GetResult();
            return outcomes;
        }

        // Nobody waits for a solver that can't be interrupted: the door is closed, and what is known by now is laid on its spans as it is.
        var over = new Effort(limits);
        lock (telling)
        {
            closed = true;
            return [.. outcomes.Select(part => part with { Outcomes = [.. part.Outcomes.Select(one => one.Placed.Count > 0 ? one : TieBreak.Place(one, new TierOutcome(one.Plan, one.LastBound, null), over))] })];
        }

        // Each in its turn, with what share of the time that is left is its own.
        void EachSideBySide(int[] order, Action<int, double> work)
        {
            var workers = Math.Clamp(order.Length, 1, SideBySide);
            var begun = 0;
            Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, _ =>
            {
                for (var i = Interlocked.Increment(ref begun) - 1; i < order.Length; i = Interlocked.Increment(ref begun) - 1)
                    work(order[i], Math.Min(1, workers / (double)(order.Length - i)));
            });
        }

        // Solves some; those that the time was too short for.
        int[] Round(int[] order, bool again)
        {
            var cutShort = new bool[outcomes.Length];
            EachSideBySide(order, (p, part) =>
            {
                var share = effort.Share(part);
                Report(p, outcomes[p]);
                var outcome = again ? parts[p].Again(outcomes[p], share, better => Report(p, better)) : parts[p].Solve(outcomes[p], share, better => Report(p, better));
                lock (telling)
                {
                    if (!closed) outcomes[p] = outcome;
                }

                cutShort[p] = share.Over && parts[p].MayGoOn(outcome);
            });
            return [.. order.Where(p => cutShort[p])];
        }

        void Report(int part, PartOutcome better)
        {
            MatchProgress told;
            lock (telling)
            {
                if (closed) return;
                outcomes[part] = better;
                if (limits.Progress is null) return;
                told = Progress(parts[part].Name, outcomes, problem, hardware);
            }

            limits.Progress.Report(told);
        }
    }

    // True once the work has ended; false where it was stopped and goes on for longer than anybody waits.
    internal static bool Ended(Task work, TimeSpan patience, CancellationToken cancel)
    {
        try
        {
            Task.WaitAny([work], cancel);
            return true;
        }
        catch (OperationCanceledException)
        {
            return Task.WaitAny([work], patience) == 0;
        }
    }

    // Sheets are not matched: all that is asked of them stays unfilled.
    private static IEnumerable<CutRow> Unmatched(Problem problem) =>
        problem.Stages.SelectMany(stage => stage.Cuts).Where(cut => cut.Material is Sheet).Select(cut => new CutRow(cut, cut.Count));

    private static MatchProgress Progress(string part, PartOutcome[] parts, Problem problem, IReadOnlyList<HardwareFill> hardware)
    {
        var outcomes = parts.SelectMany(one => one.Outcomes).ToArray();
        var surely = Unmatched(problem).Concat(parts.SelectMany(one => one.Unserved)).Sum(row => (long)row.Count) + hardware.Sum(fill => (long)fill.Unfilled);
        var counted = hardware.Sum(fill => fill.Price.Cents);
        return new MatchProgress(
            part,
            new Figure(surely + outcomes.Sum(outcome => outcome.Plan.Left.Sum(count => (long)count)), surely + outcomes.Sum(outcome => outcome.LeftBound.Sum())),
            new Figure(counted + outcomes.Sum(outcome => outcome.Plan.Spend), counted + outcomes.Sum(outcome => outcome.SpendBound)),
            new Figure(outcomes.Sum(outcome => outcome.Plan.GivenUp), outcomes.Sum(outcome => outcome.GivenUpBound)))
        {
            Rips = problem.MayRip ? new Figure(outcomes.Sum(outcome => (long)outcome.Plan.Rips), outcomes.Sum(outcome => outcome.RipsBound)) : null,
        };
    }

    // The figures are the score's; the bounds are sums over the materials, what nothing can serve, and hardware, which is exact.
    private static Tiers WithBounds(
        Problem problem, Tiers tiers, MaterialOutcome[] outcomes, IReadOnlyList<(CutRow Row, int Count)> unserved, IReadOnlyList<HardwareFill> hardware)
    {
        var byStage = problem.Stages.Select((stage, s) => new Figure(
            tiers.UnfilledByStage[s].Value,
            outcomes.Sum(outcome => outcome.LeftBound[s])
                + unserved.Where(left => left.Row.Cut.Stage == stage.Name).Sum(left => (long)left.Count)
                + hardware.Where(fill => fill.Need.Stage == stage.Name).Sum(fill => (long)fill.Unfilled))).ToArray();
        var saws = outcomes.Sum(outcome => outcome.SawCutsBound);
        var fewest = problem.Order == TierOrder.ValueFirst || saws == tiers.SawCuts;
        return tiers with
        {
            Unfilled = new Figure(tiers.Unfilled.Value, byStage.Sum(figure => figure.Bound)),
            UnfilledByStage = byStage,
            Spend = new Figure(tiers.Spend.Value, outcomes.Sum(outcome => outcome.SpendBound) + hardware.Sum(fill => fill.Price.Cents)),
            Rips = problem.MayRip ? tiers.Rips!.Value with { Bound = outcomes.Sum(outcome => outcome.RipsBound) } : null,
            // Where the saw cuts are not proven, another plan may share the same number of them out among the materials otherwise.
            ValueGivenUp = new Figure(tiers.ValueGivenUp.Value, outcomes.Sum(outcome => fewest ? outcome.GivenUpBound : outcome.LeastGivenUp)),
            SawCutsBound = problem.Order == TierOrder.SawCutsFirst ? (int)saws : null,
        };
    }

    private static PlanSavings Savings(
        Problem problem, Tiers tiers, IEnumerable<(CutRow Row, int Count)> left, IReadOnlyList<HardwareFill> hardware,
        Beside? beside, Effort effort)
    {
        var wanting = left.GroupBy(one => one.Row.Cut, ReferenceEqualityComparer.Instance).ToDictionary(
            group => group.Key!, group => group.Sum(one => one.Count), ReferenceEqualityComparer.Instance);
        var cuts = problem.Stages.SelectMany(stage => stage.Cuts)
            .Select(cut => cut with { Count = cut.Count - wanting.GetValueOrDefault(cut) })
            .Where(cut => cut.Count > 0).ToArray();
        var (spend, all) = (new Money(tiers.Spend.Value), wanting.Values.Sum() == 0);
        if (BoughtFreely(problem) && all) return new PlanSavings(spend, spend, tiers.Spend.Proven, []);
        var (cost, proven, unpriced) = all && beside is { Ready: true } ? beside.Reckoned : AllNew(cuts, Filled(hardware), problem.Prices, problem.Settings, effort);
        return new PlanSavings(cost, spend, proven, unpriced);
    }

    private static HardwareNeed[] Filled(IReadOnlyList<HardwareFill> hardware) =>
        [.. hardware.Select(fill => fill.Need with { Count = fill.FromYard + fill.ToBuy }).Where(need => need.Count > 0)];

    // One material leaves a core idle: there what everything new costs is reckoned meanwhile, as if all cuts will be filled, which is
    // mostly so. Ended with the match, so that nothing goes on once the plan is there.
    private sealed class Beside : IDisposable
    {
        private readonly CancellationTokenSource _stop;
        private readonly Task<(Money Cost, bool Proven, IReadOnlyList<string> Unpriced)> _task;
        private readonly MatchLimits _limits;

        private Beside(Problem problem, IReadOnlyList<HardwareFill> hardware, MatchLimits limits)
        {
            _limits = limits;
            _stop = CancellationTokenSource.CreateLinkedTokenSource(limits.Cancel);
            var effort = new Effort(limits with { Cancel = _stop.Token });
            var cuts = problem.Stages.SelectMany(stage => stage.Cuts).ToArray();
            _task = Task.Run(() => AllNew(cuts, Filled(hardware), problem.Prices, problem.Settings, effort));
        }

        /// <summary>False where the match was stopped and this goes on for longer than anybody waits.</summary>
        public bool Ready => _limits.Patience is not { } patience || Ended(_task, patience, _limits.Cancel);

        public (Money Cost, bool Proven, IReadOnlyList<string> Unpriced) Reckoned => _task.GetAwaiter().GetResult();

        public static Beside? Begin(Problem problem, IReadOnlyList<HardwareFill> hardware, MatchLimits limits) =>
            problem.Materials.Count == 1 && !BoughtFreely(problem) ? new Beside(problem, hardware, limits) : null;

        public void Dispose()
        {
            _stop.Cancel();

            // What goes on beyond what anybody waits for still asks its source whether it is to stop.
            if (_limits is not { Patience: { } patience, Cancel.IsCancellationRequested: true }) Task.WaitAny(_task);
            else if (Task.WaitAny([_task], patience) < 0) return;
            _stop.Dispose();
        }
    }

    // Where there is no yard and no limit, and everything is filled, the plan is the purchase of everything new.
    private static bool BoughtFreely(Problem problem) =>
        problem.Buy && problem.Pieces.Count == 0 && problem.Stages.All(stage => stage.Hardware.Count == 0)
        && problem.Materials.All(material => problem.Prices.Of(material).All(price => price.Limit is null));

    // What is needed, and what ripping cuts into or leaves.
    private static string[] Unpriced(Problem problem, IReadOnlyList<PlannedPiece> pieces) =>
    [
        .. problem.Materials.Concat(problem.Stages.SelectMany(stage => stage.Hardware).Select(need => need.Hardware))
            .Concat(pieces.Select(piece => piece.Material)).Concat(pieces.SelectMany(piece => piece.Cuts).Select(cut => cut.Rip?.KeptAs).OfType<Material>())
            .Distinct().Order().Where(material => problem.Prices.Of(material).Count == 0).Select(material => material.Name),
    ];
}
