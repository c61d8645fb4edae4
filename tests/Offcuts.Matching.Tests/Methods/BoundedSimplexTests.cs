using CsCheck;
using Google.OrTools.LinearSolver;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>A linear program that changes and is solved again, held against a general solver that begins anew each time.</summary>
public sealed class BoundedSimplexTests
{
    private const double Dear = 1_000;

    [Fact]
    public void Two_cuts_from_two_spans_cost_the_cheaper_mixture_and_the_duals_say_so()
    {
        var program = new BoundedSimplex();
        var (first, second) = (program.AddRow(2, double.PositiveInfinity), program.AddRow(1, double.PositiveInfinity));
        var (both, one, other) = (program.AddColumn(5, (first, 1), (second, 1)), program.AddColumn(2, (first, 1)), program.AddColumn(4, (second, 1)));

        program.Solve().Should().BeTrue();

        program.Objective.Should().BeApproximately(7, 1e-9);
        (program.Value(both), program.Value(one), program.Value(other)).Should().Be((1, 1, 0));
        (program.Dual(first), program.Dual(second)).Should().Be((2, 3), "so much would one more of each cost");
    }

    [Fact]
    public void A_closed_column_is_held_at_nothing_until_it_is_opened()
    {
        var program = new BoundedSimplex();
        var row = program.AddRow(1, double.PositiveInfinity);
        var (cheap, dear) = (program.AddColumn(1, (row, 1)), program.AddColumn(3, (row, 1)));
        program.Solve();

        program.SetOpen(cheap, false);
        program.Solve();
        (program.Value(cheap), program.Value(dear), program.Objective).Should().Be((0, 1, 3));

        program.SetOpen(cheap, true);
        program.Solve();
        (program.Value(cheap), program.Value(dear), program.Objective).Should().Be((1, 0, 1));
    }

    [Fact]
    public void From_a_basis_that_was_kept_it_comes_to_the_same_end()
    {
        var program = new BoundedSimplex();
        var rows = Enumerable.Range(0, 6).Select(i => program.AddRow(i + 1, double.PositiveInfinity)).ToArray();
        for (var c = 0; c < 12; c++) program.AddColumn(c % 5 + 1, (rows[c % 6], 1), (rows[(c * 5 + 1) % 6], 2));
        program.Solve();
        var (best, (columns, slacks)) = (program.Objective, program.Basis());

        program.SetRow(rows[2], 40, 40);
        program.Solve();
        program.Objective.Should().BeGreaterThan(best);

        program.SetRow(rows[2], 3, double.PositiveInfinity);
        program.Restore(columns, slacks);
        var before = program.Steps;
        program.Solve();
        program.Objective.Should().BeApproximately(best, 1e-9);
        program.Steps.Should().Be(before, "it is the best basis already");
    }

    [Fact]
    public void What_has_no_solution_is_not_said_to_have_one()
    {
        var program = new BoundedSimplex();
        var row = program.AddRow(3, double.PositiveInfinity);
        program.AddColumn(1, (row, 1));
        program.AddRow(double.NegativeInfinity, 2, (0, 1));

        program.Solve().Should().BeFalse();
    }

    [Fact]
    public void After_one_that_has_no_solution_the_next_is_solved_at_the_costs_that_were_given()
    {
        var program = new BoundedSimplex();
        var (least, most, other) = (program.AddRow(3, double.PositiveInfinity), program.AddRow(double.NegativeInfinity, 2), program.AddRow(double.NegativeInfinity, 5));
        program.AddColumn(1, (least, 1), (most, 1));
        program.AddColumn(-1, (other, 1));
        program.Solve().Should().BeFalse();

        program.SetRow(least, 0, double.PositiveInfinity);
        program.SetRow(most, double.NegativeInfinity, 10);

        program.Solve().Should().BeTrue();
        program.Objective.Should().Be(-5);
        program.Dual(other).Should().Be(-1);
    }

    [Theory]
    [InlineData(1e6, 1e10)]
    [InlineData(1e7, 2e9)]
    [InlineData(1e7, 1e12)]
    public void Where_costs_are_large_and_going_unmet_is_dear_it_gets_to_the_end(double cost, double dear)
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var random = new Random(seed);
            var program = new BoundedSimplex();
            int[] rows = [.. Enumerable.Range(0, 20).Select(i => i < 12 ? program.AddRow(random.Next(1, 4), double.PositiveInfinity) : program.AddRow(double.NegativeInfinity, random.Next(1, 5)))];
            foreach (var row in rows) program.AddColumn(dear, (row, Array.IndexOf(rows, row) < 12 ? 1 : -1));
            for (var c = 0; c < 80; c++)
                program.AddColumn(Math.Round(cost * random.NextDouble()), [.. rows.Where(_ => random.Next(5) == 0).Select(row => (row, (double)random.Next(1, 3)))]);

