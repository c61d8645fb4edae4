using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a node is split on, from the coarsest count that is not whole to the finest.</summary>
public sealed class BranchingTests
{
    // Demands longest first: 0 is 40 in (twice), 1 is 30 in, 2 is 20 in. Supplies: 0 is 120 in, 1 is 120 in with another mark, 2 is a new 96 in.
    private static readonly MaterialProblem Material = Make();

    private static readonly Tier TheTier = Tier.Spend(MaterialPlan.Empty(Material));

    private static MaterialProblem Make()
    {
        var problem = Problem.Create(Request(
            [Board("120\"", 1), Board("120\"", 2) with { Condition = Offcuts.Core.Yard.Condition.Fair }, Board("100\"", 3)],
            [Cut("40\"", 2, name: "a", longest: "120\""), Cut("30\"", name: "b"), Cut("20\"", name: "c")],
            Price("8'", 500))).Value;
        return MaterialProblem.Of(problem, Stud, out _);
    }

    private static int Supply(long inches, bool fair = false, bool bought = false) => Enumerable.Range(0, Material.Supplies.Count).Single(s =>
        Material.Supplies[s].Length == Core.Measures.Length.Inches(inches).Units && Material.Supplies[s].Bought is not null == bought
        && (inches != 120 || Material.Supplies[s].ValueBefore < Enumerable.Range(0, Material.Supplies.Count).Max(other => Material.Supplies[other].ValueBefore) == fair));

    private static Pattern Of(int supply, params int[] takes) =>
        new(Material, supply, [.. takes.Select((count, d) => new Take(d, count)).Where(take => take.Count > 0)]);

    private static (PoolNode[] Nodes, Pattern[] Pool) Split(params (Pattern Pattern, double Times)[] solution)
    {
        Pattern[] pool = [.. solution.Select(column => column.Pattern)];
        return ([.. Branching.Children(TheTier, pool, PoolNode.Root(TheTier, pool.Length, 7), solution)], pool);
    }

    [Fact]
    public void What_costs_money_comes_first_then_the_most_undecided_then_the_longest()
    {
        var (yard, fair, hundred, store) = (Supply(120), Supply(120, fair: true), Supply(100), Supply(96, bought: true));
        int? On(PoolNode[] nodes) => Enumerable.Range(0, Material.Supplies.Count).SingleOrDefault(s => nodes[1].Least[s] > 0, -1);

        On(Split((Of(yard, 1), 0.5), (Of(hundred, 0, 1), 0.4), (Of(store, 0, 0, 1), 0.1)).Nodes).Should().Be(store);
        On(Split((Of(yard, 1), 0.4), (Of(hundred, 0, 1), 0.5)).Nodes).Should().Be(hundred);
        On(Split((Of(yard, 1), 0.5), (Of(hundred, 0, 1), 0.5)).Nodes).Should().Be(yard);
    }

    [Fact]
    public void A_supply_is_used_as_often_as_the_whole_number_below_or_more()
    {
        var store = Supply(96, bought: true);
        var (nodes, _) = Split((Of(store, 1), 1.25));

        (nodes[0].Least[store], nodes[0].Most[store]).Should().Be((0, 1));
        (nodes[1].Least[store], nodes[1].Most[store]).Should().Be((2, TheTier.SupplyCount[store]));
        nodes.Should().OnlyContain(node => node.Depth == 1 && node.Bound == 7);
    }

    [Fact]
    public void Where_supplies_are_whole_two_demands_are_cut_together_or_apart()
    {
        var yard = Supply(120);
        var (nodes, pool) = Split((Of(yard, 0, 1, 1), 0.5), (Of(yard, 1, 1), 0.25), (Of(yard, 1), 0.25));

        nodes[0].Patterns.Select(p => pool[p]).Should().Equal(pool[1], pool[2]);
        nodes[1].Splits.Should().Equal((new Split(1, 1, 2, -1), 1, int.MaxValue));
    }

    [Fact]
    public void Where_no_pair_is_undecided_so_many_of_one_demand_are_cut_at_once()
    {
        var yard = Supply(120);
        var (nodes, pool) = Split((Of(yard, 2), 0.5), (Of(yard, 1), 0.5));

        nodes[0].Patterns.Select(p => pool[p]).Should().Equal(pool[1]);
        nodes[1].Splits.Should().Equal((new Split(0, 2, -1, -1), 1, int.MaxValue));
    }

    [Fact]
    public void Then_a_demand_is_cut_from_one_supply_or_from_the_others()
    {
        var (yard, fair) = (Supply(120), Supply(120, fair: true));
        var (nodes, _) = Split((Of(yard, 1), 0.5), (Of(yard, 0, 1), 0.5), (Of(fair, 1), 0.5), (Of(fair, 0, 1), 0.5));

        nodes[0].Patterns.Should().Equal(1, 2, 3);
        nodes[1].Splits.Should().Equal((new Split(0, 1, -1, yard), 1, int.MaxValue));
    }

    [Fact]
    public void At_last_one_pattern_is_used_or_not()
    {
        var yard = Supply(120);
        var whole = new Pattern(Material, yard, [new Take(0, 1)], whole: true);
        var (nodes, pool) = Split((Of(yard, 1), 0.5), (whole, 0.5));

        nodes[0].Patterns.Select(p => pool[p]).Should().Equal(whole);
        nodes[1].Splits.Should().Equal((new Split(-1, 0, -1, -1, pool[0]), 1, int.MaxValue));
    }

    [Fact]
    public void A_pattern_that_is_used_whole_times_is_not_the_one()
    {
        var yard = Supply(120);
        var whole = new Pattern(Material, yard, [new Take(0, 1)], whole: true);
        var (nodes, pool) = Split((Of(Supply(100), 0, 1), 1), (Of(yard, 1), 0.5), (whole, 0.5));

        nodes[0].Patterns.Should().Equal(0, 2);
        nodes[1].Splits.Should().Equal((new Split(-1, 0, -1, -1, pool[1]), 1, int.MaxValue));
    }

    [Fact]
    public void A_whole_plan_that_was_not_good_enough_is_ruled_out_by_its_first_pattern()
    {
        var store = Supply(96, bought: true);
        var (nodes, _) = Split((Of(store, 1), 2), (Of(Supply(120), 0, 1), 1));

        nodes[0].Splits.Should().Equal((new Split(-1, 0, -1, -1, Of(store, 1)), 0, 1));
        nodes[1].Splits.Should().Equal((new Split(-1, 0, -1, -1, Of(store, 1)), 2, int.MaxValue));
    }
}
