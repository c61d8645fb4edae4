using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Rules that hold for every problem. A failing one is drawn again by the seed that the message names.</summary>
public sealed class PropertyTests
{
    [Fact]
    public void The_order_of_the_rows_changes_no_figure_and_the_same_rows_give_the_same_plan()
    {
        for (var seed = 4000; seed < 4008; seed++)
        {
            var request = RandomYards.Draw(seed, mostCuts: 8, mostPieces: 6);
            var turned = request with { Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Reverse()] })] };
            var plan = Match(request);
            Figures(Match(turned)).Should().Be(Figures(plan), $"seed {seed}");
            Text(Match(turned)).Should().Be(Text(plan), $"seed {seed}");
            Text(Match(request)).Should().Be(Text(plan), $"seed {seed}");
        }
    }

    [Fact]
    public void The_fast_value_is_the_yard_value_to_the_cent()
    {
        var price = Gen.Select(Gen.Int[1, 60], Gen.Long[0, 5000]);
        var prices = price.Array[1, 5].Select(list => list.DistinctBy(one => one.Item1)
            .Select(one => new StorePrice { Material = Stud, Length = Length.Feet(one.Item1), Price = new Money(one.Item2) }).ToArray());
        Gen.Select(prices, Gen.Enum<Condition>(), Gen.Long[0, 60 * Length.PerFoot], Gen.Long[0, 3 * Length.PerFoot]).Sample((book, condition, units, keep) =>
            new ValueCurve(condition, book, Length.FromUnits(keep)).At(units)
            == YardValue.Of(Length.FromUnits(units), condition, book, Length.FromUnits(keep)).Cents, iter: 20_000);
    }

    [Fact]
    public void A_shorter_length_is_never_worth_more_than_a_longer_by_more_than_the_drop()
    {
        var price = Gen.Select(Gen.Int[1, 60], Gen.Long[0, 5000]);
        Gen.Select(price.Array[1, 5], Gen.Long[0, 60 * Length.PerFoot], Gen.Long[0, 60 * Length.PerFoot]).Sample((list, a, b) =>
        {
            var curve = new ValueCurve(Condition.Sound, Book(list), Length.Zero);
            return curve.At(Math.Min(a, b)) <= curve.At(Math.Max(a, b)) + curve.LargestDrop(Math.Max(a, b));
        }, iter: 20_000);
    }

    [Fact]
    public void Up_to_the_length_where_longer_costs_less_nothing_drops()
    {
        // 8 ft at 5.00, 12 ft at 9.00, 16 ft at 4.00: from 12 ft to 16 ft a length loses 5.00, half of it up to 14 ft.
        var curve = new ValueCurve(Condition.Sound, Book([(8, 500), (12, 900), (16, 400)]), Length.Zero);

        curve.LargestDrop(Length.Feet(12).Units).Should().Be(0);
        curve.LargestDrop(Length.Feet(14).Units).Should().BeInRange(250, 251);
        curve.LargestDrop(Length.Feet(20).Units).Should().BeInRange(500, 501);
    }

    [Fact]
    public void The_most_that_lengths_between_two_are_worth_is_worth_one_of_them_and_none_is_worth_more()
    {
        var price = Gen.Select(Gen.Int[1, 12], Gen.Long[0, 900]);
        Gen.Select(price.Array[1, 5], Gen.Int[0, 150], Gen.Int[0, 150], Gen.Int[0, 40]).Sample((list, a, b, keep) =>
        {
            // Prices and ends on the inch, where alone the value can turn.
            var curve = new ValueCurve(Condition.Fair, Book(list), Length.Inches(keep));
            var between = Enumerable.Range(Math.Min(a, b), Math.Abs(a - b) + 1).Select(inches => curve.At(Length.Inches(inches).Units));
            return curve.Most(Length.Inches(Math.Min(a, b)).Units, Length.Inches(Math.Max(a, b)).Units) == between.Max();
        }, iter: 5_000);
    }

    private static StorePrice[] Book((int Feet, long Cents)[] list) =>
        [.. list.DistinctBy(one => one.Feet).Select(one => new StorePrice { Material = Stud, Length = Length.Feet(one.Feet), Price = new Money(one.Cents) })];

    [Fact]
    public void A_cancelled_match_still_hands_back_a_right_plan_with_true_bounds()
    {
        var problem = Problem.Create(RandomYards.Draw(7, mostCuts: 10, mostPieces: 8)).Value;
        var plan = Matcher.Match(problem, new MatchLimits { Cancel = new CancellationToken(canceled: true) });
        PlanChecker.Faults(problem, plan).Should().BeEmpty();
        var best = Matcher.Match(problem, MatchLimits.None);
        plan.Tiers.Spend.Bound.Should().BeLessThanOrEqualTo(best.Tiers.Spend.Value);
        plan.Tiers.ValueGivenUp.Value.Should().BeGreaterThanOrEqualTo(best.Tiers.ValueGivenUp.Value);
    }

    [Fact]
    public void Progress_tells_figures_whose_bounds_are_not_above_them()
    {
        var told = new List<MatchProgress>();
        Match(RandomYards.Draw(7, mostCuts: 10, mostPieces: 8), new MatchLimits { Progress = new Told(told) });
        told.Should().NotBeEmpty();
        told.Should().OnlyContain(step => step.Unfilled.Bound <= step.Unfilled.Value && step.Spend.Bound <= step.Spend.Value && step.ValueGivenUp.Bound <= step.ValueGivenUp.Value);
    }

    private sealed class Told(List<MatchProgress> told) : IProgress<MatchProgress>
    {
        public void Report(MatchProgress value) => told.Add(value);
    }
}
