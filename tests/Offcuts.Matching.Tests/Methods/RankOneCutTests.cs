using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The coefficients of a cut, worked out by hand: one cut of 30 in, three of 20 in, two of 10 in, from five boards that are alike.</summary>
public sealed class RankOneCutTests
{
    private static readonly Tier Yard = Tier.Spend(MaterialSolver.First(MaterialProblem.Of(
        Problem.Create(Request(Enumerable.Range(1, 5).Select(i => Board("96\"", i)), [Cut("30\"", name: "a"), Cut("20\"", 3, name: "b"), Cut("10\"", 2, name: "c")])).Value, Stud, out _), 1).Plan);

    private static Pattern Of(params (int Demand, int Count)[] takes) => new(Yard.Problem, 0, [.. takes.Select(take => new Take(take.Demand, take.Count))]);

    [Fact]
    public void Half_of_two_demands_rounded_up()
    {
        var cut = new RankOneCut(Yard, [0, 1], [1, 1], 2);

        cut.Least.Should().Be(2, "half of 1 + 3");
        (cut.Of(Of((0, 1), (1, 1), (2, 1))), cut.Of(Of((1, 3))), cut.Of(Of((2, 2)))).Should().Be((1L, 2L, 0L));
        (cut.OfLeft(0), cut.OfLeft(1), cut.OfLeft(2)).Should().Be((1L, 1L, 0L), "what is left of a demand that is not in it plays no part");
    }

    [Fact]
    public void Less_half_of_the_boards_there_are_rounded_up_towards_nothing()
    {
        var cut = new RankOneCut(Yard, [0], [1], 2, 0);

        cut.Least.Should().Be(-2, "half of 1 - 5");
        (cut.Of(Of((0, 1))), cut.Of(Of((2, 1)))).Should().Be((0L, 0L), "half of 1 - 1, and half of -1 rounded up");
    }

    [Fact]
    public void Two_thirds_of_one_demand_rounded_up()
    {
        var cut = new RankOneCut(Yard, [1], [2], 3);

        cut.Least.Should().Be(2, "two thirds of 3");
        (cut.Of(Of((1, 1))), cut.Of(Of((1, 2))), cut.OfLeft(1)).Should().Be((1L, 2L, 1L));
    }
}
