namespace Offcuts.Matching.Methods;

/// <summary>The spans of a <see cref="CountProgram"/> in the order in which they are counted.</summary>
/// <param name="tier">Rows and costs.</param>
/// <param name="pool">The patterns.</param>
/// <param name="relaxation">Duals and bound.</param>
/// <param name="cells">The state-space relaxation, where that leads.</param>
/// <param name="key">How a state is written.</param>
internal sealed class CountSteps(Tier tier, IReadOnlyList<Pattern> pool, Relaxation relaxation, StateSpaceRelaxation? cells, CountKey key)
{
    /// <summary>By how many patterns they have.</summary>
    public CountStep[] InOrder(SpanOrder order) => order == SpanOrder.FewPatternsFirst
        ? [.. Steps().OrderBy(step => step.Choices.Length)]
        : [.. Steps().OrderByDescending(step => step.Choices.Length)];

    /// <summary>Each span at its place, the spans of a piece one after the other, pieces with few patterns first.</summary>
    public CountStep[] ByPiece()
    {
        var placed = Steps().GroupBy(step => step.Supply).SelectMany(group =>
        {
            var places = tier.Problem.Supplies[group.Key].Places;
            return places.Count == 0 ? group : places.Select(place => group.First() with { Place = place });
        }).ToArray();
        var numbers = placed.Where(step => step.Place is not null).Select(step => step.Place!.Value.Piece).Distinct().Order()
            .Select((piece, number) => (piece, number)).ToDictionary(at => at.piece, at => at.number);
        return [.. placed
            .GroupBy(step => step.Place is { } place ? numbers[place.Piece] : -1 - step.Supply)
            .OrderBy(group => group.Sum(step => step.Choices.Length)).ThenBy(group => group.Key)
            .SelectMany(group => group.Key < 0 ? group : group.Select((step, i) => step with { Piece = group.Key, EndsPiece = i == group.Count() - 1 }))];
    }

    private List<CountStep> Steps()
    {
        var bySupply = pool.Select((pattern, p) => (pattern, p)).ToLookup(at => at.pattern.Supply);
        var steps = new List<CountStep>();
        for (var s = 0; s < tier.SupplyCount.Length; s++)
        {
            var of = bySupply[s].Where(at => tier.RipCap is null || at.pattern.Rips <= tier.RipCap).ToArray();
            var least = tier.SupplyLeast[s];
            if (least > 0) steps.AddRange(Enumerable.Repeat(Step(s, of, relaxation.Priced[s].Least, must: true), least));
            var counted = Math.Min(0, relaxation.Priced[s].Least);
            if (of.Length > 0 || counted < 0) steps.AddRange(Enumerable.Repeat(Step(s, of, counted, must: false), Math.Min(tier.Copies, tier.SupplyCount[s]) - least));
        }

        return steps;
    }

    private CountStep Step(int supply, (Pattern, int)[] of, long counted, bool must) => new(supply, [.. of.Select(at => Chosen(at.Item1, at.Item2, counted))], -counted, must);

    private CountChoice Chosen(Pattern pattern, int number, long counted)
    {
        ulong single = 0;
        foreach (var take in pattern.Takes)
        {
            if (tier.DemandCount[take.Demand] == 1) single |= key.Adds(take);
        }

        Take[] several = [.. pattern.Takes.Where(take => tier.DemandCount[take.Demand] > 1)];
        var excess = PricingKnapsack.ReducedCost(tier, pattern, relaxation.Duals) - counted;
        return new CountChoice(number, key.Adds(pattern), excess, single, several, pattern.Weight,
            cells is null ? 0 : pattern.Takes.Sum(take => take.Count * cells.Cells[take.Demand]));
    }
}
