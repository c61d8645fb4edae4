using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The rows of a tier: what it asks for, what it allows, and what remains of it once a part is settled.</summary>
public sealed class TierRowTests
{
    private static Tier First(MatchRequest request, Func<MaterialPlan, Tier> tier)
    {
        var problem = Problem.Create(request).Value;
        return tier(MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), problem.Stages.Count).Plan);
    }

    [Fact]
    public void No_more_of_a_store_length_is_allowed_than_the_money_pays_and_what_the_store_always_has_is_never_left()
    {
        // Five cuts of 90 in at 5.00 each; two of 115 in have one board at 9.00 and no more.
        var tier = First(Request([], [Cut("90\"", 5), Cut("115\"", 2, name: "long")], Price("8'", 500), Price("10'", 900, limit: 1)), plan => Tier.GivenUp(plan));

        tier.SpendCap.Should().Be(5 * 500 + 900);
        tier.SupplyCount.Should().Equal(6, 1);
        tier.DemandCount.Should().Equal(2, 5);
        tier.MostLeft.Should().Equal(1, 0);
        tier.LeftCap.Should().Equal(new Dictionary<int, int> { [0] = 1 });
    }

    [Fact]
    public void Of_what_may_be_left_no_row_may_leave_more_than_it_has()
    {
        var tier = First(Request([], [Cut("90\"", 5), Cut("80\"", 1, name: "other")]) with { Pieces = [Board("7'"), Board("8'", 2)] }, Tier.Spend);

        tier.LeftCap.Should().Equal(new Dictionary<int, int> { [0] = 4 });
        tier.MostLeft.Should().Equal(4, 1);
    }

    [Fact]
    public void Once_a_part_is_settled_the_rest_has_fewer_cuts_pieces_cents_and_rips()
    {
        foreach (var drawn in DrawnTier.Some(3000, 60))
        {
            var (tier, random) = (drawn.Tier, new Random(1));
            var pattern = drawn.Patterns.SelectMany(patterns => patterns).Where(one => tier.SupplyCount[one.Supply] > 1).OrderBy(_ => random.Next()).FirstOrDefault();
            if (pattern is null) continue;
            var rest = tier.Rest([(pattern, 2)]);

            for (var d = 0; d < tier.DemandCount.Length; d++)
            {
                var taken = pattern.Takes.Where(take => take.Demand == d).Sum(take => 2 * take.Count);
                rest.DemandCount[d].Should().Be(Math.Max(0, tier.DemandCount[d] - taken), drawn.Name);
                rest.MostLeft[d].Should().Be(Math.Min(tier.MostLeft[d], rest.DemandCount[d]), drawn.Name);
                rest.LeftCost[d].Should().Be(tier.LeftCost[d], drawn.Name);
            }

            rest.SpendCap.Should().Be(tier.SpendCap - 2 * pattern.Price, drawn.Name);
            rest.RipCap.Should().Be(tier.RipCap - 2 * pattern.Rips, drawn.Name);
            rest.LeftCap.Should().Equal(tier.LeftCap);
            for (var s = 0; s < tier.SupplyCount.Length; s++)
            {
                var (left, price) = (tier.SupplyCount[s] - (s == pattern.Supply ? 2 : 0), tier.Problem.Supplies[s].Price);
                rest.SupplyCount[s].Should().Be(rest.SpendCap is { } cap && price > 0 ? (int)Math.Min(left, Math.Max(0, cap / price)) : left, drawn.Name);
            }
        }
    }

    // Whole plans for the tier and plans of a part for what remains of it, kept or broken by chance.
    [Fact]
    public void A_plan_is_accepted_where_it_keeps_every_row()
    {
        var (kept, broken) = (0, 0);
        foreach (var (drawn, seed) in DrawnTier.Some(3200, 120).Select((drawn, i) => (drawn, i)))
        {
            var random = new Random(seed);
            var all = drawn.Patterns.SelectMany(patterns => patterns).ToArray();
            if (all.Length == 0) continue;
            for (var draw = 0; draw < 8; draw++)
            {
                var (tier, problem) = (drawn.Tier, drawn.Tier.Problem);
                var first = all[random.Next(all.Length)];
                if (draw % 2 == 1) tier = tier.Rest([(first, 1)]);
                var open = (int[])tier.DemandCount.Clone();
                var uses = new List<(Pattern Pattern, int Times)>();
                foreach (var pattern in all.OrderBy(_ => random.Next()).Where(pattern => pattern.Takes.All(take => take.Count <= open[take.Demand])).Take(random.Next(1, 9)).ToArray())
                {
                    if (pattern.Takes.Any(take => take.Count > open[take.Demand])) continue;
                    foreach (var take in pattern.Takes) open[take.Demand] -= take.Count;
                    uses.Add((pattern, 1));
                }

                var rows = Enumerable.Range(0, open.Length).Where(d => tier.Active[d]).ToArray();
                var right = rows.All(d => open[d] <= tier.MostLeft[d])
                    && tier.LeftCap.All(cap => rows.Where(d => problem.Demands[d].Stage == cap.Key).Sum(d => open[d]) <= cap.Value)
                    && !(uses.Sum(use => use.Pattern.Price) > tier.SpendCap)
                    && !(uses.Sum(use => use.Pattern.Rips) > tier.RipCap);
                tier.Accepts(new MaterialPlan(problem, uses)).Should().Be(right, drawn.Name);
                if (right) kept++;
                else broken++;
            }
        }

        kept.Should().BeGreaterThan(100);
        broken.Should().BeGreaterThan(100);
    }

    [Fact]
    public void A_plan_that_spends_or_rips_more_is_not_accepted_though_all_is_filled()
    {
        var dear = First(Request([], [Cut("90\"")], Price("8'", 500), Price("10'", 900)), plan => Tier.GivenUp(plan));
        Pattern Of(int supply) => new(dear.Problem, supply, [new Take(0, 1)]);

        dear.Accepts(new MaterialPlan(dear.Problem, [(Of(0), 1)])).Should().BeTrue();
        dear.Accepts(new MaterialPlan(dear.Problem, [(Of(1), 1)])).Should().BeFalse("9.00 is more than the 5.00 that are decided");

        var wide = MaterialReader.Read("2x8").Value;
        var problem = Problem.Create(Request([Board("50\"", 1), Board("50\"", 2) with { Material = wide }], [Cut("48\"") with { Rip = true }]) with { Buy = false }).Value;
        var joined = MaterialProblem.Of(problem, [Stud, wide], out _);
        var own = Enumerable.Range(0, 2).Single(s => joined.Supplies[s].Rip(0, whole: false).Count == 0);
        var tier = Tier.GivenUp(new MaterialPlan(joined, [(new Pattern(joined, own, [new Take(0, 1)]), 1)]));
        tier.RipCap.Should().Be(0);
        tier.Accepts(new MaterialPlan(joined, [(new Pattern(joined, own, [new Take(0, 1)]), 1)])).Should().BeTrue();
        tier.Accepts(new MaterialPlan(joined, [(new Pattern(joined, 1 - own, [new Take(0, 1)]), 1)])).Should().BeFalse("one rip is more than the none that is decided");
    }

    // 500 boards that cost 10,000,000.00 and are worth as much: 500 x (1 + 2 x 10^9 + 1) is about 10^12, and 2^58 / 10^12 is about
    // 288,230: the next power of two below is 2^18. Ten cuts of boards at 5.00 leave room for the finest scale.
    [Fact]
    public void Duals_are_as_fine_as_leaves_the_sums_within_63_bits()
    {
        First(Request([], [Cut("90\"", 500)], Price("8'", 1_000_000_000)), Tier.Spend).Scale.Should().Be(1 << 18);
        First(Request([], [Cut("90\"", 10)], Price("8'", 500)), Tier.Spend).Scale.Should().Be(1 << 22);
    }

    // Where saw cuts come first one costs more than everything is worth, and a cut that is ripped takes up to three.
    [Fact]
    public void Duals_leave_the_sums_within_63_bits_where_saw_cuts_come_first_too()
    {
        var wide = MaterialReader.Read("2x8").Value;
        for (long price = 10_000_000; price < 1_000_000_000; price += price / 3)
        {
            foreach (var rip in (bool[])[false, true])
            {
                var request = Request([Board("96\"", 1) with { Material = wide }], [Cut("20\"", 100) with { Rip = rip }], Price("8'", price)) with { Order = TierOrder.SawCutsFirst };
                var problem = MaterialProblem.Of(Problem.Create(request).Value, [Stud, wide], out _);
                var tier = Tier.GivenUp(MaterialSolver.First(problem, 1).Plan);

                problem.MayRip.Should().Be(rip);
                (100.0 * (rip ? 3 : 1) * problem.SawCost * tier.Scale).Should().BeInRange(Tier.LargestSum / 4.0, Tier.LargestSum);
            }
        }
    }

    [Fact]
    public void A_cut_may_be_filled_too_often_where_none_more_is_worth_anything()
    {
        bool Covering(bool rip, params StorePrice[] prices)
        {
            var wide = MaterialReader.Read("2x8").Value;
            var request = Request([Board("96\"", 1) with { Material = wide }], [Cut("48\"", 3) with { Rip = rip }], prices);
            var problem = MaterialProblem.Of(Problem.Create(request).Value, [Stud, wide], out _);
            return Tier.GivenUp(MaterialSolver.First(problem, 1).Plan).Covering;
        }

        Covering(rip: false, Price("8'", 500)).Should().BeTrue();
        Covering(rip: false, Price("8'", 500), Price("10'", 400)).Should().BeFalse("what is left may be worth less for being longer");
        Covering(rip: true, Price("8'", 500)).Should().BeFalse("one more that is ripped leaves a strip");
    }

    [Fact]
    public void One_long_board_is_carried_home_rather_than_two_short_ones_for_the_same_money() =>
        Match(Request([], [Cut("47\"", 2)], Price("4'", 250), Price("8'", 500))).Pieces.Single().Bought!.Length.Should().Be(L("8'"));

    // The structural cut finds one stamped piece of two, so one stays unfilled; between the two boards for the other the choice is as ever.
    [Fact]
    public void Untreated_goes_first_among_equals_though_something_stays_unfilled()
    {
        Piece[] yard = [Board("50\"", 1) with { Treated = true }, Board("50\"", 2), Board("31\"", 3) with { Stamped = true }];
        var plan = Match(Request(yard, [Cut("48\""), Cut("30\"", 2, stage: "roof", name: "post") with { Use = Use.Structural }]) with { Buy = false });

        plan.Tiers.Unfilled.Value.Should().Be(1);
        plan.Pieces.Select(piece => piece.Source!.Code).Should().Equal(CodeOf(2), CodeOf(3));
    }

    // The boards of 50 in may be taken whole for the cut of 48 to 50 in.
    [Fact]
    public void A_pair_that_is_ruled_out_is_neither_cut_nor_taken_whole_and_every_other_is_as_before()
    {
        var tier = First(Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"", longest: "50\""), Cut("20\"", name: "short")]), Tier.Spend);
        var without = tier.Without((supply, demand) => supply == 0 && demand == 0);

        for (var s = 0; s < 2; s++)
        {
            var (before, after) = (tier.Problem.Supplies[s], without.Problem.Supplies[s]);
            after.Allows.Should().Equal(s == 0 ? [false, before.Allows[1]] : before.Allows);
            after.Whole.Should().Equal(s == 0 ? [false, before.Whole[1]] : before.Whole);
            before.Allows.Should().Equal([true, true], "the tier itself stays as it was");
        }

        tier.Problem.Supplies.Any(supply => supply.Whole[0]).Should().BeTrue();
    }

    [Fact]
    public void What_a_settled_part_rips_and_spends_is_taken_off_what_is_left_to_rip_and_to_spend()
    {
        var wide = MaterialReader.Read("2x8").Value;
        var request = Request([Board("50\"", 1) with { Material = wide }, Board("50\"", 2) with { Material = wide }], [Cut("48\"", 3) with { Rip = true }], Price("50\"", 300));
        var joined = MaterialProblem.Of(Problem.Create(request).Value, [Stud, wide], out _);
        var (yard, store) = joined.Supplies[0].Bought is null ? (0, 1) : (1, 0);
        Pattern Of(int supply) => new(joined, supply, [new Take(0, 1)]);
        var tier = Tier.GivenUp(new MaterialPlan(joined, [(Of(yard), 2), (Of(store), 1)]), spendLeast: 300);
        (tier.RipCap, tier.SpendCap, tier.SpendLeast).Should().Be((2, 300, 300));

        var rest = tier.Rest([(Of(yard), 2), (Of(store), 1)]);

        (rest.RipCap, rest.SpendCap, rest.SpendLeast).Should().Be((0, 0, 0));
        tier.Rest([(Of(yard), 1)]).RipCap.Should().Be(1);
    }

    [Fact]
    public void A_tier_in_two_has_plans_with_at_most_so_many_of_a_supply_and_plans_with_more()
    {
        var tier = First(Request([], [Cut("90\"", 5)], Price("8'", 500)), Tier.Spend);
        var (few, many) = (tier.SplitAt(0, 2).First(), tier.SplitAt(0, 2).Last());

        (few.SupplyLeast[0], few.SupplyCount[0]).Should().Be((0, 2));
        (many.SupplyLeast[0], many.SupplyCount[0]).Should().Be((3, 5));
    }

    [Fact]
    public void Within_other_numbers_of_a_supply_a_tier_costs_what_it_did()
    {
        var start = First(Request([Board("96\"")], [Cut("90\"", 2)]) with { Buy = false }, plan => Tier.Fill(plan.Problem, [true], 0, plan));
        start.LeftCost.Should().Equal(1);
        start.Within([0], [1]).LeftCost.Should().Equal(1);
    }

    [Fact]
    public void No_plan_spends_less_than_the_least()
    {
        var later = () => First(Request([], [Cut("90\"")], Price("8'", 500)), plan => Tier.GivenUp(plan, spendLeast: 501));

        later.Should().Throw<ArgumentException>().WithMessage("a plan spends less than the least*");
    }
}
