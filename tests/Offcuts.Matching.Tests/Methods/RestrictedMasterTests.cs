using Google.OrTools.LinearSolver;
using Offcuts.Matching.Methods;

namespace Offcuts.Matching.Tests.Methods;

/// <summary>The relaxation over the patterns known so far, by hand and held against a general solver that begins anew each time.</summary>
public sealed class RestrictedMasterTests
{
    private const double Dear = 100_000;

    private static readonly Effort None = new(MatchLimits.None);

    [Fact]
    public void It_costs_what_a_general_solver_says_however_patterns_come_and_says_how_often_each_is_used()
    {
        var (compared, unmet) = (0, 0);
        foreach (var (drawn, random) in DrawnTier.Some(8_000, 60).Select((drawn, i) => (drawn, new Random(i))))
        {
            var tier = Narrower(drawn.Tier, random);
            var master = new RestrictedMaster(tier, Dear, loosening: random.Next(2) == 0 ? random : null);
            using var other = new General(tier);
            var coming = drawn.Patterns.SelectMany(patterns => patterns).OrderBy(_ => random.Next()).ToArray();
            for (var from = 0; from < coming.Length; from += coming.Length / 4 + 1)
            {
                foreach (var pattern in coming.Skip(from).Take(coming.Length / 4 + 1))
                {
                    if (master.Add(pattern)) other.Add(pattern);
                }

                var duals = master.Solve(None)!;
                var (cost, lacking) = other.Solve();
                compared++;
                master.Objective.Should().BeApproximately(cost, 1e-6 * (1 + Math.Abs(cost)), $"of {drawn.Name}");
                if (lacking < 1e-6) Bounds.Lagrangian(tier, duals, new PricingKnapsack(tier).Price(duals)).Should().BeLessThanOrEqualTo((long)Math.Ceiling((cost + 1e-5 * Math.Abs(cost) + 1e-3) * tier.Scale), $"of {drawn.Name}");
                other.Keeps([.. master.Solution], lacking).Should().BeTrue($"of {drawn.Name}");
                if (lacking > 1e-6) unmet++;
            }
        }

        compared.Should().BeGreaterThan(300);
        unmet.Should().BeGreaterThan(30, "else nothing went unmet");
    }

    [Fact]
    public void Costs_that_are_changed_by_next_to_nothing_make_no_relaxation_dearer()
    {
        foreach (var (drawn, random) in DrawnTier.Some(8_100, 30).Select((drawn, i) => (drawn, new Random(i))))
        {
            var (plain, noisy) = (new RestrictedMaster(drawn.Tier, Dear), new RestrictedMaster(drawn.Tier, Dear, random));
            foreach (var pattern in drawn.Patterns.SelectMany(patterns => patterns)) (plain.Add(pattern), noisy.Add(pattern)).Should().Be((drawn.Tier.SupplyCount[pattern.Supply] > 0, drawn.Tier.SupplyCount[pattern.Supply] > 0));
            plain.Solve(None);
            noisy.Solve(None);

            noisy.Objective.Should().BeInRange(plain.Objective - 1e-2 - 1e-6 * Math.Abs(plain.Objective), plain.Objective + 1e-6 * (1 + Math.Abs(plain.Objective)), $"of {drawn.Name}");
        }
    }

    // Whoever looks at how many boards are bought must see a whole number where it is one, although rows are loosened meanwhile.
    [Fact]
    public void What_is_used_a_whole_number_of_times_is_said_to_be_whole()
    {
        var tier = Tier.Spend(Plan(7));
        var master = new RestrictedMaster(tier);
        master.Add(new Pattern(tier.Problem, 0, [new Take(0, 1)]));

        master.Solve(None).Should().NotBeNull();

        master.Solution.Should().ContainSingle().Which.Times.Should().BeApproximately(7, 1e-9);
        master.Objective.Should().BeApproximately(2_800, 1e-9);
    }

    [Fact]
    public void A_pattern_comes_in_once_and_patterns_stay_in_the_order_in_which_they_came()
    {
        var tier = Tier.Spend(Plan(4));
        var master = new RestrictedMaster(tier);
        Pattern Of(int cuts) => new(tier.Problem, 0, [new Take(0, cuts)]);

        (master.Add(Of(2)), master.Add(Of(1)), master.Add(Of(2))).Should().Be((true, true, false));

        master.Patterns.Should().Equal(Of(2), Of(1));
    }

    // Rows that no pattern meets make their duals grow until the bound is above any plan.
    [Fact]
    public void What_no_pattern_meets_grows_dear_without_end_being_waited_for()
    {
        var tier = Tier.Spend(Plan(4));
        var (helped, left) = (new RestrictedMaster(tier), new RestrictedMaster(tier, Dear));

        (helped.Solve(None), left.Solve(None)).Should().NotBe((null, null));

        left.Objective.Should().BeApproximately(4 * Dear, 1e-3);
        helped.Objective.Should().BeApproximately(4 * Diving.Dear(tier) * Math.Pow(8, 5), 1, "it is raised eightfold, five times in all");
        helped.Solve(None);
        helped.Objective.Should().BeApproximately(4 * Diving.Dear(tier) * Math.Pow(8, 5), 1);
    }

