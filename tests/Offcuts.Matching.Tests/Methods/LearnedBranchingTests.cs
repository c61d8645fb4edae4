using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What a node is split on where splits have shown what they gain.</summary>
public sealed class LearnedBranchingTests
{
    private static readonly Split One = Split.Of(1);
    private static readonly Split Other = Split.Of(2);

    [Fact]
    public void A_gain_is_counted_for_each_unit_that_the_relaxation_was_away_from_whole()
    {
        var costs = new Pseudocosts();
        costs.Learn(new Decision(One, Up: true, Distance: 0.25, Bound: 0), gain: 3);

        costs.Unit(One, up: true).Should().Be(12);
        costs.Unit(One, up: false).Should().Be(1, "of that side nothing is known");
    }

    [Fact]
    public void What_was_never_split_on_is_as_good_as_its_kind_is_on_average()
    {
        var costs = new Pseudocosts();
        costs.Learn(new Decision(One, Up: false, Distance: 0.5, Bound: 0), gain: 1);
        costs.Learn(new Decision(Other, Up: false, Distance: 0.5, Bound: 0), gain: 3);

        costs.Unit(Split.Of(3), up: false).Should().Be(4);
        costs.Unit(One, up: false).Should().Be(3, "its own 2 and its kind's 4, once each");
    }

    [Fact]
    public void Two_demands_together_are_known_by_each_of_them_and_trusted_by_half()
    {
        var costs = new Pseudocosts();
        costs.Learn(new Decision(new Split(0, 1, 1, -1), Up: true, Distance: 0.5, Bound: 0), gain: 6);
        costs.Learn(new Decision(new Split(2, 1, 3, -1), Up: true, Distance: 0.5, Bound: 0), gain: 0);

        costs.Unit(new Split(0, 1, 2, -1), up: true).Should().Be((12 + 0 + 6) / 3.0 / 2);
        costs.Unit(new Split(0, 1, 1, -1), up: true).Should().Be((12 + 12 + 6) / 3.0 / 2);
    }

    [Fact]
    public void A_split_that_raises_both_sides_is_better_than_one_that_raises_one_of_them_more()
    {
        var costs = new Pseudocosts();
        foreach (var up in (bool[])[false, true]) costs.Learn(new Decision(One, up, 0.5, 0), gain: 2);
        costs.Learn(new Decision(Other, false, 0.5, 0), gain: 0);
        costs.Learn(new Decision(Other, true, 0.5, 0), gain: 5);

        costs.Score(One, 3.5).Should().BeGreaterThan(costs.Score(Other, 3.5));
        costs.Score(One, 3.5).Should().BeGreaterThan(costs.Score(One, 3.1), "the lesser side decides");
    }

    [Fact]
    public void A_wide_family_is_of_all_of_what_gives_something_back_or_of_the_shortest()
    {
        // A stub of 100 in, two boards of 120 in alike, one of 150 in.
        var problem = Problem.Create(Request([Board("120\"", 1), Board("100\"", 2), Board("150\"", 3), Board("120\"", 4)], [Cut("96\"", 4)], Price("8'", 500))).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        int Supply(long inches) => Enumerable.Range(0, material.Supplies.Count).Single(s => material.Supplies[s].Length == Core.Measures.Length.Inches(inches).Units && material.Supplies[s].Price == 0);
        Pattern Of(long inches) => new(material, Supply(inches), [new Take(0, 1)]);
        var (stub, board, longest) = (Of(100), Of(120), Of(150));
        var families = WideFamily.Of(material);

        families.Where(family => family.Kind == WideKind.All).Should().ContainSingle().Which.Should().Match<WideFamily>(all => all.Holds(stub) && all.Holds(longest));
        var back = families.Single(family => family.Kind == WideKind.GivingBack);
        (back.Holds(stub), back.Holds(board), back.Holds(longest)).Should().Be((false, true, true), "4 in and a kerf less are no piece, 24 in are");
        families.Where(family => family.Kind == WideKind.Shortest).Select(family => (family.Holds(stub), family.Holds(board), family.Holds(longest)))
            .Should().Contain((true, false, false)).And.Contain((true, true, false)).And.NotContain((true, true, true));
    }

