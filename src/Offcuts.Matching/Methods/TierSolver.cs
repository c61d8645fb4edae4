namespace Offcuts.Matching.Methods;

/// <summary>What solving a tier gave.</summary>
/// <param name="Plan">The best plan found.</param>
/// <param name="Bound">No plan that keeps the rows of the tier is below it.</param>
/// <param name="Relaxation">The relaxation, or none where it was not needed.</param>
/// <param name="Guide">What led the proof, or none where it took none.</param>
internal sealed record TierOutcome(MaterialPlan Plan, long Bound, Relaxation? Relaxation, Guide? Guide = null);

/// <summary>
/// Solves one tier: full loads, where the sum of lengths says what they cost; column generation for the bound; diving and an integer master over the patterns met for a plan; then, where they
/// do not meet, branching on what is bought, and all patterns within a gap and a proof over those, level by level: by counting, by search and clause learning, and by the
/// integer master where these give up. Where all do, the plan is at least made better part by part, and where the sum of lengths says that it is one step from the best, by a
/// very long dive. The last tier is gone through level by level again and again with four times the work, as long as that can change anything and there is time.
/// </summary>
internal static class TierSolver
{
    private const int MostCountedCopies = 36;
    private const int FewStates = 100_000;
    private const int MostStates = 2_500_000;
    private const int BeamWidth = 150_000;
    private const long FewTries = 5_000_000;
    private const long MostTries = 1_500_000_000;
    private const int Dives = 3;
    private const int DiveWork = 24;
    private const int ShortDive = 6;
    private const int LongDive = 48;
    private const int LongestDive = 1_500;
    private const int FewPatterns = 2_000;
    private const int FewListed = 3_000;
    private const int FewNodes = 50;
    private const int ManyNodes = 500;
    private const int MostFailures = 3;
    private const int LittlePatience = 18;
    private const int MuchPatience = 80;
    private const long SearchWork = 12_000_000;
    private const double ShareOfSearch = 0.5;
    private const int LongSearch = 8;
    private const double ShareOfLongSearch = 0.85;
    private const int FewPriced = 24;
    private const int MostPriced = 400;
    private const int FewClimbs = 2;
    private const int MostClimbs = 4;
    private const int MoreEachClimb = 4;
    private static readonly int[] BeamLists = [12_000, 40_000, 120_000];
    private static readonly PoolWork NearTheBound = new(MostCountedCopies, FewStates, FewTries, 300, 0.1, 0.5);
    private static readonly PoolWork Glance = new(MostCountedCopies, FewStates, FewTries, 20, 0.1);
    private static readonly PoolWork Little = new(int.MaxValue, FewStates, FewTries, 100, 0.1);
    private static readonly PoolWork Counting = new(int.MaxValue, MostStates, MostTries, 1_000, 0.2, 2);
    private static readonly PoolWork Searching = new(int.MaxValue, FewStates, FewTries, 200, 0.2, 2);

    /// <summary>Solves.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="incumbent">A plan that keeps its rows.</param>
    /// <param name="trivialBound">A bound that is known beforehand.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="told">Told of the plans that come soon, with what bound there is then, long before the proof has ended.</param>
    public static TierOutcome Solve(Tier tier, MaterialPlan incumbent, long trivialBound, Effort effort, Action<MaterialPlan, long>? told = null)
    {
        var branches = !Countable(tier) && PurchaseBranching.Applies(tier);
        var (best, bound, relaxation, _) = Soon(tier, incumbent, trivialBound, branches || Countable(tier) || Meanwhile.Applies(tier) ? 1 : Dives, effort, straight: branches);
        if (relaxation is null || tier.Value(best) <= bound || effort.Over) return new TierOutcome(best, bound, relaxation);
        told?.Invoke(best, bound);

        // What a proof may leave out depends on how good the duals are, beyond what the bound says.
        relaxation = ColumnGeneration.Solve(tier, best, relaxation.Patterns, effort);
        bound = Math.Max(bound, Bounds.RoundUp(tier, relaxation.Bound));
        var climbs = tier.Goal == Goal.GivenUp ? MostClimbs : 1;
        if (!branches) return Proven(tier, best, bound, relaxation, climbs, effort);

        // Where the lengths alone say as much as the relaxation, a plan without waste mostly meets the bound, and branching would not raise it.
        if (tier.Goal == Goal.Spend && Bounds.Lengths(tier).Bound == bound) (best, bound, relaxation) = AtBound(tier, best, bound, relaxation, effort);
        var settled = PurchaseBranching.Settled(tier);
        TierOutcome? last = null;
        (best, bound) = PurchaseBranching.Solve(tier, best, bound, relaxation, (whole, plan, least, at) =>
        {
            last = Proven(whole, Better(whole, plan, least, at, Dives - 1, effort), least, at, settled ? climbs : Math.Min(climbs, FewClimbs), effort);
            return (last.Plan, last.Bound);
        }, effort, told: told);
        return settled && last is not null ? last with { Plan = best, Bound = bound } : Proven(tier, best, bound, relaxation, climbs, effort);
    }

