using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Bounds that are known before anything is solved.</summary>
public class BoundTests
{
    [Fact]
    public void The_sum_of_lengths_is_counted_at_the_cheapest_price_for_its_length()
    {
        // 10 cuts of 30 in are 300 in: 3 1/8 boards of 96 in at 4.00, so 12.50, and 13.00 is the next sum of 4.00 and 5.00.
        Lengths([], [Cut("30\"", 10)], Price("96\"", 400), Price("96\"", 500, treated: true)).Should().Be(1300);
    }

    [Fact]
    public void What_the_yard_holds_costs_nothing()
    {
        // 300 in less one board of 96 in in the yard: 204 in, 2 1/8 boards at 4.00, so 8.50, and 12.00 is the next sum.
        Lengths([Board("96\"")], [Cut("30\"", 10)], Price("96\"", 400)).Should().Be(1200);
    }

    [Fact]
    public void Beyond_its_limit_a_store_length_counts_no_more()
    {
        // 300 in: 96 in for 1.00, then 204 in at 3.00 for 60 in are 10.20; 11.20 in all, and any whole number of dollars is a sum of 1.00 and 3.00.
        Lengths([], [Cut("30\"", 10)], Price("96\"", 100, limit: 1), Price("60\"", 300)).Should().Be(1200);
    }

    // By the 96 in at 4.00 they are 12.50, by the 60 in at 3.00 only 7.00, since longer boards give more for the money; and the other way round.
    [Theory]
    [InlineData(300, 400, 1300)]
    [InlineData(250, 500, 1250)]
    public void Of_several_lengths_the_one_counts_by_which_it_is_the_most(long shorter, long longer, long bound) =>
        Lengths([], [Cut("30\"", 10)], Price("60\"", shorter), Price("96\"", longer)).Should().Be(bound);

    // 31 in of 97 in at 3.89 are 1.2432. The board for a cent, of which there are none, lets any sum be one of prices.
    [Fact]
    public void Parts_of_a_cent_are_rounded_up() => Lengths([], [Cut("31\"")], Price("97\"", 389), Price("40\"", 1, limit: 0)).Should().Be(125);

    [Fact]
    public void Where_nothing_can_be_bought_it_is_nothing_by_no_length()
    {
        var problem = Problem.Create(Request([Board("96\"")], [Cut("30\"", 10)])).Value;
        Bounds.Lengths(Tier.Spend(MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan)).Should().Be((0L, (int?)null));
    }

    [Fact]
    public void It_is_never_above_the_least_spend()
    {
        var counted = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var problem = Problem.Create(RandomYards.Draw(seed, 8, 6)).Value;
            foreach (var material in problem.Materials)
            {
                var plan = MaterialSolver.First(MaterialProblem.Of(problem, material, out _), problem.Stages.Count).Plan;
                var tier = Tier.Spend(plan);
                var bound = Bounds.Lengths(tier).Bound;
                TierSolver.Solve(tier, plan, 0, new Effort(MatchLimits.None)).Plan.Spend.Should().BeGreaterThanOrEqualTo(bound, $"seed {seed}");
                if (bound > 0) counted++;
            }
        }

        counted.Should().BeGreaterThan(50, "else it said nothing");
    }

    private static long Lengths(IEnumerable<Piece> yard, IEnumerable<RequiredCut> cuts, params StorePrice[] prices)
    {
        var problem = Problem.Create(Request(yard, cuts, prices) with { Settings = NoKerf }).Value;
        var plan = MaterialSolver.First(MaterialProblem.Of(problem, Stud, out _), 1).Plan;
        return Bounds.Lengths(Tier.Spend(plan)).Bound;
    }
}
