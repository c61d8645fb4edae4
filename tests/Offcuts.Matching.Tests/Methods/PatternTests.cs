using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>What is cut from one span: which of them are the same, and what is none.</summary>
public sealed class PatternTests
{
    // Two boards of which each is a supply of its own; the 48 in board takes its one cut whole too.
    private static readonly MaterialProblem Yard = MaterialProblem.Of(
        Problem.Create(Request([Board("48\"", 1), Board("60\"", 2)], [Cut("20\"", 4), Cut("47\"", name: "long", longest: "48\"")]) with { Settings = NoKerf }).Value, Stud, out _);

    private static readonly int Short = Yard.Supplies[0].Length < Yard.Supplies[1].Length ? 0 : 1;

    private static readonly int Long = Yard.Demands[0].Length > Yard.Demands[1].Length ? 0 : 1;

    [Fact]
    public void Patterns_are_the_same_that_cut_the_same_in_the_same_way_from_the_same_spans()
    {
        Pattern two = new(Yard, Short, [new Take(1 - Long, 2)]);

        two.Should().Be(new Pattern(Yard, Short, [new Take(1 - Long, 2)]));
        two.Should().NotBe(new Pattern(Yard, Short, [new Take(1 - Long, 1)]), "it cuts fewer");
        two.Should().NotBe(new Pattern(Yard, 1 - Short, [new Take(1 - Long, 2)]), "those are other spans");
        new Pattern(Yard, Short, [new Take(Long, 1)]).Should().NotBe(new Pattern(Yard, Short, [new Take(Long, 1)], whole: true), "that one is not sawn");
        new Pattern(Yard, Short, [new Take(Long, 1)]).Should().NotBe(two, "those are other cuts");
        two.Equals("two").Should().BeFalse();
        two.Equals(null).Should().BeFalse();
    }

    [Fact]
    public void Cuts_that_are_longer_than_the_span_are_no_pattern()
    {
        var three = () => new Pattern(Yard, Short, [new Take(1 - Long, 3)]);

        three.Should().Throw<ArgumentException>().WithMessage("the cuts are longer than the span*");
        new Pattern(Yard, 1 - Short, [new Take(1 - Long, 3)]).Weight.Should().Be(Yard.Capacity(1 - Short), "three of 20 in just fit into 60 in");
    }

    [Fact]
    public void A_plan_that_fills_a_cut_twice_is_none()
    {
        var twice = () => new MaterialPlan(Yard, [(new Pattern(Yard, 1 - Short, [new Take(Long, 1)]), 1), (new Pattern(Yard, Short, [new Take(Long, 1)]), 1)]);

        twice.Should().Throw<InvalidOperationException>().WithMessage("a cut is filled twice");
    }

    [Fact]
    public void What_remains_of_a_plan_without_a_part_of_it_is_the_rest_and_of_another_plan_there_is_none()
    {
        Pattern one = new(Yard, 1 - Short, [new Take(1 - Long, 1)]), whole = new(Yard, Short, [new Take(Long, 1)], whole: true);
        MaterialPlan plan = new(Yard, [(one, 3), (whole, 1)]), part = new(Yard, [(one, 2)]);

        plan.Without(part)!.Uses.Should().BeEquivalentTo(((Pattern, int)[])[(one, 1), (whole, 1)]);
        plan.Without(plan)!.Uses.Should().BeEmpty();
        part.Without(plan).Should().BeNull("it has two of the three");
        part.Without(new MaterialPlan(Yard, [(whole, 1)])).Should().BeNull();
        new MaterialPlan(Yard, [(one, 3)]).Without(plan).Should().BeNull("it has all of the one pattern and none of the other");
    }

    // Of 30, 20 and 10 in, in this order; the 48 in board may be taken whole for the 30 in cut.
    [Fact]
    public void Patterns_stand_by_supply_then_those_taken_whole_then_those_with_longer_and_more_cuts()
    {
        var request = Request([Board("48\"", 1), Board("60\"", 2)], [Cut("30\"", name: "a", longest: "48\""), Cut("20\"", 2, name: "b"), Cut("10\"", 4, name: "c")]) with { Settings = NoKerf };
        var problem = MaterialProblem.Of(Problem.Create(request).Value, Stud, out _);
        Pattern Of(int supply, params (int Demand, int Count)[] takes) => new(problem, supply, [.. takes.Select(take => new Take(take.Demand, take.Count))]);
        var shorter = problem.Supplies[0].Length < problem.Supplies[1].Length;
        Pattern[] ofOne = [Of(0, (0, 1), (2, 1)), Of(0, (0, 1)), Of(0, (1, 2)), Of(0, (1, 1), (2, 2)), Of(0, (1, 1), (2, 1)), Of(0, (1, 1)), Of(0, (2, 4)), Of(0, (2, 1))];
        Pattern[] ofOther = [Of(1, (0, 1), (2, 1)), Of(1, (0, 1)), Of(1, (2, 1))];
        Pattern whole = new(problem, shorter ? 0 : 1, [new Take(0, 1)], whole: true);
        Pattern[] right = shorter ? [whole, .. ofOne, .. ofOther] : [.. ofOne, whole, .. ofOther];

        new Random(1).GetItems(right, 40).Distinct().Order(Comparer<Pattern>.Create(Pattern.Compare)).Should().Equal(right);
        new MaterialPlan(problem, [(right[^1], 1), (right[0], 1)]).Uses.Select(use => use.Pattern).Should().Equal(right[0], right[^1]);
        foreach (var pattern in right) Pattern.Compare(pattern, pattern).Should().Be(0);
    }

    [Fact]
    public void What_a_plan_leaves_of_a_stage_is_counted_over_all_its_cuts() => MaterialPlan.Empty(Yard).LeftIn(0).Should().Be(5, "four short ones and the long one");

    [Fact]
    public void A_pattern_that_is_used_twice_counts_twice_in_every_figure()
    {
        var wide = Core.Materials.MaterialReader.Read("2x8").Value;
        var request = Request([Board("50\"", 1) with { Material = wide }, Board("50\"", 2) with { Material = wide }], [Cut("48\"", 2) with { Rip = true }]);
        var joined = MaterialProblem.Of(Problem.Create(request).Value, [Stud, wide], out _);
        var pattern = new Pattern(joined, 0, [new Take(0, 1)]);
        var plan = new MaterialPlan(joined, [(pattern, 2)]);

        (plan.Rips, plan.SawCuts, plan.GivenUp, plan.Left.Sum()).Should().Be((2, 2 * pattern.SawCuts, 2 * pattern.GivenUp, 0));
    }

    [Fact]
    public void In_another_problem_a_plan_has_the_figures_that_it_has_there()
    {
        var priced = MaterialProblem.Of(Problem.Create(Request([Board("96\"", 1)], [Cut("20\"")], Price("8'", 960))).Value, Stud, out _);
        var yard = Enumerable.Range(0, 2).Single(s => priced.Supplies[s].Bought is null);
        var plan = new MaterialPlan(priced, [(new Pattern(priced, yard, [new Take(0, 1)]), 1)]);
        var level = priced.Leaving([.. priced.Supplies.Select(_ => 0L)]);

        plan.In(priced).Should().BeSameAs(plan);
        plan.In(level).Problem.Should().BeSameAs(level);
        plan.In(level).GivenUp.Should().Be(960, "no remainder is worth anything there");
        plan.GivenUp.Should().BeLessThan(960);
    }
}