    /// <summary>What comes soon: full loads, or the relaxation and a plan from it.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="incumbent">A plan that keeps its rows.</param>
    /// <param name="trivialBound">A bound that is known beforehand.</param>
    /// <param name="dives">How many dives.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="straight">True where a dive takes nothing back, since branching, which dives too, comes after it or others wait.</param>
    public static TierOutcome Soon(Tier tier, MaterialPlan incumbent, long trivialBound, int dives, Effort effort, bool straight = false)
    {
        // What is known from before comes from here: full loads were looked for then.
        var byLength = tier.Goal == Goal.Spend ? Bounds.Lengths(tier).Bound : long.MinValue;
        var (bound, first) = (Math.Max(trivialBound, byLength), byLength > trivialBound);
        if (tier.Value(incumbent) <= bound || effort.Over) return new TierOutcome(incumbent, bound, null);
        if (first && FullLoads.Find(tier, bound, effort) is { } full) return new TierOutcome(full, bound, null);
        var relaxation = ColumnGeneration.Solve(tier, incumbent, [], effort, bound);
        bound = Math.Max(bound, Bounds.RoundUp(tier, relaxation.Bound));
        return new TierOutcome(Better(tier, incumbent, bound, relaxation, dives, effort, straight), bound, relaxation);
    }

    // What dives did not settle.
    private static TierOutcome Proven(Tier tier, MaterialPlan best, long bound, Relaxation relaxation, int climbs, Effort effort)
    {
        if (tier.Goal != Goal.GivenUp && tier.Copies > MostCountedCopies && tier.Value(best) > bound && !effort.Over)
            (best, bound, relaxation) = AtBound(tier, best, bound, relaxation, effort);
        if (tier.Value(best) > bound && !Countable(tier) && (!Meanwhile.Applies(tier) || tier.FewSizes) && !effort.Over) best = Recombined(tier, best, relaxation, effort);
        Guide? guide = null;
        if (tier.Value(best) > bound && !effort.Over) (best, bound, guide) = Searched(tier, best, bound, relaxation, climbs, effort);
        if (Tight(tier, best, bound) && !effort.Over) best = Diving.Dive(tier, relaxation.Patterns, bound, LongestDive, effort) ?? best;
        return new TierOutcome(best, bound, relaxation, guide);
    }

    // One step or a thousandth from a bound that the sum of lengths alone gives: next to nothing may be wasted, so few patterns are of use.
    private static bool Tight(Tier tier, MaterialPlan best, long bound) =>
        tier.Goal == Goal.Spend && tier.Value(best) > bound && Bounds.Lengths(tier).Bound == bound
        && (Bounds.NextAbove(tier, bound) >= tier.Value(best) || (tier.Value(best) - bound) * 1_000 <= bound);

    // Plans from the relaxation, by diving. Where counting mostly decides, it finds them sooner.
    private static MaterialPlan Better(Tier tier, MaterialPlan best, long bound, Relaxation relaxation, int dives, Effort effort, bool straight = false)
    {
        var work = straight ? 0 : tier.Goal == Goal.GivenUp ? DiveWork : ShortDive;
        for (var dived = 0; dived < dives && tier.Value(best) > bound && !effort.Over; dived++)
        {
            if (Diving.Dive(tier, relaxation.Patterns, dived == 0 ? tier.Value(best) - 1 : bound, work, effort) is not { } dive) break;
            best = dive;
        }

        return best;
    }

