namespace Offcuts.Matching.Methods;

/// <summary>
/// A plan from the relaxation: settle the patterns that it uses whole, else the one it uses most; generate patterns anew for what
/// remains; repeat. The patterns fit what is left at every step, which rounding over the first patterns alone cannot do. Where the
/// relaxation of what remains tells that nothing better comes of it, what was settled last is taken back, each time twice as much until
/// the dive gets further than before, and it goes on from there by other ways: many solutions of the relaxation are equally good, and
/// costs that are changed by next to nothing, drawn with a fixed seed, lead to another of them. In fill and spend, once it has come to
/// nothing, what remains is solved to its end wherever the patterns that it can still have are few (<see cref="PoolDecision"/>).
/// Source: diving with column generation, Sadykov et al., 2019 (from memory); taking back more and more is our own.
/// Cost: at most one short column generation for each piece cut, and some more for what is taken back. Never fails; may find nothing better.
/// </summary>
internal sealed class Diving
{
    private const int MostRounds = 60;
    private const int MostListed = 3_000;
    private const int PatternsARow = 4;
    private const int LeastLoss = 1_000;
    private const double AllButWhole = 1 - 1e-4;
    private const double Unused = 1e-4;

    private static readonly PoolWork AtTheEnd = new(30, 20_000, 300_000, 60);

    private readonly Tier _tier;
    private readonly long _most;
    private readonly Effort _effort;
    private readonly List<Pattern> _known;
    private readonly List<Pattern> _settled = [];
    private readonly Random _random = new(1);
    private long _work;
    private int _back = 1;
    private int _furthest;
    private long _listable = long.MaxValue;

    private Diving(Tier tier, IReadOnlyList<Pattern> patterns, long most, int work, Effort effort)
    {
        (_tier, _known, _most, _effort) = (tier, [.. patterns], most, effort);
        _work = work * Open(tier);
    }

    /// <summary>The plan reached, or none where it does not keep the rows or costs more than asked for.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="patterns">Patterns to start from.</param>
    /// <param name="most">Only a plan of at most this cost is looked for.</param>
    /// <param name="work">How often, in solutions of the whole relaxation, it may go on after having come to nothing.</param>
    /// <param name="effort">Limit.</param>
    public static MaterialPlan? Dive(Tier tier, IReadOnlyList<Pattern> patterns, long most, int work, Effort effort) =>
        new Diving(tier, patterns, most, work, effort).Run();

    private MaterialPlan? Run()
    {
        var first = true;
        while (!_effort.Over)
        {
            var rest = _tier.Rest(_settled.Select(pattern => (pattern, 1)));
            if (Open(rest) == 0)
            {
                if (Finished() is { } plan) return plan;
                if (!TakenBack()) return null;
                first = false;
                continue;
            }

            var (relaxation, bound) = Relax(rest, first);
            var ended = _tier.Goal != Goal.GivenUp && !first && _settled.Count > 0 && bound <= _most && Open(rest) <= _listable ? Decided(rest, relaxation) : (Closed: false, Plan: null);
            if (ended.Plan is not null) return ended.Plan;
            var choices = relaxation.Fractional
                .Where(column => column.Times > Unused && Useful(rest, column.Pattern))
                .OrderByDescending(column => column.Times).ThenBy(column => column.Pattern, Comparer<Pattern>.Create(Pattern.Compare))
                .ToArray();
            if (choices.Length == 0 || bound > _most || ended.Closed)
            {
                // What was solved to its end would be so again a little above.
                if (ended.Closed) _back = Math.Max(_back, (int)(relaxation.Fractional.Sum(column => column.Times) / 4));
                if (bound <= _most && !ended.Closed && Finished() is { } plan) return plan;
                if (!TakenBack()) return null;
                first = false;
                continue;
            }

            if (choices[0].Times < AllButWhole) _settled.Add(choices[0].Pattern);
            foreach (var (pattern, times) in choices.TakeWhile(column => column.Times >= AllButWhole))
                _settled.AddRange(Enumerable.Repeat(pattern, Fitting(_tier.Rest(_settled.Select(one => (one, 1))), pattern, (int)(times + 1 - AllButWhole))));
        }

        return null;
    }

    private static long Open(Tier tier) => Enumerable.Range(0, tier.Active.Length).Count(d => tier.Active[d] && tier.DemandCount[d] > 0);

    // False where there is nothing to take back, or where that was done often enough.
    private bool TakenBack()
    {
        if (_settled.Count == 0 || _work <= 0) return false;
        if (_settled.Count > _furthest) (_furthest, _back) = (_settled.Count, 1);
        else _back *= 2;
        var kept = Math.Max(0, _settled.Count - _back);
        _settled.RemoveRange(kept, _settled.Count - kept);
        if (kept == 0) _back = 1;
        return true;
    }

