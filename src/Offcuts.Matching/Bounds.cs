using Offcuts.Matching.Methods;

namespace Offcuts.Matching;

/// <summary>
/// True lower bounds, in whole numbers throughout. With duals u of the demand rows, t &lt;= 0 of the left rows, v &lt;= 0 of the
/// spend row and w &lt;= 0 of the row of rips, whatever they are,
/// <code>
/// L = sum n_d u_d + sum U t + S v + R w
///   + sum over supplies   m_s min(0, least reduced cost of the supply)
///   + sum over demands    mostleft_d min(0, leftcost_d - u_d - t)
/// </code>
/// is below the cost of every plan that keeps the rows (the Lagrangian bound; at the duals of the relaxation it equals its optimum).
/// Since costs are whole, the bound may be rounded up to the next whole number, and a spend to the next sum of prices.
/// Source: Lasdon, Optimization Theory for Large Systems, 1970 (from memory); the rounding is elementary.
/// </summary>
internal static class Bounds
{
    /// <summary>
    /// The same at a node of the search: cuts, whose duals are not negative, and splits, whose duals may have either sign, add their
    /// side of the row and take part in the reduced costs; a supply that must be used so often costs at least that.
    /// </summary>
    public static long Lagrangian(Tier tier, Duals duals, PoolNode node, long[] least, (RankOneCut Cut, long Dual)[] cuts, long[] splits)
    {
        var sum = Rows(tier, duals, cuts);
        for (var k = 0; k < splits.Length; k++)
        {
            sum += (Int128)splits[k] * (splits[k] > 0 ? node.Splits[k].Least : node.Splits[k].Most);
        }

        for (var s = 0; s < least.Length; s++)
        {
            if (least[s] == long.MaxValue)
            {
                if (node.Least[s] > 0) return long.MaxValue / 4;
            }
            else sum += (Int128)least[s] * (least[s] < 0 ? node.Most[s] : node.Least[s]);
        }

        return (long)Int128.Clamp(sum, long.MinValue / 4, long.MaxValue / 4);
    }

    /// <summary>L in multiples of 1/<see cref="Tier.Scale"/>, with the least reduced costs that pricing found.</summary>
    public static long Lagrangian(Tier tier, Duals duals, Priced[] priced)
    {
        var sum = Rows(tier, duals, []);
        for (var s = 0; s < priced.Length; s++) sum += (Int128)priced[s].Least * (priced[s].Least < 0 ? tier.SupplyCount[s] : tier.SupplyLeast[s]);
        return (long)Int128.Clamp(sum, long.MinValue / 4, long.MaxValue / 4);
    }

    /// <summary>
    /// The least spend that the sum of lengths alone allows, and the supply by whose price for its length it is counted; none where
    /// nothing can be bought. For the tier of spend alone. It is L for u_d = p w_d / c, with price p and capacity c of that supply, where the
    /// least reduced cost of a supply s is at least p_s - p c_s / c; multiplied by c, so that all is whole.
    /// </summary>
    public static (long Bound, int? Supply) Lengths(Tier tier)
    {
        var problem = tier.Problem;
        (long Bound, int? Supply) best = (0, null);
        Int128 needed = 0;
        for (var d = 0; d < problem.Demands.Count; d++)
        {
            if (tier.Active[d]) needed += (Int128)(tier.DemandCount[d] - tier.MostLeft[d]) * problem.Weights[d];
        }

        for (var by = 0; by < problem.Supplies.Count; by++)
        {
            var (price, capacity) = (problem.Supplies[by].Price, problem.Capacity(by));
            if (price == 0) continue;
            var sum = needed * price;
            for (var s = 0; s < problem.Supplies.Count; s++)
                sum += tier.SupplyCount[s] * Int128.Min(0, (Int128)problem.Supplies[s].Price * capacity - (Int128)price * problem.Capacity(s));
            var bound = sum <= 0 ? 0 : (long)((sum + capacity - 1) / capacity);
            if (best.Supply is null || bound > best.Bound) best = (bound, by);
        }

        return best with { Bound = RoundUp(tier, best.Bound * tier.Scale) };
    }

    /// <summary>What the rows are worth where every demand is filled: sum n u + sum U t + S v + R w.</summary>
    public static Int128 Rows(Tier tier, Duals duals)
    {
        var sum = (Int128)(tier.SpendCap ?? 0) * duals.Spend + (Int128)(tier.RipCap ?? 0) * duals.Rips;
        for (var d = 0; d < tier.DemandCount.Length; d++) sum += tier.Active[d] ? (Int128)tier.DemandCount[d] * duals.Demand[d] : 0;
        foreach (var (stage, cap) in tier.LeftCap) sum += (Int128)cap * duals.Left.GetValueOrDefault(stage);
        return sum;
    }

    private static Int128 Rows(Tier tier, Duals duals, (RankOneCut Cut, long Dual)[] cuts)
    {
        var sum = Rows(tier, duals);
        for (var d = 0; d < tier.DemandCount.Length; d++)
        {
            if (!tier.Active[d] || tier.MostLeft[d] == 0) continue;
            var reduced = tier.LeftCost[d] * tier.Scale - duals.Demand[d] - duals.Left.GetValueOrDefault(tier.Problem.Demands[d].Stage);
            foreach (var (cut, dual) in cuts) reduced -= cut.OfLeft(d) * dual;
            sum += (Int128)tier.MostLeft[d] * Math.Min(0, reduced);
        }

        foreach (var (cut, dual) in cuts) sum += (Int128)cut.Least * dual;
        return sum;
    }

    /// <summary>The least figure of the tier that is not below <paramref name="scaled"/>.</summary>
    public static long RoundUp(Tier tier, long scaled)
    {
        var (whole, rest) = Math.DivRem(scaled, tier.Scale);
        var bound = rest > 0 ? whole + 1 : whole;
        return tier.Goal switch
        {
            Goal.GivenUp => tier.Problem.SawCost == 0 ? bound
                : Math.Max(bound, SawCuts(tier.Problem, bound) * tier.Problem.SawCost + tier.Problem.LeastGivenUp),
            Goal.Spend => tier.Problem.Spends.Next(Math.Max(0, bound)),
            _ => Math.Max(0, bound),
        };
    }

    /// <summary>The fewest saw cuts of a plan whose saw cuts and value given up, in one sum, are not below <paramref name="least"/>.</summary>
    public static long SawCuts(MaterialProblem problem, long least) =>
        Math.Max(0, (least - problem.MostGivenUp + problem.SawCost - 1) / problem.SawCost);

    /// <summary>The least figure of the tier that is above <paramref name="ruledOut"/>.</summary>
    public static long NextAbove(Tier tier, long ruledOut) => RoundUp(tier, (ruledOut + 1) * tier.Scale);

    /// <summary>Greatest common divisor.</summary>
    public static long Gcd(long a, long b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}
