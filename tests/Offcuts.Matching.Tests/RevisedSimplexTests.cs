using Google.OrTools.LinearSolver;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests;

/// <summary>The simplex method of our own, by hand and against that of OR-Tools.</summary>
public class RevisedSimplexTests
{
    private const double Near = 1e-3;

    [Fact]
    public void Two_cuts_from_one_length_cost_what_the_mix_of_patterns_costs()
    {
        // 7 a and 4 b; patterns (2 a), (1 a, 1 b), (3 b) at 1 each: 3/2 of the first, 4 of the second, so 5 1/2; a is worth 1/2, b 1/2.
        var program = new RevisedSimplex([(RowKind.AtLeast, 7), (RowKind.AtLeast, 4)], 10);
        program.Add(1, [(0, 2)]);
        program.Add(1, [(0, 1), (1, 1)]);
        program.Solve(whole: true).Should().BeTrue();
        program.Objective.Should().BeApproximately(5.5, Near);

        // With the third, b is worth only 1/3: 7/2 of the first and 4/3 of the third.
        program.Add(1, [(1, 3)]);
        program.Solve(whole: true).Should().BeTrue();
        program.Objective.Should().BeApproximately(7 / 2.0 + 4 / 3.0, Near);
        program.Duals[0].Should().BeApproximately(1 / 2.0, Near);
        program.Duals[1].Should().BeApproximately(1 / 3.0, Near);
    }

    [Fact]
    public void What_cannot_be_met_goes_unmet_and_is_told()
    {
        var program = new RevisedSimplex([(RowKind.AtLeast, 3), (RowKind.AtMost, 2)], 10);
        program.Add(1, [(0, 1), (1, 1)]);
        program.Solve(whole: false).Should().BeTrue();
        program.Shortfall.Should().BeApproximately(1, Near, "three are asked for and two can be had");
    }

    [Fact]
    public void It_agrees_with_another_simplex_method_column_by_column()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var random = new Random(seed);
            var rows = Enumerable.Range(0, random.Next(2, 25)).Select(_ => ((RowKind)random.Next(3), (double)random.Next(0, 8))).ToArray();
            const double dear = 1_000;
            var program = new RevisedSimplex(rows, dear);
            using var other = Solver.CreateSolver("GLOP");
            var constraints = rows.Select(row => other.MakeConstraint(
                row.Item1 == RowKind.AtMost ? double.NegativeInfinity : row.Item2, row.Item1 == RowKind.AtLeast ? double.PositiveInfinity : row.Item2)).ToArray();
            for (var i = 0; i < rows.Length; i++)
            {
                if (rows[i].Item1 == RowKind.AtMost) continue;
                var unmet = other.MakeNumVar(0, double.PositiveInfinity, "");
                other.Objective().SetCoefficient(unmet, dear);
                constraints[i].SetCoefficient(unmet, 1);
            }

            for (var column = 0; column < 60; column++)
            {
                var entries = Enumerable.Range(0, rows.Length).OrderBy(_ => random.Next()).Take(random.Next(1, 5)).Select(row => (row, (double)random.Next(1, 4))).ToArray();
                var cost = random.Next(1, 30);
                program.Add(cost, entries);
                var variable = other.MakeNumVar(0, double.PositiveInfinity, "");
                other.Objective().SetCoefficient(variable, cost);
                foreach (var (row, coefficient) in entries) constraints[row].SetCoefficient(variable, coefficient);
                if (column % 10 != 9) continue;

                program.Solve(whole: false).Should().BeTrue($"seed {seed}");
                other.Solve().Should().Be(Solver.ResultStatus.OPTIMAL);
                program.Objective.Should().BeApproximately(other.Objective().Value(), 0.05, $"seed {seed}, {column + 1} columns");
                foreach (var (_, value) in program.Solution) value.Should().BeGreaterThanOrEqualTo(0);
            }
        }
    }
}
