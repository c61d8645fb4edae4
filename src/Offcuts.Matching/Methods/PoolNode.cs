namespace Offcuts.Matching.Methods;

/// <summary>One node of <see cref="PoolSearch"/>: what has been decided, and the patterns that are still possible. Immutable.</summary>
/// <param name="Patterns">Numbers of the patterns in the pool.</param>
/// <param name="Least">Least uses of each supply.</param>
/// <param name="Most">Most uses of each supply.</param>
/// <param name="Splits">Least and most uses of families of patterns.</param>
/// <param name="Bound">Bound inherited from the parent, in multiples of 1/Scale.</param>
/// <param name="Depth">How many decisions led here.</param>
/// <param name="Made">The last of them, where something is learned from it.</param>
/// <param name="Basis">Where the relaxation of its parent was solved; none at the root.</param>
internal sealed record PoolNode(
    int[] Patterns, int[] Least, int[] Most, IReadOnlyList<(Split Split, int Least, int Most)> Splits, long Bound, int Depth, Decision? Made = null, NodeBasis? Basis = null)
{
    /// <summary>The node in which nothing has been decided.</summary>
    public static PoolNode Root(Tier tier, int patterns, long bound) =>
        new([.. Enumerable.Range(0, patterns)], [.. tier.SupplyLeast], [.. tier.SupplyCount], [], bound, 0);

    /// <summary>With the uses of a supply kept within new ends.</summary>
    public PoolNode With(int supply, int least, int most)
    {
        var (lower, upper) = ((int[])Least.Clone(), (int[])Most.Clone());
        lower[supply] = Math.Max(lower[supply], least);
        upper[supply] = Math.Min(upper[supply], most);
        return this with { Least = lower, Most = upper, Depth = Depth + 1 };
    }

    /// <summary>With the uses of a family kept within new ends.</summary>
    public PoolNode With(Tier tier, IReadOnlyList<Pattern> pool, Split split, int least, int most)
    {
        var patterns = Patterns;
        if (most == 0) return this with { Patterns = [.. patterns.Where(p => !split.Holds(pool[p]))], Depth = Depth + 1 };

        // Two demands of one copy each that go together: whatever holds one without the other is out.
        if (least == 1 && split is { First: >= 0, Second: >= 0, Supply: < 0, Only: null }
            && tier.DemandCount[split.First] == 1 && tier.DemandCount[split.Second] == 1 && tier.MostLeft[split.First] == 0 && tier.MostLeft[split.Second] == 0 && !tier.Covering)
            return this with { Patterns = [.. patterns.Where(p => split.Holds(pool[p]) || !Touches(pool[p], split))], Depth = Depth + 1 };
        return this with { Splits = [.. Splits.Where(one => one.Split != split), Joined(split, least, most)], Depth = Depth + 1 };
    }

    private (Split, int, int) Joined(Split split, int least, int most)
    {
        foreach (var (other, lower, upper) in Splits)
        {
            if (other == split) return (split, Math.Max(least, lower), Math.Min(most, upper));
        }

        return (split, least, most);
    }

    private static bool Touches(Pattern pattern, Split split) => pattern.Takes.Any(take => take.Demand == split.First || take.Demand == split.Second);
}
