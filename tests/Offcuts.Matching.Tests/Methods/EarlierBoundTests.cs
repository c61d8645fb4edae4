using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What the tier of spend says of the plans of the last tier, on tiny drawn problems and on one that can be followed by hand.</summary>
public sealed class EarlierBoundTests
{
    [Fact]
    public void No_plan_of_a_later_tier_is_lost_by_what_the_tier_of_spend_says()
    {
        var (plans, told) = (0, 0);
        foreach (var (drawn, random) in Drawn(2000, 400))
        {
            var narrowed = Narrowed(drawn, random);
            told += Told(drawn.Tier, narrowed);
            for (var i = 0; i < 20; i++)
            {
                if (drawn.Filled(random) is not { } filled) continue;
                var plan = new MaterialPlan(drawn.Tier.Problem, filled.Select(use => (use.Pattern, (int)use.Times)));
                if (!drawn.Tier.Accepts(plan)) continue;
                plans++;

                narrowed.Impossible.Should().BeFalse($"here is a plan, of {drawn.Name}");
                narrowed.Accepts(plan).Should().BeTrue($"of {drawn.Name}");
                plan.Uses.Should().OnlyContain(use => narrowed.MayHold(use.Pattern), $"of {drawn.Name}");
                Uses(plan).Zip(narrowed.SupplyLeast).Should().OnlyContain(pair => pair.First >= pair.Second, $"no span must be used that this plan leaves, of {drawn.Name}");
                Uses(plan).Zip(narrowed.SupplyCount).Should().OnlyContain(pair => pair.First <= pair.Second, $"of {drawn.Name}");
                plan.Uses.Should().OnlyContain(use => new Pattern(narrowed.Problem, use.Pattern.Supply, use.Pattern.Takes, use.Pattern.Whole).GivenUp == use.Pattern.GivenUp,
                    $"what it leaves is worth as much as before, of {drawn.Name}");
            }
        }

        plans.Should().BeGreaterThan(500, "else few plans were looked at");
        told.Should().BeGreaterThan(50, "else nothing was said");
    }

    [Fact]
    public void The_enumeration_lists_what_both_tiers_let_a_plan_have_and_no_other()
    {
        var (listed, left) = (0, 0);
        foreach (var (drawn, random) in Drawn(2400, 500))
        {
            var narrowed = Narrowed(drawn, random);
            var relaxation = ColumnGeneration.Solve(narrowed, drawn.Start, [], new Effort(MatchLimits.None));
            var limits = ReducedCostLimits.Of(narrowed, relaxation, drawn.Optimum + random.Next(0, 400));
            var found = PatternEnumeration.All(narrowed, limits, 100_000, 10_000_000)!.ToHashSet();
            var own = drawn.Patterns.SelectMany((patterns, s) => narrowed.SupplyCount[s] == 0 ? [] : patterns)
                .Select(pattern => new Pattern(narrowed.Problem, pattern.Supply, pattern.Takes, pattern.Whole))
                .Where(pattern => PricingKnapsack.ReducedCost(narrowed, pattern, relaxation.Duals) <= limits.Of(pattern.Supply).Most[0]).ToArray();
            listed += found.Count;
            left += own.Count(pattern => !narrowed.MayHold(pattern));

            found.Except(own).Should().BeEmpty($"of {drawn.Name}");
            found.Should().OnlyContain(pattern => narrowed.MayHold(pattern), $"of {drawn.Name}");
            if (narrowed.Goal == Goal.GivenUp) own.Where(narrowed.MayHold).Except(found).Should().BeEmpty($"none is missing, of {drawn.Name}");
        }

        listed.Should().BeGreaterThan(500);
        left.Should().BeGreaterThan(20, "else the tier of spend ruled nothing out");
    }

    // With their kerfs seven cuts of 31 in. are 217-7/8 in. long, the board of the yard and two new ones of 8 ft 223-7/8: 6 in. are over in all. A new board
    // with two cuts alone would waste more than that, and so would the yard's own board left alone.
    [Fact]
    public void Where_little_is_over_in_all_no_board_can_leave_much_and_none_can_be_left_alone()
    {
        var problem = Problem.Create(Request([Board("31 1/2\"", 1)], [Cut("31\"", 7)], Price("8'", 400))).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);
        var (yard, bought) = start.Problem.Supplies[0].Bought is null ? (0, 1) : (1, 0);
        Pattern New(int cuts) => new(start.Problem, bought, [new Take(0, cuts)]);

        var tier = Tier.GivenUp(start, 0, EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None))));

        start.Spend.Should().Be(800);
        tier.MayHold(New(3)).Should().BeTrue();
        tier.MayHold(New(2)).Should().BeFalse();
        tier.SupplyLeast[yard].Should().Be(1);
        start.Problem.Supplies[bought].Value.At(start.Problem.Demands[0].Length).Should().BePositive();
        tier.Problem.Supplies[bought].Value.At(start.Problem.Demands[0].Length).Should().Be(0, "what is left of a board is shorter than the keep length");
        tier.Impossible.Should().BeFalse();
    }

    [Fact]
    public void Where_more_boards_must_be_cut_than_the_money_pays_no_plan_is_left()
    {
        var problem = Problem.Create(Request([Board("31 1/2\"", 1)], [Cut("31\"", 7)], Price("8'", 400))).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);
        var tier = Tier.GivenUp(start, 0, EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None))));

        tier.Within([.. start.Problem.Supplies.Select(supply => supply.Bought is null ? 0 : 3)], tier.SupplyCount).Impossible.Should().BeTrue();
        tier.Within([.. start.Problem.Supplies.Select(supply => supply.Bought is null ? 0 : 2)], tier.SupplyCount).Impossible.Should().BeFalse();
    }

    private static IEnumerable<(DrawnTier Drawn, Random Random)> Drawn(int first, int problems) =>
        DrawnTier.Some(first, problems).Where(drawn => drawn.Tier.Goal is Goal.Rips or Goal.GivenUp && drawn.Start.Spend > 0).Select((drawn, i) => (drawn, new Random(first + i)));

    // At the duals of the relaxation or at any, of which the bound is true as well.
    private static Tier Narrowed(DrawnTier drawn, Random random)
    {
        var spend = Tier.Spend(drawn.Start);
        var relaxation = ColumnGeneration.Solve(spend, drawn.Start, [], new Effort(MatchLimits.None));
        if (random.Next(2) == 0) relaxation = relaxation with { Duals = relaxation.Duals.With(spend, [.. relaxation.Duals.Demand.Select(dual => dual / (double)spend.Scale * (0.8 + 0.4 * random.NextDouble()))]) };
        var earlier = EarlierBound.OfSpend(spend, drawn.Start, relaxation);
        return drawn.Tier.Goal == Goal.Rips ? Tier.Rips(drawn.Start, 0, earlier) : Tier.GivenUp(drawn.Start, 0, earlier);
    }

    private static int[] Uses(MaterialPlan plan)
    {
        var uses = new int[plan.Problem.Supplies.Count];
        foreach (var (pattern, times) in plan.Uses) uses[pattern.Supply] += times;
        return uses;
    }

    private static int Told(Tier tier, Tier narrowed) => Enumerable.Range(0, tier.SupplyCount.Length).Count(s =>
        narrowed.SupplyLeast[s] > tier.SupplyLeast[s] || narrowed.SupplyCount[s] < tier.SupplyCount[s]
        || narrowed.Problem.Supplies[s].Value.At(tier.Problem.Supplies[s].Length) < tier.Problem.Supplies[s].Value.At(tier.Problem.Supplies[s].Length));
}