            program.Solve().Should().BeTrue($"of {seed}");
            program.SetRow(rows[0], 5, 5);
            program.SetRow(rows[13], double.NegativeInfinity, 0);
            program.Solve().Should().BeTrue($"of {seed}, changed");
        }
    }

    [Fact]
    public void It_ends_where_it_is_told_to()
    {
        var program = new BoundedSimplex();
        var row = program.AddRow(1, double.PositiveInfinity);
        program.AddColumn(1, (row, 1));

        program.Solve(new StepLimit(0)).Should().BeFalse();
        program.Solve(new StepLimit(1_000, () => true)).Should().BeFalse();
        program.Solve(new StepLimit(1_000, () => false)).Should().BeTrue();
    }

    // Every row is broken at first and most columns cost nothing, so that hundreds of steps of the dual method gain nothing; costs are moved meanwhile, and are as they were in the end.
    [Fact]
    public void Where_most_costs_are_nothing_and_many_steps_are_to_be_made_it_ends_with_the_costs_that_were_given()
    {
        for (var seed = 0; seed < 6; seed++)
        {
            var random = new Random(seed);
            var (program, solver) = (new BoundedSimplex(), Solver.CreateSolver("GLOP"));
            var rows = Enumerable.Range(0, 320).Select(_ => random.Next(1, 4)).Select(least => (program.AddRow(least, least), solver.MakeConstraint(least, least))).ToArray();
            for (var c = 0; c < 1_200; c++)
            {
                var cost = random.Next(6) == 0 ? random.Next(1, 50) : 0;
                int[] of = c < 320 ? [c] : [.. Enumerable.Range(0, 3).Select(_ => random.Next(320)).Distinct()];
                program.AddColumn(c < 320 ? Dear : cost, [.. of.Select(row => (row, 1.0))]);
                var variable = solver.MakeNumVar(0, double.PositiveInfinity, "");
                solver.Objective().SetCoefficient(variable, c < 320 ? Dear : cost);
                foreach (var row in of) rows[row].Item2.SetCoefficient(variable, 1);
            }

            program.Solve().Should().BeTrue();

            solver.Solve().Should().Be(Solver.ResultStatus.OPTIMAL);
            program.Steps.Should().BeGreaterThan(300, "else no cost was moved");
            program.Objective.Should().BeApproximately(solver.Objective().Value(), 1e-5 * (1 + solver.Objective().Value()));
        }
    }

    [Fact]
    public void What_costs_less_than_nothing_without_end_is_not_said_to_have_a_least()
    {
        var program = new BoundedSimplex();
        var row = program.AddRow(1, double.PositiveInfinity);
        program.AddColumn(-1, (row, 1));

        program.Solve().Should().BeFalse();
    }

    // Rows and columns come, ends move, columns close and open, rows are replaced, and it goes back to bases that were kept; after each change the general solver begins from nothing.
    [Fact]
    public void However_it_is_changed_it_costs_what_a_general_solver_says_and_its_duals_prove_it() => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var changing = new Changing(new Random(seed));
            for (var change = 0; change < 25; change++)
            {
                changing.Change();
                changing.Program.Solve().Should().BeTrue($"of {seed} after {change}");
                var wanted = changing.Anew();
                changing.Program.Objective.Should().BeApproximately(wanted, 1e-5 * (1 + Math.Abs(wanted)), $"of {seed} after {change}");
                changing.Proven().Should().BeApproximately(wanted, 1e-4 * (1 + Math.Abs(wanted)), $"of {seed} after {change}");
            }
        },
        iter: 150);

    // Every row can go short and beyond at a high cost, so that there always is a solution.
    private sealed class Changing(Random random)
    {
        private readonly List<(double Least, double Most)> _rows = [];
        private readonly List<(double Cost, bool Open, Dictionary<int, double> Entries)> _columns = [];
        private readonly List<(int[] Columns, int[] Rows)> _kept = [];

        public BoundedSimplex Program { get; } = new();

        public void Change()
        {
            var what = _rows.Count < 3 ? 0 : random.Next(8);
            if (what == 0) AddRow();
            else if (what <= 2) AddColumn();
            else if (what == 3) Move(random.Next(_rows.Count));
            else if (what == 4) Open(random.Next(_columns.Count));
            else if (what == 5) Replace(random.Next(_rows.Count));
            else if (what == 6) _kept.Add(Program.Basis());
            else if (_kept.Count > 0) Restore(_kept[random.Next(_kept.Count)]);
        }

        // What a general solver says.
        public double Anew()
        {
            using var solver = Solver.CreateSolver("GLOP");
            var rows = _rows.Select(row => solver.MakeConstraint(row.Least, row.Most)).ToArray();
            foreach (var (cost, open, entries) in _columns)
            {
                var variable = solver.MakeNumVar(0, open ? double.PositiveInfinity : 0, "");
                solver.Objective().SetCoefficient(variable, cost);
                foreach (var (row, coefficient) in entries) rows[row].SetCoefficient(variable, coefficient);
            }

            solver.Objective().SetMinimization();
            solver.Solve().Should().Be(Solver.ResultStatus.OPTIMAL);
            return solver.Objective().Value();
        }

        // What the duals say that it costs at least, with no column open that would cost less than they say.
        public double Proven()
        {
            foreach (var (cost, open, entries) in _columns)
            {
                if (open) (cost - entries.Sum(entry => entry.Value * Program.Dual(entry.Key))).Should().BeGreaterThan(-1e-4);
            }

            return _rows.Select((row, i) => Math.Abs(Program.Dual(i)) < 1e-6 ? 0 : Program.Dual(i) * (Program.Dual(i) > 0 ? row.Least : row.Most)).Sum();
        }

        private void AddRow()
        {
            var (least, most) = Ends();
            var entries = Some(_columns.Count);
            var row = Program.AddRow(least, most, [.. entries.Select(entry => (entry.Key, entry.Value))]);
            foreach (var (column, coefficient) in entries) _columns[column].Entries[row] = coefficient;
            _rows.Add((least, most));
            AddColumn(Dear, new() { [row] = 1 });
            AddColumn(Dear, new() { [row] = -1 });
        }

        private void AddColumn() => AddColumn(random.Next(-2, 30), Some(_rows.Count));

        private void AddColumn(double cost, Dictionary<int, double> entries)
        {
            // Without an end, what costs less than nothing would.
            if (entries.Values.All(value => value <= 0) || cost < 0) cost = Math.Abs(cost);
            Program.AddColumn(cost, [.. entries.Select(entry => (entry.Key, entry.Value))]);
            _columns.Add((cost, true, entries));
        }

        private void Move(int row)
        {
            var (least, most) = _rows[row] = random.Next(4) == 0 ? (double.NegativeInfinity, double.PositiveInfinity) : Ends();
            Program.SetRow(row, least, most);
        }

        private void Open(int column)
        {
            var (cost, open, entries) = _columns[column];
            if (cost >= Dear) return;
            _columns[column] = (cost, !open, entries);
            Program.SetOpen(column, !open);
        }

        private void Replace(int row)
        {
            foreach (var column in _columns.Where(column => column.Cost < Dear)) column.Entries.Remove(row);
            foreach (var (column, coefficient) in Some(_columns.Count))
            {
                if (_columns[column].Cost < Dear) _columns[column].Entries[row] = coefficient;
            }

            var (least, most) = _rows[row] = Ends();
            Program.ReplaceRow(row, least, most, [.. _columns.Select((column, c) => (c, column)).Where(at => at.column.Entries.ContainsKey(row)).Select(at => (at.c, at.column.Entries[row]))]);
        }

        private void Restore((int[] Columns, int[] Rows) kept) => Program.Restore(kept.Columns, kept.Rows);

        private Dictionary<int, double> Some(int of) => Enumerable.Range(0, of).Where(_ => random.Next(3) == 0).ToDictionary(at => at, _ => (double)random.Next(1, 4));

        private (double Least, double Most) Ends() => random.Next(5) switch
        {
            0 => (random.Next(6), double.PositiveInfinity),
            1 => (double.NegativeInfinity, random.Next(1, 6)),
            2 => (random.Next(1, 6), random.Next(6, 9)),
            _ => random.Next(1, 6) is var exactly ? (exactly, exactly) : default,
        };
    }
}
