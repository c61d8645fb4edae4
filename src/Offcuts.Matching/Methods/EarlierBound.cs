namespace Offcuts.Matching.Methods;

/// <summary>
/// What the linear bound of an earlier tier says of the plans of a later one. They reach no more in the earlier tier than was fixed there, so each of
/// them is within a known gap of its bound:
/// <code>
/// L + sum over the spans used    (reducedcost_p - least_s)   where least_s &lt; 0 counts every span, else those that must be used
///   + sum over the spans not used  -min(0, least_s)          &lt;=   what was fixed
/// </code>
/// All terms are nothing or more, those left out (of what is left unfilled, and of uses beyond those that must be) too. So a pattern that is dearer
/// than the gap is in no such plan, a span that costs more than the gap to leave alone is used, and where the duals follow the lengths, little can be
/// left of a span. The relaxation of the later tier has the same rows and sees none of this, since it may use the hundredth part of a pattern that no
/// plan can have once.
/// Source: reduced-cost fixing, as in any textbook of integer programming; the later tier's use of it follows from the sum above.
/// Cost: one knapsack for each set of numbers of supplies.
/// </summary>
internal sealed class EarlierBound
{
    private readonly Tier _tier;
    private readonly Relaxation _at;
    private readonly long _most;
    private readonly Int128 _gap;

    private EarlierBound(Tier tier, Duals duals, long most)
    {
        (_tier, _most) = (tier, most);
        _at = new Relaxation([], [], duals, [], 0).For(tier);
        _gap = (Int128)most * tier.Scale - _at.Bound;
        Limits = ReducedCostLimits.Of(tier, _at, most);
    }

    /// <summary>How dear patterns may be.</summary>
    public ReducedCostLimits Limits { get; }

    /// <summary>Of a tier of spend: at the duals of its relaxation, and at the lengths themselves.</summary>
    /// <param name="tier">The tier.</param>
    /// <param name="plan">The plan whose spend is fixed.</param>
    /// <param name="relaxation">The relaxation of the tier.</param>
    public static IReadOnlyList<EarlierBound> OfSpend(Tier tier, MaterialPlan plan, Relaxation relaxation)
    {
        var duals = new List<Duals> { relaxation.Duals };
        if (Bounds.Lengths(tier).Supply is { } supply) duals.Add(Duals.ByLength(tier, supply));
        return [.. duals.DistinctBy(at => string.Join(' ', at.Demand)).Select(at => new EarlierBound(tier, at, plan.Spend))];
    }

    /// <summary>True where the pattern is not dearer than that.</summary>
    public bool Holds(Pattern pattern) =>
        PricingKnapsack.ReducedCost(_tier, pattern, _at.Duals) <= _gap + _tier.Counted(pattern.Supply, _at.Priced[pattern.Supply].Least);

    /// <summary>The same for plans that cut so many of each supply, at least and at most.</summary>
    /// <param name="least">Fewest uses; copied.</param>
    /// <param name="most">Most uses; copied.</param>
    public EarlierBound Within(int[] least, int[] most) => new(_tier.Within([.. least], [.. most]), _at.Duals, _most);

    /// <summary>Raises the least and lowers the most uses of each supply to what these plans can have; false where there is no such plan.</summary>
    public bool Narrow(int[] least, int[] most)
    {
        if (_gap < 0) return false;
        for (var s = 0; s < least.Length; s++)
        {
            var (own, each) = (_tier.SupplyCount[s], _at.Priced[s].Least);
            if (own == 0 || each is 0 or long.MaxValue) continue;
            if (each < 0) least[s] = Math.Max(least[s], own - (int)Int128.Min(own, _gap / -(Int128)each));
            else most[s] = Math.Min(most[s], _tier.SupplyLeast[s] + (int)Int128.Min(own, _gap / each));
            if (least[s] > most[s]) return false;
        }

        return true;
    }

    /// <summary>No pattern of the supply that is cut weighs less, in units: the demand whose dual is highest for its weight fills it with the least weight.</summary>
    public long Lightest(int supply)
    {
        var missing = (Int128)PricingKnapsack.BaseCost(_tier, supply, _at.Duals) - ((Int128)_gap + _tier.Counted(supply, _at.Priced[supply].Least));
        if (missing <= 0) return 0;
        Int128 dual = 0, weight = 1;
        for (var d = 0; d < _tier.Active.Length; d++)
        {
            if (_tier.Active[d] && _at.Duals.Demand[d] * weight > dual * _tier.Problem.Weights[d]) (dual, weight) = (_at.Duals.Demand[d], _tier.Problem.Weights[d]);
        }

        return dual == 0 ? 0 : (long)Int128.Min(_tier.Problem.Capacity(supply), (missing * weight + dual - 1) / dual);
    }
}
