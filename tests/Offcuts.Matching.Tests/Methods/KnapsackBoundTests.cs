using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>Which sets of cuts can still become the best of a span, on cuts so few that every set is tried.</summary>
public sealed class KnapsackBoundTests
{
    // Cuts of which at most two are alike, those that earn most for their weight first, and a few spans.
    private static IEnumerable<((long Weight, long Dual, int Count)[] Cuts, long[] Capacities)> Drawn(int draws)
    {
        for (var seed = 0; seed < draws; seed++)
        {
            var random = new Random(seed);
            var cuts = Enumerable.Range(0, random.Next(1, 5)).Select(_ => (Weight: random.NextInt64(3, 12), Dual: random.NextInt64(1, 60), Count: random.Next(1, 3)));
            yield return ([.. cuts.OrderByDescending(cut => cut.Dual / (double)cut.Weight)], [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => random.NextInt64(3, 40))]);
        }
    }

    private static IEnumerable<(long Weight, long Dual)> Sets(IEnumerable<(long Weight, long Dual, int Count)> cuts) => cuts.Aggregate(
        (IEnumerable<(long Weight, long Dual)>)[(0, 0)],
        (sets, cut) => sets.SelectMany(set => Enumerable.Range(0, cut.Count + 1).Select(times => (set.Weight + times * cut.Weight, set.Dual + times * cut.Dual))));

    // What taking the cuts in their order, each as often as it fits, earns in a span.
    private static long Greedily((long Weight, long Dual, int Count)[] cuts, long capacity)
    {
        long earned = 0;
        foreach (var (weight, dual, count) in cuts)
        {
            for (var copy = 0; copy < count && weight <= capacity; copy++) (capacity, earned) = (capacity - weight, earned + dual);
        }

        return earned;
    }

    [Fact]
    public void No_set_is_left_out_that_becomes_the_best_of_a_span()
    {
        var (kept, left) = (0, 0);
        foreach (var (cuts, capacities) in Drawn(300))
        {
            var bound = new KnapsackBound(capacities.Select(capacity => (capacity, 0L)), cuts);
            for (var next = 0; next < cuts.Length; next++)
            {
                var earning = cuts[next].Dual / (double)cuts[next].Weight;
                var least = bound.Least(earning);
                double LeastOf(long weight) => least.Where(at => at.Capacity >= weight).Select(at => at.Least).FirstOrDefault(double.PositiveInfinity);
                var rests = Sets(cuts[next..]).ToArray();
                foreach (var set in Sets(cuts[..next]))
                {
                    var better = capacities.Any(capacity => rests.Any(rest => set.Weight + rest.Weight <= capacity && set.Dual + rest.Dual > Greedily(cuts, capacity)));
                    if (better) (set.Dual - earning * set.Weight).Should().BeGreaterThanOrEqualTo(LeastOf(set.Weight));
                    if (better) kept++;
                    else if (set.Dual - earning * set.Weight < LeastOf(set.Weight)) left++;
                }
            }
        }

        kept.Should().BeGreaterThan(20);
        left.Should().BeGreaterThan(100, "else it is of no use");
    }

    // Known to be reached in a span: the most of what is taken greedily and of the sets seen so far that fit.
    [Fact]
    public void What_is_of_no_use_is_measured_against_the_most_that_is_known_to_be_reached()
    {
        foreach (var (cuts, capacities) in Drawn(300))
        {
            var bound = new KnapsackBound(capacities.Select(capacity => (capacity, 0L)), cuts);
            var sets = new List<(long Weight, long Dual)>();
            foreach (var set in Sets(cuts).OrderBy(set => set.Weight).ThenByDescending(set => set.Dual))
            {
                if (sets.Count == 0 || set.Dual > sets[^1].Dual) sets.Add(set);
            }

            long Reached(long capacity, bool learnt) => Math.Max(Greedily(cuts, capacity), learnt ? sets.Where(set => set.Weight <= capacity).Max(set => set.Dual) : 0);
            foreach (var learnt in (bool[])[false, true])
            {
                if (learnt)
                {
                    var at = 0;
                    for (var i = 1; i < sets.Count; i++) at = bound.Passed(at, sets[i].Weight, sets[i - 1].Dual);
                    bound.Passed(at, long.MaxValue, sets[^1].Dual);
                }

                foreach (var earning in (double[])[0, 0.5, 7])
                {
                    foreach (var (capacity, known) in bound.Least(earning))
                    {
                        var least = capacities.Where(span => span >= capacity).Min(span => Reached(span, learnt) - earning * span);
                        known.Should().BeInRange(least - 1.001, least - 0.999, "a margin of one is left for rounding");
                    }
                }
            }
        }
    }

    [Fact]
    public void What_a_span_is_known_to_reach_counts_for_the_sets_that_it_holds()
    {
        // One cut of 6 earns 6; in the span of 10 somebody reached 9 by other cuts, which a set that has earned nothing can't become any more.
        var bound = new KnapsackBound([(4, 0), (10, 9), (10, 0)], [(6, 6, 1)]);

        bound.Least(1).Select(at => at.Capacity).Should().Equal(4, 10);
        bound.Least(1)[1].Least.Should().BeApproximately(9 - 10 - 1, 0.001);
        bound.Least(1)[0].Least.Should().BeApproximately(Math.Min(0 - 4, 9 - 10) - 1, 0.001, "a set of at most 4 may become the best of either");
    }

    // Of numbers of some 10^16 floating point loses several units, and this set becomes better by one.
    [Fact]
    public void However_large_duals_are_a_set_that_becomes_the_best_by_next_to_nothing_is_not_left_out()
    {
        var random = new Random(1);
        for (var draw = 0; draw < 1_000; draw++)
        {
            var (weight, dual, times) = (random.NextInt64(1_000, 100_000), random.NextInt64(1L << 52, 1L << 54), random.Next(1, 5));
            var (before, earned) = (random.NextInt64(1_000, 100_000), random.NextInt64(1L << 52, 1L << 54));
            var bound = new KnapsackBound([(before + times * weight, earned + times * dual - 1)], [(weight, dual, times)]);
            var earning = dual / (double)weight;

            (earned - earning * before).Should().BeGreaterThanOrEqualTo(bound.Least(earning)[0].Least);
        }
    }
}