    [Fact]
    public void It_splits_on_what_has_gained_most_and_says_from_where_it_came()
    {
        var problem = Problem.Create(Request([Board("100\"", 1), Board("120\"", 2), Board("150\"", 3)], [Cut("50\"", name: "a"), Cut("40\"", name: "b")])).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        var tier = Tier.GivenUp(new MaterialPlan(material, [(new Pattern(material, 0, [new Take(0, 1), new Take(1, 1)]), 1)]));
        var branching = new LearnedBranching(tier);
        (Pattern, double)[] solution = [(new Pattern(material, 0, [new Take(0, 1)]), 0.75), (new Pattern(material, 1, [new Take(1, 1)]), 0.5)];
        Pattern[] pool = [.. solution.Select(column => column.Item1)];
        var node = PoolNode.Root(tier, pool.Length, 7);
        var all = WideFamily.Of(material);

        foreach (var up in (bool[])[false, true]) branching.Costs.Learn(new Decision(Split.Of(0), up, 0.5, 0), gain: 10);
        var bySupply = branching.Children(pool, node, solution, _ => 0)!;
        bySupply[1].Made.Should().Be(new Decision(Split.Of(1), true, 0.5, 7), "it is as good as its kind, and the most undecided of it");
        (bySupply[0].Most[1], bySupply[1].Least[1]).Should().Be((0, 1));

        branching.Costs.Learn(new Decision(new Split(-1, 0, -1, -1, Wide: all.Single(family => family.Kind == WideKind.All)), true, 0.5, 0), gain: 100_000);
        var wide = branching.Children(pool, node, solution, _ => 0)!;
        wide[0].Splits.Should().ContainSingle().Which.Should().Match<(Split Split, int Least, int Most)>(split => split.Split.Wide!.Kind == WideKind.All && split.Most == 1);
        wide[1].Splits.Single().Least.Should().Be(2);
        (wide[0].Made!.Distance, wide[1].Made!.Distance).Should().Be((0.25, 0.75));
    }

    [Fact]
    public void What_has_not_been_seen_is_tried_on_both_sides_and_what_raises_both_is_taken_and_remembered()
    {
        var problem = Problem.Create(Request([Board("100\"", 1), Board("120\"", 2), Board("150\"", 3)], [Cut("50\"", name: "a"), Cut("40\"", name: "b")])).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        var tier = Tier.GivenUp(new MaterialPlan(material, [(new Pattern(material, 0, [new Take(0, 1), new Take(1, 1)]), 1)]));
        var branching = new LearnedBranching(tier);
        (Pattern, double)[] solution = [(new Pattern(material, 0, [new Take(0, 1)]), 0.5), (new Pattern(material, 1, [new Take(1, 1)]), 0.5)];
        Pattern[] pool = [.. solution.Select(column => column.Item1)];
        var tried = new List<Decision>();

        var children = branching.Children(pool, PoolNode.Root(tier, 2, 0), solution, child =>
        {
            tried.Add(child.Made!);
            return child.Made!.Split == Split.Of(1) ? 6 : child.Made.Up ? 9 : 0;
        })!;

        children.Select(child => child.Made!.Split).Should().AllBeEquivalentTo(Split.Of(1), "9 on one side and nothing on the other is worth less");
        tried.GroupBy(made => made.Split).Should().OnlyContain(sides => sides.Count() == 2);
        branching.Costs.Seen(Split.Of(1)).Should().Be(1);
        branching.Costs.Unit(Split.Of(1), up: true).Should().BeGreaterThan(branching.Costs.Unit(Split.Of(0), up: false));
    }

    [Fact]
    public void What_was_seen_often_enough_is_not_tried_again()
    {
        var problem = Problem.Create(Request([Board("100\"", 1)], [Cut("50\"", name: "a"), Cut("40\"", name: "b")])).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        var pattern = new Pattern(material, 0, [new Take(0, 1)]);
        var tier = Tier.GivenUp(new MaterialPlan(material, [(pattern, 1)]));
        var branching = new LearnedBranching(tier);
        var tried = new List<Split>();
        double? Gain(PoolNode child)
        {
            tried.Add(child.Made!.Split);
            return 1;
        }

        for (var times = 0; times < 4; times++) branching.Children([pattern], PoolNode.Root(tier, 1, 0), [(pattern, 0.5)], Gain).Should().HaveCount(2);
        tried.Count(split => split == Split.Of(0)).Should().Be(8, "four times on both sides");
        tried.Clear();
        branching.Children([pattern], PoolNode.Root(tier, 1, 0), [(pattern, 0.5)], Gain).Should().HaveCount(2);
        tried.Should().BeEmpty();
    }

    [Fact]
    public void Where_all_that_it_looks_at_is_whole_it_leaves_the_choice_to_others()
    {
        var problem = Problem.Create(Request([Board("100\"", 1)], [Cut("50\"", name: "a")])).Value;
        var material = MaterialProblem.Of(problem, Stud, out _);
        var pattern = new Pattern(material, 0, [new Take(0, 1)]);
        var tier = Tier.GivenUp(new MaterialPlan(material, [(pattern, 1)]));

        new LearnedBranching(tier).Children([pattern], PoolNode.Root(tier, 1, 0), [(pattern, 1)], _ => 0).Should().BeNull();
    }
}
