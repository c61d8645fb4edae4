namespace Offcuts.Matching.Methods;

/// <summary>What is known of one material so far.</summary>
/// <param name="Plan">The best plan.</param>
/// <param name="LeftBound">Bound of the unfilled copies of each stage of the work.</param>
/// <param name="SpendBound">Bound of the spend.</param>
/// <param name="LastBound">Bound of the last tier: of the value given up, or of saw cuts and value in one sum where those come first.</param>
internal sealed record MaterialOutcome(MaterialPlan Plan, long[] LeftBound, long SpendBound, long LastBound)
{
    private MaterialProblem Problem => Plan.Problem;

    /// <summary>What this material alone spends at least where it leaves no stage shorter: what <see cref="SpendBound"/> is but where that is of several together.</summary>
    public long SpendLeast { get; init; }

    /// <summary>Bound of the cuts that are ripped.</summary>
    public long RipsBound { get; init; }

    /// <summary>True where nothing is better in the last tier.</summary>
    public bool LastProven => Problem.SawCost * Plan.SawCuts + Plan.GivenUp == LastBound;

    /// <summary>True where no plan leaves a stage shorter, each stage by itself and those before it.</summary>
    public bool FillProven => Plan.Left.Sum() == LeftBound.Sum();

    /// <summary>True where nothing is better in the last tier and those before.</summary>
    public bool Proven => FillProven && Plan.Spend == SpendBound && (!Problem.MayRip || Plan.Rips == RipsBound) && LastProven;

    /// <summary>Bound of the saw cuts: 0 where value comes first, so that nothing was asked of them.</summary>
    public long SawCutsBound => Problem.SawCost == 0 ? 0 : Bounds.SawCuts(Problem, LastBound);

    /// <summary>Bound of the value given up whatever the saw cuts.</summary>
    public long LeastGivenUp { get; init; } = Plan.Problem.LeastGivenUp;

    /// <summary>Bound of the value given up, at this plan's saw cuts where those come first.</summary>
    public long GivenUpBound => Math.Max(LeastGivenUp, LastBound - Problem.SawCost * Plan.SawCuts);

    /// <summary>What the tier of spend says of the plans of the last tier.</summary>
    public IReadOnlyList<EarlierBound> Earlier { get; init; } = [];

    /// <summary>Which spans the plan's patterns lie on, pattern by pattern; filled in by the last tier.</summary>
    public IReadOnlyList<(Pattern Pattern, SpanPlace? Place)> Placed { get; init; } = [];
}

/// <summary>
/// The door to the solving: one material, or several that ripping joins, in; the best plan and true bounds out. Tier by tier, each fixed before the next.
/// </summary>
internal static class MaterialSolver
{
    /// <summary>A first plan at once, with the bounds that cost nothing.</summary>
    public static MaterialOutcome First(MaterialProblem problem, int stages)
    {
        var all = problem.Demands.Select(_ => true).ToArray();
        var plan = BestInsertion.Best(problem, all);
        return new MaterialOutcome(plan, new long[stages], 0, problem.LeastGivenUp);
    }

    /// <summary>
    /// A good plan soon, where nothing is left short: the relaxation of what is spent, or, where that is nothing, of the value given up, and a plan from it.
    /// The bounds are true and the tiers after it are not looked at.
    /// </summary>
    public static MaterialOutcome Soon(MaterialOutcome first, Effort effort)
    {
        if (first.Plan.Left.Sum() > 0) return first;
        var merged = Merged(first);
        var tier = first.Plan.Spend > 0 ? Tier.Spend(merged.Plan) : Tier.GivenUp(merged.Plan);
        var soon = TierSolver.Soon(tier, merged.Plan, first.Plan.Spend > 0 ? 0 : merged.LastBound, 1, effort, straight: first.Plan.Spend > 0);
        return first.Plan.Spend > 0
            ? merged with { Plan = soon.Plan, SpendBound = soon.Bound, SpendLeast = soon.Bound }
            : merged with { Plan = soon.Plan, LastBound = soon.Bound };
    }