    // New boards of 8 ft at 4.00, each for one or two cuts.
    private static MaterialPlan Plan(int cuts)
    {
        var problem = Problem.Create(Scene.Request([], [Scene.Cut("40\"", cuts)], Scene.Price("8'", 400))).Value;
        return MaterialSolver.First(MaterialProblem.Of(problem, problem.Materials[0], out _), 1).Plan;
    }

    // Now and then some supply must be used.
    private static Tier Narrower(Tier tier, Random random)
    {
        if (random.Next(3) > 0) return tier;
        int[] least = [.. tier.SupplyCount.Select(count => random.Next(4) == 0 ? Math.Min(1, count) : 0)];
        return tier.Within(least, tier.SupplyCount);
    }

    // The rows of a tier once more, in another solver.
    private sealed class General : IDisposable
    {
        private const double Near = 1e-5;

        private readonly Tier _tier;
        private readonly Solver _solver = Solver.CreateSolver("GLOP");
        private readonly List<(Constraint Row, Func<Pattern, double> Of)> _rows = [];
        private readonly List<Variable> _unmet = [];
        private readonly List<Variable> _left = [];

        public General(Tier tier)
        {
            _tier = tier;
            for (var d = 0; d < tier.DemandCount.Length; d++)
            {
                if (!tier.Active[d] || tier.DemandCount[d] == 0) continue;
                var demand = d;
                var row = Row(tier.DemandCount[d], tier.Covering ? double.PositiveInfinity : tier.DemandCount[d], pattern => pattern.Takes.Where(take => take.Demand == demand).Sum(take => take.Count));
                Unmet(row);
                if (tier.MostLeft[d] > 0) Column(_left, tier.LeftCost[d], row);
            }

            for (var s = 0; s < tier.SupplyCount.Length; s++)
            {
                var supply = s;
                Row(double.NegativeInfinity, tier.SupplyCount[s], pattern => pattern.Supply == supply ? 1 : 0);
                if (tier.SupplyLeast[s] > 0) Unmet(Row(tier.SupplyLeast[s], double.PositiveInfinity, pattern => pattern.Supply == supply ? 1 : 0));
            }

            if (tier.SpendCap is { } spend) Row(double.NegativeInfinity, spend, pattern => pattern.Price);
            if (tier.RipCap is { } rips) Row(double.NegativeInfinity, rips, pattern => pattern.Rips);
            foreach (var (stage, cap) in tier.LeftCap) Capped(stage, cap);
        }

        public void Add(Pattern pattern)
        {
            var column = _solver.MakeNumVar(0, double.PositiveInfinity, "");
            _solver.Objective().SetCoefficient(column, _tier.Cost(pattern));
            foreach (var (row, of) in _rows) row.SetCoefficient(column, row.GetCoefficient(column) + of(pattern));
        }

        public (double Cost, double Lacking) Solve()
        {
            _solver.Solve().Should().Be(Solver.ResultStatus.OPTIMAL);
            return (_solver.Objective().Value(), _unmet.Sum(column => column.SolutionValue()));
        }

        // Without what is left unfilled and goes unmet, only rows with an upper end can be looked at.
        public bool Keeps((Pattern Pattern, double Times)[] solution, double lacking) => _rows.All(row =>
            solution.Sum(used => used.Times * row.Of(used.Pattern)) is var sum && sum <= row.Row.Ub() + Near && (lacking > Near || _left.Count > 0 || sum >= row.Row.Lb() - Near));

        public void Dispose() => _solver.Dispose();

        private Constraint Row(double least, double most, Func<Pattern, double> of)
        {
            _rows.Add((_solver.MakeConstraint(least, most), of));
            return _rows[^1].Row;
        }

        private void Unmet(Constraint row) => Column(_unmet, Dear, row);

        private void Column(List<Variable> to, double cost, Constraint row)
        {
            var column = _solver.MakeNumVar(0, double.PositiveInfinity, "");
            _solver.Objective().SetCoefficient(column, cost);
            row.SetCoefficient(column, 1);
            to.Add(column);
        }

        // Each cut that may be left unfilled stands in the row of its stage too.
        private void Capped(int stage, long cap)
        {
            var row = _solver.MakeConstraint(double.NegativeInfinity, cap);
            var at = 0;
            for (var d = 0; d < _tier.DemandCount.Length; d++)
            {
                if (!_tier.Active[d] || _tier.DemandCount[d] == 0 || _tier.MostLeft[d] == 0) continue;
                if (_tier.Problem.Demands[d].Stage == stage) row.SetCoefficient(_left[at], 1);
                at++;
            }
        }
    }
}
