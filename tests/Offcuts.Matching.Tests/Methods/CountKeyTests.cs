using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a state of the counting says: it is read back as it was written, and what is too much does not fit.</summary>
public sealed class CountKeyTests
{
    // Patterns are added to a state by chance as long as they fit; beside it the same is counted plainly.
    [Fact]
    public void A_state_says_what_is_filled_and_takes_what_is_within_the_rows_and_nothing_else()
    {
        var (taken, tooMany, tooDear, ripped) = (0, 0, 0, 0);
        foreach (var (drawn, seed) in DrawnTier.Some(7_000, 200).Select((drawn, i) => (drawn, i)))
        {
            var (tier, random) = (drawn.Tier, new Random(seed));
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns).Where(pattern => !(pattern.Rips > tier.RipCap) && !(pattern.Price > tier.SpendCap))];
            if (pool.Length == 0) continue;
            var key = new CountKey(tier, pool, carried: seed % 2 == 0);
            key.Holds.Should().BeTrue("so few cuts take few bits");
            key.Demands.Should().Equal(Enumerable.Range(0, tier.Active.Length).Where(d => tier.Active[d] && tier.DemandCount[d] > 0));
            (key.Carried != 0).Should().Be(seed % 2 == 0);
            var (state, filled, spent, rips) = (seed % 4 == 0 ? key.Carried : 0, new int[tier.DemandCount.Length], 0L, 0);
            for (var turn = 0; turn < 12; turn++)
            {
                var pattern = pool[random.Next(pool.Length)];
                var adds = key.Adds(pattern);
                var (many, dear, rip) = (
                    pattern.Takes.Any(take => filled[take.Demand] + take.Count > tier.DemandCount[take.Demand]), spent + pattern.Price > tier.SpendCap, rips + pattern.Rips > tier.RipCap);
                if (many) tooMany++;
                if (dear && !many) tooDear++;
                if (rip && !many && !dear) ripped++;
                key.Fits(state, adds, pattern.Takes).Should().Be(!many && !dear && !rip, $"of {drawn.Name}");
                if (many) continue;
                if (!rip) key.Affords(state + adds).Should().Be(!dear, $"of {drawn.Name}");
                if (dear || rip) continue;
                (state, spent, rips) = (state + adds, spent + pattern.Price, rips + pattern.Rips);
                foreach (var take in pattern.Takes) filled[take.Demand] += take.Count;
                foreach (var d in key.Demands) key.Filled(state, d).Should().Be(filled[d], $"of {drawn.Name}");
                (state & key.Carried).Should().Be(seed % 4 == 0 ? key.Carried : 0, "nothing that is added touches it");
                taken++;
            }
        }

        taken.Should().BeGreaterThan(300);
        tooMany.Should().BeGreaterThan(100);
        tooDear.Should().BeGreaterThan(10);
        ripped.Should().BePositive();
    }

    [Fact]
    public void The_spend_alone_of_what_is_added_holds_no_cut_and_no_rip()
    {
        var dear = 0;
        foreach (var drawn in DrawnTier.Some(7_300, 100))
        {
            var tier = drawn.Tier;
            Pattern[] pool = [.. drawn.Patterns.SelectMany(patterns => patterns).Where(pattern => !(pattern.Rips > tier.RipCap))];
            if (pool.Length == 0) continue;
            var key = new CountKey(tier, pool, carried: true);
            foreach (var pattern in pool)
            {
                var alone = key.SpendOf(key.Adds(pattern));
                key.Demands.Sum(d => key.Filled(alone, d)).Should().Be(0, $"of {drawn.Name}");
                (alone & key.Carried).Should().Be(0);
                (key.Adds(pattern) - alone).Should().Be(pattern.Takes.Aggregate(0UL, (sum, take) => sum + key.Adds(take)) + RipsOf(key, pattern, tier), $"of {drawn.Name}");
                key.Affords(alone).Should().Be(!(tier.SpendCap > 0 && pattern.Price > tier.SpendCap), $"of {drawn.Name}");
                if (tier.SpendCap > 0 && pattern.Price > tier.SpendCap) dear++;
            }
        }

        dear.Should().BePositive();
    }

    // Rips lie above the cuts and below the bit of what is carried.
    private static ulong RipsOf(CountKey key, Pattern pattern, Tier tier)
    {
        if (!(tier.RipCap > 0)) return 0;
        var bits = key.Demands.Sum(d => 64 - (int)long.LeadingZeroCount(tier.DemandCount[d]));
        return (ulong)pattern.Rips << bits;
    }

    [Theory]
    [InlineData(62, true)]
    [InlineData(63, true)]
    [InlineData(64, false)]
    public void One_bit_stays_free(int cuts, bool holds)
    {
        var request = Request([Board("8'")], Enumerable.Range(0, cuts).Select(i => Cut($"{10 + i}\"", name: $"{i}")));
        var problem = Problem.Create(request).Value;
        var tier = Tier.Spend(MaterialPlan.Empty(MaterialProblem.Of(problem, Stud, out _)));

        new CountKey(tier, [], carried: false).Holds.Should().Be(holds);
        new CountKey(tier, [], carried: true).Holds.Should().Be(cuts < 63);
    }

    // The one board of the yard gives the cut; money may be spent, but no pattern here costs any.
    [Fact]
    public void Where_no_pattern_costs_anything_the_money_needs_no_place()
    {
        var problem = Problem.Create(Request([Board("60\"")], [Cut("50\"", 2)], Price("8'", 500))).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan;
        var tier = Tier.GivenUp(start);
        tier.SpendCap.Should().BePositive();
        Pattern free = new(tier.Problem, Enumerable.Range(0, 2).Single(s => tier.Problem.Supplies[s].Bought is null), [new Take(0, 1)]);

        var key = new CountKey(tier, [free], carried: false);

        key.Fits(0, key.Adds(free), free.Takes).Should().BeTrue();
        key.SpendOf(key.Adds(free)).Should().Be(0);
        key.Affords(key.Adds(free)).Should().BeTrue();
    }
}