    // Only a plan that meets the bound will do. Loads that it may be taken to have are settled, and only the rest is looked at, if that is
    // no more than half: else the patterns known so far are worth more.
    private static (MaterialPlan Plan, long Bound, Relaxation Relaxation) AtBound(
        Tier tier, MaterialPlan best, long bound, Relaxation relaxation, Effort effort)
    {
        var (loads, ruledOut) = Reduction.Of(tier, bound);
        if (ruledOut) return (best, Math.Min(tier.Value(best), Bounds.NextAbove(tier, bound)), relaxation);
        if (2 * loads.Sum(load => load.Cuts) < tier.Copies) return ListedOrDived(tier, best, bound, relaxation, effort);
        var settled = new MaterialPlan(tier.Problem, loads.Select(load => (load, 1)));
        var full = BestInsertion.Best(tier.Problem, tier.Active, settled);
        if (full.Without(settled) is not { } start) return ListedOrDived(tier, best, bound, relaxation, effort);
        if (tier.Accepts(full) && tier.Value(full) <= bound) return (full, bound, relaxation);

        var rest = tier.Rest(settled.Uses);
        var level = bound - settled.Spend;
        var ofRest = ColumnGeneration.Solve(rest, start, [], effort, level);
        var (plan, least) = (start, Bounds.RoundUp(rest, ofRest.Bound));
        if (least <= level) (plan, least, _) = ListedOrDived(rest, start, level, ofRest, effort);
        if (rest.Value(plan) <= level) return (new MaterialPlan(tier.Problem, [.. settled.Uses, .. plan.Uses]), bound, relaxation);
        return (best, least > level ? Math.Min(tier.Value(best), Bounds.NextAbove(tier, bound)) : bound, relaxation);
    }

    // Over all patterns that such a plan can have, where they are few, else by a long dive.
    private static (MaterialPlan Plan, long Bound, Relaxation Relaxation) ListedOrDived(
        Tier tier, MaterialPlan best, long bound, Relaxation relaxation, Effort effort)
    {
        relaxation = ColumnGeneration.Centred(tier, best, relaxation, effort);
        var guide = Guide.Linear(tier, relaxation);
        if (PatternEnumeration.All(tier, guide.Limits(bound), FewPatterns, PatternEnumeration.StepsAPattern * FewPatterns) is { } patterns)
        {
            var decided = PoolDecision.Solve(tier, patterns, guide, bound, NearTheBound, effort);
            if (decided is { Plan: null, Closed: false }) decided = IntegerMaster.Solve(tier, patterns, bound, FewNodes, effort);
            if (decided.Plan is { } found) return (found, bound, relaxation);
            if (decided.Closed) return (best, Math.Min(tier.Value(best), Bounds.NextAbove(tier, bound)), relaxation);
        }

        return (Diving.Dive(tier, relaxation.Patterns, bound, LongDive, effort) ?? best, bound, relaxation);
    }

    // As good as the patterns met so far give.
    private static MaterialPlan Recombined(Tier tier, MaterialPlan best, Relaxation relaxation, Effort effort) =>
        IntegerMaster.Found(tier, relaxation.Patterns, tier.Value(best) - 1, FewNodes, effort) ?? best;

    private static (MaterialPlan Plan, long Bound, Guide Guide) Searched(Tier tier, MaterialPlan best, long bound, Relaxation relaxation, int climbs, Effort effort)
    {
        var linear = Guide.Linear(tier, relaxation);
        if (Countable(tier)) return Counted(tier, best, bound, relaxation, linear, effort);

        // What leads better takes its time, so a search and a glance with what there is come first.
        using var meanwhile = new Meanwhile(tier, best, relaxation.Patterns, linear, bound, LittlePatience, MuchPatience, effort);
        var search = new LeastBoundSearch(tier, linear);
        var searches = LeastBoundSearch.Applies(tier);
        if (searches) (best, bound) = search.Raise(best, bound, SearchWork, effort.Share(ShareOfSearch));
        var buys = tier.Goal == Goal.GivenUp && !tier.OfYardAlone;
        var glance = new Levels(tier, best, bound, Glance, 0, effort);
        if (buys) glance.Climb(linear, 2, 1, Levels.Some);
        else glance.Climb(linear, 1, 1, Levels.Few);
        (best, bound) = (glance.Best, glance.Bound);
        if (buys && search.TooMany && tier.Value(best) > bound) (best, bound) = BranchAndPrice.Solve(tier, best, bound, relaxation, FewPriced, effort);
        if (tier.Value(best) <= bound) return (best, bound, linear);
        if (effort.Over) return (meanwhile.Better(best), bound, linear);

        // What is bought is of so many copies that cells say nothing.
        var guide = buys ? linear : Guide.Of(tier, relaxation, tier.Value(best) - 1, effort);
        var led = guide.Cells is not null && Bounds.RoundUp(tier, guide.Bound) > bound;

        // While the other core makes the plan better. Over a short list others do as well.
        if (searches && !led) (best, bound) = search.Raise(best, bound, LongSearch * SearchWork, effort.Share(search.Length > IntegerMaster.MostPatterns ? ShareOfLongSearch : ShareOfSearch));
        if (tier.Value(best) <= bound) return (best, bound, guide);
        if (effort.Over) return (meanwhile.Better(best), bound, guide);
        best = meanwhile.Soon(best);
        if (led) meanwhile.End();
        for (var (climb, more, listed) = (1, 1, true); climb <= climbs && (listed || Meanwhile.Applies(tier)) && tier.Value(best) > bound && !effort.Over; (climb, more) = (climb + 1, more * MoreEachClimb))
        {
            if (climb > 1 && guide.Cells is not null) guide = Guide.Of(tier, relaxation, tier.Value(best) - 1, effort, more);
            using var longer = climb == 1 && !led ? null : new Meanwhile(tier, best, relaxation.Patterns, guide, bound, 0, climb * MuchPatience, effort, climb);
            var first = best;
            if (searches && climb > 1) (first, bound) = search.Raise(best, bound, more * SearchWork, effort);
            var levels = new Levels(tier, first, bound, Searching.Times(more), ManyNodes, effort);
            listed = levels.Climb(guide, searches && !led ? 4 : 2, MostFailures, Levels.Short, Levels.Long);
            if (levels.Closed) return (levels.Best, levels.Bound, guide);
            var better = (longer ?? meanwhile).Better(levels.Best);
            (best, bound) = (climb == 1 || tier.Value(better) < tier.Value(best) ? Reopening.Improve(tier, better, levels.Bound, effort) : better, levels.Bound);
        }

        if (buys && searches && tier.Value(best) > bound) (best, bound) = BranchAndPrice.Solve(tier, best, bound, relaxation, MostPriced, effort);
        return (best, bound, guide);
    }