    /// <summary>Solves; <paramref name="report"/> is told of every better figure.</summary>
    public static MaterialOutcome Solve(MaterialOutcome first, Effort effort, Action<MaterialOutcome> report)
    {
        var spent = Paid(first, effort, report);
        return Finished(spent, effort, report);
    }

    /// <summary>
    /// Solves on from what is known. Only where the fill is proven and nothing may be ripped: then what is filled stays as it is, and a lower spend
    /// leaves fewer plans for the last tier, so that each bound holds on. Where a figure of an earlier tier could rise instead (more filled for more
    /// money), a bound of a later one would say nothing of the plans that come in.
    /// </summary>
    public static MaterialOutcome Again(MaterialOutcome known, Effort effort, Action<MaterialOutcome> report)
    {
        if (!MayGoOn(known)) throw new ArgumentException("its bounds would not hold on", nameof(known));
        var spent = Spend(known with { Placed = [] }, ForSpend(known, effort), report);
        report(spent);
        return Finished(spent, effort, report);
    }

    /// <summary>See <see cref="Again"/>.</summary>
    public static bool MayGoOn(MaterialOutcome known) => known.FillProven && !known.Plan.Problem.MayRip;

    /// <summary>The first two tiers: what is filled, and what that costs.</summary>
    public static MaterialOutcome Paid(MaterialOutcome first, Effort effort, Action<MaterialOutcome> report)
    {
        var filled = Fill(first, effort.Share(0.3));
        report(filled);
        var merged = filled.Plan.Left.Sum() == 0 ? Merged(filled) : filled;
        var spent = Spend(merged, ForSpend(merged, effort), report);
        report(spent);
        return spent;
    }

    /// <summary>The tiers after those, and each pattern's place.</summary>
    public static MaterialOutcome Finished(MaterialOutcome spent, Effort effort, Action<MaterialOutcome> report)
    {
        var ripped = spent.Plan.Rips > 0 ? Rips(spent, effort.Share(0.4)) : spent;
        if (ripped.Plan.Rips > 0) report(ripped);
        var (given, tier) = GivenUp(ripped, effort.Share(0.95), report);
        report(given);
        return TieBreak.Place(given, tier, effort);
    }

    /// <summary>The cheapest purchase for a problem without a yard.</summary>
    public static (MaterialPlan Plan, long Bound) AllNew(MaterialProblem problem, Effort effort)
    {
        var first = Merged(First(problem, 1));
        var outcome = TierSolver.Solve(Tier.Spend(first.Plan), first.Plan, 0, effort);
        return (outcome.Plan, outcome.Bound);
    }

    private static MaterialOutcome Fill(MaterialOutcome first, Effort effort)
    {
        var problem = first.Plan.Problem;
        var scarce = Enumerable.Range(0, problem.Demands.Count).Select(d => !problem.AlwaysFilled(d)).ToArray();
        var bounds = (long[])first.LeftBound.Clone();
        if (first.Plan.Left.Sum() == 0) return first;
        var plan = BestInsertion.Best(problem, scarce);
        if (BestInsertion.Better(first.Plan, plan)) plan = Only(first.Plan, scarce);
        foreach (var stage in problem.Demands.Select(demand => demand.Stage).Distinct().Order().ToArray())
        {
            var tier = Tier.Fill(problem, scarce, stage, plan);
            if (!tier.LeftCost.Any(cost => cost > 0)) continue;
            var outcome = TierSolver.Solve(tier, Only(plan, tier.Active), 0, effort);
            bounds[stage] = outcome.Bound;
            var next = BestInsertion.Best(problem, scarce, outcome.Plan);
            if (BestInsertion.Better(next, plan)) plan = next;
        }

        var everything = BestInsertion.Best(problem, [.. scarce.Select(_ => true)], plan);
        return first with { Plan = BestInsertion.Better(first.Plan, everything) ? first.Plan : everything, LeftBound = bounds };
    }

    // Nearly all of the time, where the tiers after it have nothing to decide.
    private static Effort ForSpend(MaterialOutcome known, Effort effort)
    {
        var problem = known.Plan.Problem;
        return effort.Share(problem.MayLoseValue || problem.MayRip || problem.Order == TierOrder.SawCutsFirst ? 0.7 : 0.97);
    }