    // Where the patterns that can still be of use are few, the rest is solved to its end.
    private (bool Closed, MaterialPlan? Plan) Decided(Tier rest, Relaxation relaxation)
    {
        relaxation = TowardsLength(rest, relaxation);
        var most = _most - _settled.Sum(_tier.Cost);
        var guide = Guide.Linear(rest, relaxation);
        if (PatternEnumeration.All(rest, guide.Limits(most), MostListed, PatternEnumeration.StepsAPattern * MostListed) is not { } patterns)
        {
            _listable = Open(rest) * 7 / 8;
            return (false, null);
        }

        _work -= patterns.Count / PatternsARow;
        var decided = PoolDecision.Solve(rest, patterns, guide, most, AtTheEnd, _effort);
        return (decided.Closed, decided.Plan is null ? null : Whole(decided.Plan));
    }

    // Where the sum of lengths bounds as well, only patterns without waste can be of use; the master's duals need not tell.
    private static Relaxation TowardsLength(Tier rest, Relaxation relaxation)
    {
        if (rest.Goal != Goal.Spend || Bounds.Lengths(rest).Supply is not { } supply) return relaxation;
        var duals = Duals.Mean([relaxation.Duals, Duals.ByLength(rest, supply)]);
        var priced = new PricingKnapsack(rest).Price(duals);
        var bound = Bounds.Lagrangian(rest, duals, priced);
        return relaxation.Bound - bound > rest.Scale / LeastLoss ? relaxation : relaxation with { Duals = duals, Priced = priced, Bound = bound };
    }

    private MaterialPlan? Whole(MaterialPlan rest)
    {
        var plan = IntegerMaster.Trimmed(_tier, [.. rest.Uses, .. _settled.Select(pattern => (pattern, 1))]);
        return _tier.Accepts(plan) && _tier.Value(plan) <= _most ? plan : null;
    }

    private MaterialPlan? Finished()
    {
        var plan = IntegerMaster.Trimmed(_tier, _settled.Select(pattern => (pattern, 1)));
        if (!_tier.Accepts(plan)) plan = BestInsertion.Best(_tier.Problem, _tier.Active, plan);
        return _tier.Accepts(plan) && _tier.Value(plan) <= _most ? plan : null;
    }

    // A pattern may hold more of a demand than is left only where the surplus can be dropped.
    private static bool Useful(Tier rest, Pattern pattern) =>
        rest.SupplyCount[pattern.Supply] > 0 && pattern.Takes.All(take => rest.DemandCount[take.Demand] >= take.Count);

    private static int Fitting(Tier rest, Pattern pattern, int times) => Math.Min(
        times,
        Math.Min(rest.SupplyCount[pattern.Supply], pattern.Takes.Min(take => rest.DemandCount[take.Demand] / take.Count)));

    // The relaxation of what remains, and a figure that no plan with what is settled is below, as far as the linear program is right.
    private (Relaxation Relaxation, long Bound) Relax(Tier rest, bool straight)
    {
        if (!straight) _work -= Open(rest);
        var master = new RestrictedMaster(rest, Dear(rest), straight ? null : _random);
        foreach (var pattern in _known)
        {
            if (Useful(rest, pattern)) master.Add(pattern);
        }

        var knapsack = new PricingKnapsack(rest);
        Relaxation? relaxation = null;
        var ended = false;
        for (var round = 0; round < MostRounds && !ended && !_effort.Over; round++)
        {
            if (master.Solve() is not { } duals) break;
            var priced = knapsack.Price(duals);
            relaxation = new Relaxation([], [], duals, priced, Bounds.Lagrangian(rest, duals, priced));
            ended = true;
            for (var s = 0; s < priced.Length; s++)
            {
                if (rest.SupplyCount[s] == 0 || priced[s].Best is not { } pattern || priced[s].ReducedCost - duals.Supply[s] >= -rest.Scale / 1000) continue;
                if (!master.Add(pattern)) continue;
                _known.Add(pattern);
                ended = false;
            }
        }

        if (relaxation is null) return (new Relaxation([], [], Duals.Zero(rest), [], 0), long.MaxValue);
        if (!ended) _ = master.Solve();
        var settled = _settled.Sum(pattern => (double)_tier.Cost(pattern));
        return (relaxation with { Fractional = [.. master.Solution] },
            ended ? Bounds.RoundUp(_tier, (long)Math.Ceiling((settled + master.Objective - 0.01) * _tier.Scale)) : long.MinValue);
    }

    /// <summary>A cost above that of any one pattern and its like, at which going without is the last resort.</summary>
    public static double Dear(Tier tier)
    {
        double most = 1;
        foreach (var supply in tier.Problem.Supplies) most = Math.Max(most, 4.0 * (supply.Price + tier.Problem.SawCost + Math.Max(supply.ValueBefore, supply.Value.At(supply.Length)) + supply.LargestDrop + (tier.Goal == Goal.Rips ? 1 : 0)));
        return most;
    }
}
