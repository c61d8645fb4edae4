using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The fourth tier of a plan so far: saw cuts, then pieces carried, then cuts that take either on treated wood, then the yard's own order.</summary>
public sealed class CountTiesTests
{
    private static readonly MaterialProblem Yard = MaterialProblem.Of(
        Problem.Create(Request([Board("50\"", 1) with { Treated = true }, Board("50\"", 2)], [Cut("20\"", 2)])).Value, Stud, out _);

    private static readonly CountTies Nothing = new(0, 0);

    private static Pattern Of(bool treated, int cuts) => new(Yard, Enumerable.Range(0, 2).Single(s => Yard.Supplies[s].Treated == treated), [new Take(0, cuts)]);

    [Fact]
    public void A_saw_cut_outweighs_what_is_carried_and_a_piece_carried_outweighs_treated_wood()
    {
        var saw = Nothing.Plus(Of(treated: false, 1), sawCuts: true, carries: false, piece: null);
        var carried = Nothing.Plus(Of(treated: true, 2), sawCuts: false, carries: true, piece: 0);
        var treated = Nothing.Plus(Of(treated: true, 2), sawCuts: false, carries: false, piece: 0);

        saw.CompareTo(carried).Should().BePositive();
        carried.CompareTo(saw).Should().BeNegative();
        carried.CompareTo(treated).Should().BePositive();
        treated.CompareTo(Nothing).Should().BePositive();
        treated.CompareTo(Nothing.Plus(Of(treated: true, 1), sawCuts: false, carries: false, piece: 0)).Should().BePositive("two cuts on treated wood are more than one");
        Nothing.Plus(Of(treated: true, 2), sawCuts: true, carries: false, piece: 0).CompareTo(Nothing.Plus(Of(treated: true, 1), sawCuts: true, carries: true, piece: 0)).Should().BePositive("two saw cuts are more than one");
    }

    [Fact]
    public void Of_plans_that_are_equal_before_the_one_with_the_earlier_piece_of_the_yard_is_better()
    {
        CountTies Carrying(params int?[] pieces) => pieces.Aggregate(Nothing, (ties, piece) => ties.Plus(Of(treated: false, 1), sawCuts: true, carries: true, piece));

        Carrying(0, 3).CompareTo(Carrying(1, 2)).Should().BeNegative();
        Carrying(0, 2).CompareTo(Carrying(0, 3)).Should().BeNegative();
        Carrying(126).CompareTo(Carrying(127)).Should().BeNegative("128 pieces are told apart");
        Carrying(127).CompareTo(Carrying((int?)null)).Should().BeNegative("a bought piece has no place in the yard");
        Carrying(2, 5).CompareTo(Carrying(5, 2)).Should().Be(0);
        Carrying(0).CompareTo(Carrying(1, 2)).Should().BeNegative("it carries less");
        Nothing.Plus(Of(treated: false, 1), sawCuts: true, carries: false, piece: 4).Carried.Should().Be(UInt128.Zero, "that piece was carried before");
    }
}
