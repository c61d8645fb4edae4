namespace Offcuts.Matching.Methods;

/// <summary>What a tier minimises.</summary>
internal enum Goal
{
    /// <summary>Unfilled cuts of one stage.</summary>
    Fill,

    /// <summary>Cents spent.</summary>
    Spend,

    /// <summary>Cuts that are ripped out of wider pieces.</summary>
    Rips,

    /// <summary>Cents of yard value given up; where saw cuts come first, those and then the cents.</summary>
    GivenUp,
}

/// <summary>
/// One tier of one material as a pattern program, the earlier tiers held fixed:
/// <code>
/// minimise    sum cost_p x_p + sum leftcost_d z_d
/// demand      sum a_dp x_p + z_d &gt;= n_d      each demand d (= where a longer length can be worth less)
/// supply      sum of x_p of a supply &lt;= m_s   each supply s
/// left        sum of z_d of a stage &lt;= U      each stage decided before
/// spend       sum price_p x_p &lt;= S            once spend is decided
/// rips        sum rips_p x_p &lt;= R             once rips are decided, where something may be ripped
///             x, z whole and not negative
/// </code>
/// x_p: how often pattern p is used. a_dp: cuts of demand d in it. z_d: copies of d left unfilled.
/// A surplus cut can be dropped from its pattern without raising any cost, so "at least" loses nothing and calms the duals (not in the
/// last tier where ripped cuts leave strips of value). That holds
/// for saw cuts too, which cost <see cref="MaterialProblem.SawCost"/> each where they come first: n cuts that end at the span's end take
/// n - 1 saw cuts, and n - 1 of them, which end before it, take n - 1 as well; any others take one less; none take none. A bought piece that is no longer cut keeps no
/// value either: where saw cuts come first, that is less than its saw cut costs; where value does, it can make the plan dearer, so that a surplus cut that stands alone
/// on a bought piece may not be dropped (<see cref="SatMaster"/>).
/// </summary>
internal sealed class Tier
{
    /// <summary>Costs and sums of reduced costs stay below this, so that a few of them can be added up.</summary>
    public const long LargestSum = 1L << 58;

    private readonly Dictionary<int, int> _leftCap = [];
    private long? _drop;

    private Tier(MaterialProblem problem, Goal goal, bool[] active)
    {
        Problem = problem;
        Goal = goal;
        Active = active;
        MostLeft = new int[problem.Demands.Count];
        LeftCost = new int[problem.Demands.Count];
        Scale = ScaleFor(problem);
        DemandCount = [.. problem.Demands.Select(demand => demand.Count)];
        SupplyCount = [.. problem.Supplies.Select(supply => supply.Count)];
        SupplyLeast = new int[SupplyCount.Length];
    }

    public MaterialProblem Problem { get; }

    public Goal Goal { get; }

    /// <summary>Demands that this tier looks at. The others are ignored.</summary>
    public bool[] Active { get; }

    /// <summary>Copies of each demand to be filled: n.</summary>
    public int[] DemandCount { get; private init; }

    /// <summary>Copies to be filled, of all demands that this tier looks at.</summary>
    public int Copies => Enumerable.Range(0, Active.Length).Where(d => Active[d]).Sum(d => DemandCount[d]);

    /// <summary>How many of each supply there are: m.</summary>
    public int[] SupplyCount { get; private init; }

    /// <summary>How many of each supply must be cut: 0, but where branching says more.</summary>
    public int[] SupplyLeast { get; private init; }

    /// <summary>How many copies of each demand may be left unfilled.</summary>
    public int[] MostLeft { get; }

    /// <summary>What each copy left unfilled costs in this tier.</summary>
    public int[] LeftCost { get; }

    /// <summary>Copies that a stage decided before may leave unfilled.</summary>
    public IReadOnlyDictionary<int, int> LeftCap => _leftCap;

    /// <summary>Cents that may be spent, once that is decided.</summary>
    public long? SpendCap { get; private init; }

    /// <summary>Cents that every plan of the tier spends at least, as far as that is known.</summary>
    public long SpendLeast { get; private init; }

    /// <summary>Cuts that may be ripped, once that is decided.</summary>
    public int? RipCap { get; private init; }

    /// <summary>What the bounds of an earlier tier say of the plans of this one.</summary>
    public IReadOnlyList<EarlierBound> Earlier { get; private init; } = [];

    /// <summary>True in the last tier where nothing that is bought narrows what may be taken from the yard.</summary>
    public bool OfYardAlone => Goal == Goal.GivenUp && Earlier.Count == 0;

