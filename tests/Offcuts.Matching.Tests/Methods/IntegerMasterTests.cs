using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The integer master over lists in which a pattern stands for all its parts.</summary>
public sealed class IntegerMasterTests
{
    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void A_pattern_may_be_used_more_often_than_its_scarcest_cut_is_asked_for()
    {
        // Five boards of 12 ft at 6.00: in each one cut of 7 ft, in one of them the cut of 4 ft too. The list holds only what both make together.
        var problem = Problem.Create(Request([], [Cut("7'", 5), Cut("4'", 1, name: "short")], Price("12'", 600))).Value;
        var plan = MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
        var tier = Tier.Spend(plan);
        var relaxation = ColumnGeneration.Solve(tier, plan, [], None);
        var pool = PatternEnumeration.All(tier, ReducedCostLimits.Of(tier, relaxation, 3000), 100, 10_000)!;

        var (found, closed) = IntegerMaster.Solve(tier, pool, 3000, 100, None);

        (found?.Spend, closed).Should().Be((3000, true));
        IntegerMaster.Solve(tier, pool, 2999, 100, None).Should().Be(new IntegerOutcome(null, true));
    }
}
