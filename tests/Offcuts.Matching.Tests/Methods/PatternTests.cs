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
    }
}
