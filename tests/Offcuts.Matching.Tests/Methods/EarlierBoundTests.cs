using Offcuts.Core.Yard;
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

                // Of the two parts that branching makes, and of those within one of them, the one that it belongs to has it too.
                var part = narrowed;
                for (var depth = 0; depth < 3; depth++)
                {
                    var supply = random.Next(part.SupplyCount.Length);
                    if (part.SupplyLeast[supply] >= part.SupplyCount[supply]) continue;
                    var k = random.Next(part.SupplyLeast[supply], part.SupplyCount[supply]);
                    part = part.SplitAt(supply, k).ElementAt(Uses(plan)[supply] <= k ? 0 : 1);
                    part.Impossible.Should().BeFalse($"here is a plan, of {drawn.Name}");
                    plan.Uses.Should().OnlyContain(use => part.MayHold(use.Pattern), $"of {drawn.Name}");
                    Uses(plan).Zip(part.SupplyLeast).Should().OnlyContain(pair => pair.First >= pair.Second, $"of {drawn.Name}");
                    Uses(plan).Zip(part.SupplyCount).Should().OnlyContain(pair => pair.First <= pair.Second, $"of {drawn.Name}");
                    plan.In(part.Problem).GivenUp.Should().Be(plan.GivenUp, $"of {drawn.Name}");
                }
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

    [Fact]
    public void The_best_of_a_later_tier_is_the_same_with_what_the_tier_of_spend_says()
    {
        var proven = 0;
        foreach (var (drawn, random) in Drawn(2900, 250))
        {
            var narrowed = Narrowed(drawn, random);

            var outcome = TierSolver.Solve(narrowed, drawn.Start, drawn.Tier.Problem.LeastGivenUp, new Effort(MatchLimits.None));

            outcome.Bound.Should().BeLessThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            drawn.Tier.Value(outcome.Plan.In(drawn.Tier.Problem)).Should().BeGreaterThanOrEqualTo(drawn.Optimum, $"of {drawn.Name}");
            if (narrowed.Value(outcome.Plan) > outcome.Bound) continue;
            outcome.Bound.Should().Be(drawn.Optimum, $"of {drawn.Name}");
            proven++;
        }

        proven.Should().BeGreaterThan(60);
    }

    // Every plan gives up nothing and takes four saw cuts: a new board for the long cut, and the short ones from the yard's stubs, of which two will do.
    // The spend leaves so little over that two of the stubs must be used, but not which, and not all three.
    [Fact]
    public void Of_spans_that_are_alike_no_more_are_carried_than_must_be()
    {
        var plan = Match(Request([Board("11 1/2\"", 1), Board("11 1/2\"", 2), Board("11 1/2\"", 3)], [Cut("92\""), Cut("5\"", 3, name: "short")], Price("8'", 400)));

        plan.Tiers.Proven.Should().BeTrue();
        plan.Pieces.Count(piece => piece.Source is not null).Should().Be(2);
        plan.Pieces.Sum(piece => piece.SawCuts).Should().Be(4);
    }

    [Fact]
    public void Where_there_are_more_spans_than_cuts_none_but_the_cuts_say_how_many_can_be_used()
    {
        Piece[] yard = [.. Enumerable.Range(1, 50).Select(number => Board("3'", number))];
        var problem = Problem.Create(Request(yard, [Cut("15 7/8'"), Cut("36\"", 9, name: "short")], Price("16'", 2000), Price("6'", 1000)) with { Settings = NoKerf }).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);
        var tier = Tier.GivenUp(start, 0, EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None))));

        tier.SupplyCount.Should().OnlyContain(count => count <= 10);
        for (var s = 0; s < tier.SupplyCount.Length; s++)
        {
            foreach (var part in tier.SplitAt(s, Math.Max(tier.SupplyLeast[s], tier.SupplyCount[s] - 1)).Where(part => !part.Impossible))
                part.SupplyLeast.Zip(part.SupplyCount).Should().OnlyContain(pair => pair.First <= pair.Second);
        }
    }

    [Fact]
    public void A_curve_of_values_is_level_from_the_longest_remainder_on()
    {
        var curve = new ValueCurve(Condition.Sound, [Price("8'", 400), Price("10'", 300)], L("12\""));
        var level = curve.UpTo(L("50\"").Units);

        level.At(L("49\"").Units).Should().Be(curve.At(L("49\"").Units));
        level.At(L("50\"").Units).Should().Be(curve.At(L("50\"").Units));
        level.At(L("90\"").Units).Should().Be(curve.At(L("50\"").Units));
        level.Most(L("20\"").Units, L("110\"").Units).Should().Be(curve.At(L("50\"").Units));
        level.UpTo(L("60\"").Units).At(L("90\"").Units).Should().Be(curve.At(L("50\"").Units));
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
    public void Where_so_many_boards_must_be_cut_that_too_much_would_be_wasted_no_plan_is_left()
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
        return drawn.Tier.Goal == Goal.Rips ? Tier.Rips(drawn.Start, drawn.Tier.SpendLeast, earlier) : Tier.GivenUp(drawn.Start, drawn.Tier.SpendLeast, earlier);
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

    // Seven cuts of 31 in with their kerfs are 217-7/8 in; the yard's board gives one of them, 31-1/8 in, and a new one holds 96-1/8 in: 90-5/8 in are left for the
    // other. And what two new ones, 192-1/4 in, do not hold is left for the yard's.
    [Fact]
    public void No_board_is_cut_with_less_on_it_than_the_others_can_not_hold()
    {
        var problem = Problem.Create(Request([Board("31 1/2\"", 1)], [Cut("31\"", 7)], Price("8'", 400))).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);
        var (yard, bought) = start.Problem.Supplies[0].Bought is null ? (0, 1) : (1, 0);
        var earlier = EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None)));
        var (ofNew, ofYard) = (L("90 5/8\"").Units, L("25 5/8\"").Units);

        earlier.Max(bound => bound.Lightest(bought)).Should().BeInRange(ofNew, ofNew + 1, "rounded up to a whole unit");
        earlier.Max(bound => bound.Lightest(yard)).Should().BeInRange(ofYard, ofYard + 1);
    }

    // 160 in from two boards of 100 in: the 40 in that are over lie on the board of the 60 in cut.
    [Fact]
    public void A_pattern_that_wastes_all_that_may_be_wasted_is_still_one()
    {
        var problem = Problem.Create(Request([], [Cut("100\""), Cut("60\"", name: "other")], Price("100\"", 100)) with { Settings = NoKerf }).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);

        var tier = Tier.GivenUp(start, 0, EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None))));

        start.Uses.Should().HaveCount(2).And.OnlyContain(use => tier.MayHold(use.Pattern));
        tier.Impossible.Should().BeFalse();
    }

    // Of two new boards of 8 ft at 4.00 a quarter of a dollar's worth is over in all; one of 10 ft at 7.00, which holds three cuts too, would waste more than that.
    [Fact]
    public void A_length_that_costs_more_than_may_be_wasted_is_not_bought()
    {
        var problem = Problem.Create(Request([Board("31 1/2\"", 1)], [Cut("31\"", 7)], Price("8'", 400), Price("10'", 700))).Value;
        var start = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var spend = Tier.Spend(start);
        var dear = Enumerable.Range(0, 3).Single(s => start.Problem.Supplies[s].Price == 700);

        var tier = Tier.GivenUp(start, 0, EarlierBound.OfSpend(spend, start, ColumnGeneration.Solve(spend, start, [], new Effort(MatchLimits.None))));

        start.Spend.Should().Be(800);
        Tier.GivenUp(start).SupplyCount[dear].Should().Be(1, "there is money for one");
        tier.SupplyCount[dear].Should().Be(0);
    }
}