    // Where counting mostly decides. What it takes multiplies with the distance from the bound, so levels are tried from near, with little work first.
    private static (MaterialPlan Plan, long Bound, Guide Guide) Counted(Tier tier, MaterialPlan best, long bound, Relaxation relaxation, Guide linear, Effort effort)
    {
        var small = Small(tier, best, linear, effort);
        if (small?.Plan is { } better) best = better;
        if (small is { Closed: true }) return (best, tier.Value(best), linear);
        var guide = Guide.Of(tier, relaxation, tier.Value(best) - 1, effort);
        var near = new Levels(tier, best, bound, Little, 0, effort);
        var listed = near.Creep(guide);
        (best, bound) = (near.Best, near.Bound);
        if (listed && tier.Value(best) > bound && !effort.Over)
        {
            // What follows grows with the gap more than this costs.
            best = Beamed(tier, Reopening.Improve(tier, best, bound, effort), bound, guide, effort);
            var levels = new Levels(tier, best, bound, Counting, ManyNodes, effort);
            levels.Climb(guide, 1, MostFailures, Levels.Long);
            (best, bound) = (levels.Best, levels.Bound);
        }

        if (tier.Value(best) > bound && !effort.Over) (best, bound) = SupplyBranching.Solve(tier, best, bound, guide, effort);
        if (tier.Value(best) > bound && !effort.Over) best = Recombined(tier, Better(tier, best, bound, relaxation, Dives, effort), relaxation, effort);
        return (Reopening.Improve(tier, best, bound, effort), bound, guide);
    }

    // As good as counting makes it that goes on with the best states only.
    private static MaterialPlan Beamed(Tier tier, MaterialPlan best, long bound, Guide guide, Effort effort)
    {
        while (tier.Value(best) > bound && !effort.Over
            && PatternEnumeration.Widest(tier, guide, bound, tier.Value(best) - 1, BeamLists) is { } listed
            && CountProgram.Beam(tier, listed.Patterns, guide, listed.Most, BeamWidth, effort) is { } better && tier.Value(better) < tier.Value(best)) best = better;
        return best;
    }

    // Where the whole gap holds few patterns, the linear relaxation is guide enough: the best plan, and whether it is proven; none where there are more.
    private static IntegerOutcome? Small(Tier tier, MaterialPlan best, Guide linear, Effort effort)
    {
        var most = tier.Value(best) - 1;
        if (PatternEnumeration.All(tier, linear.Limits(most), FewListed, PatternEnumeration.StepsAPattern * FewListed) is not { } patterns) return null;
        return PoolDecision.Solve(tier, patterns, linear, most, Little, effort);
    }

    // Above some copies the states multiply beyond any limit; where surplus cuts have to be told apart, before that.
    private static bool Countable(Tier tier) =>
        tier.Goal == Goal.GivenUp && tier.Copies <= MostCountedCopies;
}