    private static MaterialOutcome Spend(MaterialOutcome filled, Effort effort, Action<MaterialOutcome> report)
    {
        MaterialOutcome Spent(MaterialPlan plan, long bound) => filled with { Plan = plan, SpendBound = bound, SpendLeast = bound };
        var outcome = TierSolver.Solve(Tier.Spend(filled.Plan), filled.Plan, filled.SpendLeast, effort, (plan, bound) => report(Spent(plan, bound)));
        return Spent(outcome.Plan, outcome.Bound) with { Earlier = Bounded(outcome, effort) };
    }

    // Where nothing is bought, the tier of spend says nothing of what is taken from the yard.
    private static IReadOnlyList<EarlierBound> Bounded(TierOutcome spent, Effort effort)
    {
        if (spent.Plan.Spend == 0 || effort.Over) return [];
        var tier = Tier.Spend(spent.Plan);
        return EarlierBound.OfSpend(tier, spent.Plan, ColumnGeneration.Solve(tier, spent.Plan, spent.Relaxation?.Patterns ?? [], effort));
    }

    private static MaterialOutcome Rips(MaterialOutcome spent, Effort effort)
    {
        var outcome = TierSolver.Solve(Tier.Rips(spent.Plan, spent.SpendLeast, spent.Earlier), spent.Plan, 0, effort);
        return spent with { Plan = outcome.Plan.In(spent.Plan.Problem), RipsBound = outcome.Bound };
    }

    private static (MaterialOutcome Outcome, TierOutcome Tier) GivenUp(MaterialOutcome spent, Effort effort, Action<MaterialOutcome> report)
    {
        MaterialOutcome Given(MaterialPlan plan, long bound) => spent with { Plan = plan.In(spent.Plan.Problem), LastBound = bound };
        var outcome = TierSolver.Solve(
            Tier.GivenUp(spent.Plan, spent.SpendLeast, spent.Earlier), spent.Plan, spent.LastBound, effort, (plan, bound) => report(Given(plan, bound)));
        var given = Given(outcome.Plan, outcome.Bound);
        return (given.LastProven || given.Plan.Problem.SawCost == 0 ? given : WithValueBound(given, effort), outcome);
    }

    // Where saw cuts and value together are not proven, their sum tells little of the value; its own relaxation tells more.
    private static MaterialOutcome WithValueBound(MaterialOutcome given, Effort effort)
    {
        var plan = new MaterialPlan(given.Plan.Problem.ValueFirst(), given.Plan.Uses);
        var tier = Tier.GivenUp(plan);
        var bound = Bounds.RoundUp(tier, ColumnGeneration.Solve(tier, plan, [], effort).Bound);
        return given with { LeastGivenUp = Math.Max(given.LeastGivenUp, bound) };
    }

    private static MaterialPlan Only(MaterialPlan plan, bool[] active) =>
        new(plan.Problem, plan.Uses
            .Select(use => (Takes: use.Pattern.Takes.Where(take => active[take.Demand]).ToArray(), use))
            .Where(kept => kept.Takes.Length > 0)
            .Select(kept => (new Pattern(plan.Problem, kept.use.Pattern.Supply, kept.Takes, kept.use.Pattern.Whole), kept.use.Times)));

    // Where nothing is left short, cuts of different stages become alike.
    private static MaterialOutcome Merged(MaterialOutcome filled)
    {
        var old = filled.Plan.Problem;
        var problem = old.WithoutStages();
        var demand = old.Demands.Select(from => Enumerable.Range(0, problem.Demands.Count).Single(d => problem.Demands[d].Rows.Contains(from.Rows[0]))).ToArray();
        Pattern Moved(Pattern pattern) => new(
            problem,
            pattern.Supply,
            [.. pattern.Takes.GroupBy(take => demand[take.Demand]).Select(group => new Take(group.Key, group.Sum(take => take.Count)))],
            pattern.Whole);
        return filled with { Plan = new MaterialPlan(problem, filled.Plan.Uses.Select(use => (Moved(use.Pattern), use.Times))) };
    }
}