    /// <summary>True where an earlier tier says that no plan is left.</summary>
    public bool Impossible { get; private init; }

    /// <summary>True where there are two cuts of a size or more on average.</summary>
    public bool FewSizes => 2 * Active.Count(active => active) <= Copies;

    /// <summary>True where a demand may be filled more often than asked at no cost.</summary>
    public bool Covering => Goal != Goal.GivenUp || (Drop == 0 && Problem.MostStrips == 0);

    /// <summary>See <see cref="Supply.LargestDrop"/>, of those that may be cut.</summary>
    public long Drop => _drop ??= Enumerable.Range(0, SupplyCount.Length).Where(s => SupplyCount[s] > 0).Select(s => Problem.Supplies[s].LargestDrop).DefaultIfEmpty().Max();

    /// <summary>Duals are whole multiples of 1/Scale.</summary>
    public long Scale { get; private init; }

    /// <summary>
    /// The largest dual of a row in which no pattern's coefficient is above <paramref name="coefficient"/>, in multiples of 1/<see cref="Scale"/>: the
    /// reduced cost of a pattern is a sum of a few terms that each stay below 2^58, and so stays a whole number of 64 bits.
    /// </summary>
    public long MostDual(long coefficient) => LargestSum / Math.Max(1, coefficient);

    /// <summary>What the linear bound counts for a use of a supply: its least reduced cost, but nothing where that is more and it need not be used.</summary>
    public long Counted(int supply, long leastReducedCost) => SupplyLeast[supply] > 0 ? leastReducedCost : Math.Min(0, leastReducedCost);

    /// <summary>False where an earlier tier says that no plan of this one has the pattern.</summary>
    public bool MayHold(Pattern pattern) => Earlier.All(bound => bound.Holds(pattern));

    /// <summary>
    /// How often a plan may use a pattern. Where cuts may be filled more often than asked, a pattern stands for all its parts too, and may be of use once for every copy.
    /// </summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="covering">True where cuts may be filled more often than asked.</param>
    public int MostUses(Pattern pattern, bool covering) =>
        Math.Max(0, Math.Min(SupplyCount[pattern.Supply], covering ? Copies : pattern.Takes.Min(take => DemandCount[take.Demand] / take.Count)));

    /// <summary>The cost of a pattern in this tier.</summary>
    public long Cost(Pattern pattern) => Goal switch
    {
        Goal.Fill => 0,
        Goal.Spend => pattern.Price,
        Goal.Rips => pattern.Rips,
        _ => Problem.SawCost * pattern.SawCuts + pattern.GivenUp,
    };

    /// <summary>What a demand of a pattern costs in this tier by being ripped, with what that costs in the row of rips; in multiples of 1/Scale.</summary>
    /// <param name="supply">What it is ripped out of.</param>
    /// <param name="demand">The demand.</param>
    /// <param name="whole">True where it takes the span whole.</param>
    /// <param name="ripDual">Dual of the row of rips.</param>
    public long RipCost(int supply, int demand, bool whole, long ripDual)
    {
        var rip = Problem.Supplies[supply].Rip(demand, whole);
        return rip.Count * Goal switch
        {
            Goal.Rips => Scale,
            Goal.GivenUp => Scale * (Problem.SawCost * rip.SawCuts - rip.StripValue) - ripDual,
            _ => 0,
        };
    }

    /// <summary>The figure that a plan reaches in this tier.</summary>
    public long Value(MaterialPlan plan) => Goal switch
    {
        Goal.Fill => Enumerable.Range(0, plan.Left.Count).Sum(d => (long)Left(plan, d) * LeftCost[d]),
        Goal.Spend => plan.Spend,
        Goal.Rips => plan.Rips,
        _ => Problem.SawCost * plan.SawCuts + plan.GivenUp,
    };

    /// <summary>Fewest unfilled cuts of one stage, those of earlier stages as they are in the plan. Looks only at <paramref name="scarce"/> demands.</summary>
    public static Tier Fill(MaterialProblem problem, bool[] scarce, int stage, MaterialPlan earlier)
    {
        var tier = new Tier(problem, Goal.Fill, [.. problem.Demands.Select((demand, d) => scarce[d] && demand.Stage <= stage)]);
        for (var d = 0; d < tier.Active.Length; d++)
        {
            if (!tier.Active[d]) continue;
            if (problem.Demands[d].Stage == stage)
            {
                tier.MostLeft[d] = problem.Demands[d].Count;
                tier.LeftCost[d] = 1;
            }
            else tier.AllowLeft(d, earlier);
        }

        return tier;
    }

