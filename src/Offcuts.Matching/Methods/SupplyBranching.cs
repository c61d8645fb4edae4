namespace Offcuts.Matching.Methods;

/// <summary>
/// Branch and bound on how many of each supply are cut at all, and on which cut comes from which supply. What a mixture of plans hides from
/// the bound is mostly that one plan of it cuts more spans than the other, or fills a span with other cuts; once that is settled, the
/// <see cref="StateSpaceRelaxation"/> is close, and few patterns are left.
/// <code>
/// each node     least_s &lt;= sum of x_p of supply s &lt;= most_s        branches   at most k; at least k + 1
///               no pattern of supply s takes demand d, for some pairs   branches   not d from s; d from nothing but s
/// </code>
/// Next is that on which the paths of the last rounds of the ascent agree least (<see cref="PathMean"/>). Best bound first; a node is closed by
/// its bound or by counting. Source: branching on the rows of the master, Barnhart and others, 1998; and on single assignments, as in the
/// generalised assignment problem, Savelsbergh, 1997 (both from memory).
/// Cost: a short ascent a node. Gives up above some nodes; what is then open says how far the bound has come.
/// </summary>
internal sealed class SupplyBranching
{
    private const int Rounds = 40;
    private const int MostNodes = 200;
    private const double AssignedFirst = 1.6;
    private static readonly Counting Inner = new(1, [3_000, 12_000, 40_000], 100_000, 5_000_000);
    private static readonly Counting Last = new(4, [3_000, 12_000, 40_000, 120_000, 400_000], 1_000_000, 300_000_000);

    private readonly Tier _tier;
    private readonly Guide _guide;
    private readonly Effort _effort;

    private sealed record Node(Tier Tier, StateSpaceRelaxation Cells, long Bound);

    // How many levels are tried, how long the lists of patterns may be, and what counting over them may take.
    private sealed record Counting(int Levels, int[] Listed, int States, long Tries);

    private SupplyBranching(Tier tier, Guide guide, Effort effort) => (_tier, _guide, _effort) = (tier, guide, effort);

    /// <summary>The best plan known in the end, and a bound that no plan is below.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="best">A plan that keeps its rows.</param>
    /// <param name="bound">No plan is below it.</param>
    /// <param name="guide">The relaxation without branches.</param>
    /// <param name="effort">Limit.</param>
    /// <param name="nodes">Most nodes.</param>
    public static (MaterialPlan Plan, long Bound) Solve(Tier tier, MaterialPlan best, long bound, Guide guide, Effort effort, int nodes = MostNodes)
    {
        // Elsewhere cuts may be filled more often than asked, and only patterns to which nothing can be added are listed.
        if (tier.Goal != Goal.GivenUp) return (best, bound);
        if ((guide.Cells ?? StateSpaceRelaxation.Of(tier, guide.AtDuals, tier.Value(best) - 1)) is not { } cells) return (best, bound);
        var branching = new SupplyBranching(tier, guide, effort);
        var search = new BestFirst<Node>(tier, node => (false, node.Bound), branching.Explore, effort);
        return search.Run(branching.At(tier, cells, bound), best, bound, nodes);
    }

    private Node At(Tier tier, StateSpaceRelaxation cells, long bound) => new(tier, cells, Math.Max(bound, Bounds.RoundUp(_tier, cells.Bound)));

    private Explored<Node> Explore(Node node, MaterialPlan best)
    {
        if (node.Tier.Impossible) return new Explored<Node>(null, []);
        var value = _tier.Value(best);
        var (cells, paths) = StateSpaceAscent.Raise(node.Tier, node.Cells, value - 1, Rounds, _effort);
        var bound = Math.Max(node.Bound, Bounds.RoundUp(_tier, cells.Bound));
        if (bound >= value) return new Explored<Node>(null, []);
        var branch = Undecided(node.Tier, paths);
        var guide = Guide.By(node.Tier, _guide.AtDuals, cells);
        (var plan, bound) = Counted(node.Tier, guide, value, bound, branch is null ? Last : Inner);
        if (bound >= (plan is null ? value : _tier.Value(plan))) return new Explored<Node>(plan, []);
        if (branch is null) return new Explored<Node>(plan, [], bound);
        return new Explored<Node>(plan, [.. branch.Of(node.Tier).Select(within => At(within, cells.Within(within), bound))]);
    }

    // What counting over the patterns of a few levels finds or rules out.
    private (MaterialPlan? Plan, long Bound) Counted(Tier tier, Guide guide, long value, long bound, Counting work)
    {
        MaterialPlan? best = null;
        var most = value - 1;
        for (var level = 0; level < work.Levels && bound < value && !_effort.Over; level++)
        {
            if (PatternEnumeration.Widest(tier, guide, bound, Math.Min(most, value - 1), work.Listed) is not { } listed) break;
            var counted = CountProgram.Solve(tier, listed.Patterns, guide, listed.Most, work.States, work.Tries, _effort);
            if (counted.Plan is { } plan && tier.Value(plan) < value) (best, value) = (plan.In(_tier.Problem), tier.Value(plan));
            if (counted.Closed) (bound, most) = (value <= listed.Most ? value : Math.Max(bound, Bounds.NextAbove(tier, listed.Most)), value - 1);
            else if (listed.Most == bound) break;
            else most = bound + (listed.Most - bound) / 4;
        }

        return (best, bound);
    }

    // What is least clear: how many of a supply are cut, or whether a cut of which there is one comes from it.
    private static Branch? Undecided(Tier tier, PathMean paths)
    {
        (Branch Branch, double Apart)? best = null;
        for (var s = 0; s < paths.Uses.Length; s++)
        {
            var (least, most) = (tier.SupplyLeast[s], tier.SupplyCount[s]);
            if (least < most) Compare(new Branch(s, null, Math.Clamp((int)Math.Floor(paths.Uses[s]), least, most - 1)), paths.Uses[s], 1);
            for (var d = 0; d < tier.DemandCount.Length; d++)
            {
                if (tier.Active[d] && tier.DemandCount[d] == 1 && most > 0 && tier.Problem.Fits(s, d) && Elsewhere(tier, s, d)) Compare(new Branch(s, d, 0), paths.From[s][d], AssignedFirst);
            }
        }

        return best?.Branch;

        void Compare(Branch branch, double mean, double share)
        {
            var apart = share * Math.Min(mean - branch.Most, branch.Most + 1 - mean);
            if (best is null || apart > best.Value.Apart) best = (branch, apart);
        }
    }

    private static bool Elsewhere(Tier tier, int supply, int demand) => tier.MostLeft[demand] > 0
        || Enumerable.Range(0, tier.SupplyCount.Length).Any(s => s != supply && tier.SupplyCount[s] > 0 && tier.Problem.Fits(s, demand));

    // A supply cut at most so often, or more; or a demand not from it, or from nothing else.
    private sealed record Branch(int Supply, int? Demand, int Most)
    {
        public IEnumerable<Tier> Of(Tier tier)
        {
            if (Demand is { } demand)
            {
                yield return tier.Without((s, d) => d == demand && s == Supply);
                yield return tier.Without((s, d) => d == demand && s != Supply);
                yield break;
            }

            foreach (var within in tier.SplitAt(Supply, Most)) yield return within;
        }
    }
}