    /// <summary>Least spend, leaving no stage shorter than the plan does.</summary>
    public static Tier Spend(MaterialPlan filled) => After(filled, Goal.Spend, null, null);

    /// <summary>Fewest rips, leaving no stage shorter and spending no more than the plan does.</summary>
    /// <param name="spent">The plan.</param>
    /// <param name="spendLeast">No plan that leaves no stage shorter spends less.</param>
    /// <param name="earlier">What the tier of spend says of these plans.</param>
    public static Tier Rips(MaterialPlan spent, long spendLeast = 0, IReadOnlyList<EarlierBound>? earlier = null) =>
        After(spent, Goal.Rips, spent.Spend, null, spendLeast, earlier).Narrowed();

    /// <summary>Least value given up (where they come first, fewest saw cuts before it), leaving no stage shorter, spending and ripping no more than the plan does.</summary>
    /// <param name="spent">The plan.</param>
    /// <param name="spendLeast">No plan that leaves no stage shorter spends less.</param>
    /// <param name="earlier">What the tier of spend says of these plans.</param>
    public static Tier GivenUp(MaterialPlan spent, long spendLeast = 0, IReadOnlyList<EarlierBound>? earlier = null) =>
        After(spent, Goal.GivenUp, spent.Spend, spent.Problem.MayRip ? spent.Rips : null, spendLeast, earlier).Narrowed();

    /// <summary>What remains of the tier once these patterns are settled; a demand filled too often counts as filled.</summary>
    public Tier Rest(IEnumerable<(Pattern Pattern, int Times)> settled)
    {
        var demand = (int[])DemandCount.Clone();
        var supply = (int[])SupplyCount.Clone();
        var (spent, ripped) = (0L, 0);
        foreach (var (pattern, times) in settled)
        {
            foreach (var take in pattern.Takes) demand[take.Demand] = Math.Max(0, demand[take.Demand] - take.Count * times);
            supply[pattern.Supply] -= times;
            spent += pattern.Price * times;
            ripped += pattern.Rips * times;
        }

        var rest = new Tier(Problem, Goal, Active) { DemandCount = demand, SupplyCount = supply, SpendCap = SpendCap - spent, SpendLeast = SpendLeast - spent, RipCap = RipCap - ripped };
        for (var d = 0; d < MostLeft.Length; d++) (rest.MostLeft[d], rest.LeftCost[d]) = (Math.Min(MostLeft[d], demand[d]), LeftCost[d]);
        foreach (var (stage, cap) in LeftCap) rest._leftCap[stage] = cap;
        rest.ForgoTooDear();
        return rest;
    }

    /// <summary>The same tier in two: for plans that cut at most <paramref name="k"/> of a supply, and for those that cut more.</summary>
    public IEnumerable<Tier> SplitAt(int supply, int k)
    {
        var (least, most) = ((int[])SupplyLeast.Clone(), (int[])SupplyCount.Clone());
        (least[supply], most[supply]) = (k + 1, k);
        return [Within(SupplyLeast, most), Within(least, SupplyCount)];
    }

    /// <summary>The same tier for plans that do not take some demands from some supplies.</summary>
    public Tier Without(Func<int, int, bool> pair) => Copy(Problem.Without(pair), SupplyLeast, SupplyCount, Earlier);

    /// <summary>The same tier where no supply has to be cut.</summary>
    public Tier Free() => Copy(Problem, new int[SupplyLeast.Length], SupplyCount, Earlier);

    // By what the spend says, where it is proven: mostly few mixtures of store lengths have its sum.
    private Tier Narrowed()
    {
        if (Earlier.Count == 0) return this;
        var (least, most, mixtures) = Purchases.Of(this, SpendLeast, SpendCap ?? long.MaxValue);
        return mixtures is > 0 ? Within(least, most) : Within(SupplyLeast, SupplyCount);
    }

    /// <summary>The same tier for plans that cut so many of each supply, at least and at most.</summary>
    public Tier Within(int[] least, int[] most)
    {
        if (Earlier.Count == 0) return Copy(Problem, least, most, Earlier);
        // Every pattern holds a copy.
        var (lower, upper) = ((int[])least.Clone(), most.Select(count => Math.Min(count, Copies)).ToArray());
        if (lower.Zip(upper).Any(pair => pair.First > pair.Second)) return Copy(Problem, least, most, Earlier, impossible: true);
        EarlierBound[] earlier = [.. Earlier.Select(bound => bound.Within(lower, upper))];
        if (!earlier.All(bound => bound.Narrow(lower, upper))) return Copy(Problem, least, most, Earlier, impossible: true);

        // Where saw cuts come first, what one costs follows from what can be left, and has to stay the same.
        var problem = Problem.SawCost > 0 ? Problem : Problem.Leaving(
            [.. Problem.Supplies.Select((supply, s) => Math.Max(0, supply.Length - earlier.Max(bound => bound.Lightest(s))))]);
        return Copy(problem, lower, upper, earlier);
    }

    private Tier Copy(MaterialProblem problem, int[] least, int[] most, IReadOnlyList<EarlierBound> earlier, bool impossible = false)
    {
        var copy = new Tier(problem, Goal, Active)
        {
            Scale = Scale,
            DemandCount = DemandCount,
            SupplyCount = most,
            SupplyLeast = least,
            SpendCap = SpendCap,
            SpendLeast = SpendLeast,
            RipCap = RipCap,
            Earlier = earlier,
            Impossible = impossible || Impossible,
        };
        MostLeft.CopyTo(copy.MostLeft, 0);
        LeftCost.CopyTo(copy.LeftCost, 0);
        foreach (var (stage, cap) in LeftCap) copy._leftCap[stage] = cap;
        return copy;
    }

    /// <summary>True where the plan keeps the rows of the tier.</summary>
    public bool Accepts(MaterialPlan plan)
    {
        if (plan.Spend > SpendCap || plan.Rips > RipCap) return false;
        for (var d = 0; d < Active.Length; d++)
        {
            if (Active[d] && Left(plan, d) > MostLeft[d]) return false;
        }

        return LeftCap.All(pair => Enumerable.Range(0, Active.Length).Where(d => Active[d] && Problem.Demands[d].Stage == pair.Key).Sum(d => Left(plan, d)) <= pair.Value);
    }

    // Where part of the tier is settled (Rest), a plan need not fill that part again.
    private int Left(MaterialPlan plan, int demand) => plan.Left[demand] - (Problem.Demands[demand].Count - DemandCount[demand]);

    private static Tier After(MaterialPlan plan, Goal goal, long? spendCap, int? ripCap, long spendLeast = 0, IReadOnlyList<EarlierBound>? earlier = null)
    {
        if (spendLeast > plan.Spend) throw new ArgumentException("a plan spends less than the least", nameof(spendLeast));
        var problem = plan.Problem;
        var tier = new Tier(problem, goal, [.. problem.Demands.Select(_ => true)]) { SpendCap = spendCap, SpendLeast = spendLeast, RipCap = ripCap, Earlier = earlier ?? [] };
        for (var d = 0; d < problem.Demands.Count; d++)
            tier.AllowLeft(d, plan);
        tier.ForgoTooDear();
        return tier;
    }

    // No more of a store length than the money allows.
    private void ForgoTooDear()
    {
        if (SpendCap is not { } cap) return;
        for (var s = 0; s < SupplyCount.Length; s++)
        {
            var price = Problem.Supplies[s].Price;
            if (price > 0) SupplyCount[s] = (int)Math.Min(SupplyCount[s], Math.Max(0, cap / price));
        }
    }

    private void AllowLeft(int demand, MaterialPlan plan)
    {
        var stage = Problem.Demands[demand].Stage;
        var cap = Enumerable.Range(0, Active.Length).Where(d => Active[d] && Problem.Demands[d].Stage == stage).Sum(d => plan.Left[d]);
        if (cap == 0 || Problem.AlwaysFilled(demand)) return;
        _leftCap[stage] = cap;
        MostLeft[demand] = Math.Min(cap, Problem.Demands[demand].Count);
    }

    // As fine as fits: the whole objective, times the scale, stays far inside 63 bits.
    private static long ScaleFor(MaterialProblem problem)
    {
        double most = problem.MostStrips + problem.Copies * (1.0 + (problem.MayRip ? 3.0 : 1.0) * problem.SawCost);
        foreach (var supply in problem.Supplies)
            most += (double)supply.Count * (supply.Price + Math.Max(supply.ValueBefore, supply.Value.At(supply.Length)) + 1);
        var scale = 1L << 22;
        while (scale > 1 && most * scale > LargestSum) scale >>= 1;
        return scale;
    }
}
