using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;
using PartOutcome = Offcuts.Matching.Runs.PartOutcome;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What becomes of bounds where two searches have each their say, and where the spend is not known to be the least.</summary>
public class PartOutcomeTests
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Two courses of 52 in of pieces of 26 at least, each piece from a panel of its own: four panels, though by their length they might be three.
    private static readonly RunPart Part = RunPart.Of(RunProblem.Create(Request([Run(52, 2, stagger: 0) with { ShortestPiece = In(26) }])).Value, Foam);
    private static readonly Filling Best = new LayingSearch(Part, StockRelaxation.Least(Part)).First(NoLimit);
    private static readonly int Spend = Part.Levels.Length;

    // Another panel of which nothing is laid: dearer by 18.00.
    private static readonly Filling Dearer = new(Part, [.. Best.Bars, new UsedBar(BarPattern.Of(Part, new View(Part.Bars[0], Mirrored: false), [(new Kind(In(26).Units, Ends.Both), Ends.Both)])!, [])], Best.Filled);

    [Fact]
    public void The_better_of_two_fillings_is_kept_whichever_search_found_it()
    {
        Of(Best).Beside(Of(Dearer)).Filling.Should().BeSameAs(Best);
        Of(Dearer).Beside(Of(Best)).Filling.Should().BeSameAs(Best);
    }

    // What is said of the value beside 90.00 says nothing of it beside 72.00.
    [Fact]
    public void A_bound_of_the_other_one_holds_as_far_as_the_figures_before_are_the_same()
    {
        long[] low = [.. Best.Figures.Select(_ => -9000L)], high = [.. Best.Figures[..Spend], 7100, .. Best.Figures[(Spend + 1)..].Select(figure => figure - 1)];

        new PartOutcome(Best, low).Beside(new PartOutcome(Dearer, high)).Bounds.Should().Equal([.. Best.Figures[..Spend], 7100, -9000, -9000, -9000, -9000]);
        new PartOutcome(Best, low).Beside(new PartOutcome(Best, high)).Bounds.Should().Equal(high);
        new PartOutcome(Best, high).Beside(new PartOutcome(Best, low)).Bounds.Should().Equal(high);
    }

    [Fact]
    public void A_bound_above_what_is_found_is_a_fault_of_the_program_and_is_not_passed_over()
    {
        long[] above = [.. Best.Figures[..Spend], 7201, -9000, -9000, -9000, -9000];

        var told = () => Of(Best).Beside(new PartOutcome(Dearer, above));

        told.Should().Throw<InvalidOperationException>();
    }

    [Fact]
    public void All_tiers_are_proven_where_each_is()
    {
        PartOutcome.Best(Best).Proven.Should().BeTrue();
        for (var tier = 0; tier < Best.Figures.Length; tier++)
            new PartOutcome(Best, [.. Best.Figures.Select((figure, t) => t == tier ? figure - 1 : figure)]).Proven.Should().BeFalse($"tier {tier} is not");
    }

    // The tiers after the spend are decided among fillings that spend as much; while less might be spent that proves nothing.
    [Fact]
    public void Where_less_might_be_spent_nothing_after_the_spend_is_decided()
    {
        var known = new KnownBounds(Part, null, StockRelaxation.Least(Part), Best, NoLimit);
        known.Of(Best).Figure(Spend).Proven.Should().BeFalse();

        PartDecision.Decided(Part, known, Best, NoLimit).Should().BeEquivalentTo(known.Of(Best));

        known.AtLeast(RunGoal.Spend, Best, Best.Figures[Spend]);
        PartDecision.Decided(Part, known, Best, NoLimit).Proven.Should().BeTrue("now nothing less can be spent");
    }

    // Held against the best filling, which is decided without knowing any other. The first one is laid as if stock were worth nothing, so that mostly too much value is given up.
    [Fact]
    public void What_is_decided_beside_a_filling_that_spends_the_least_is_the_best_there_is()
    {
        var (decided, better) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 110))
        {
            var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
            var part = RunPart.Of(problem, problem.Materials[0]);
            if (part.Open || part.Bars.Length == 0 || ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not ({ } best, true) || best.Filled.Contains(false)) continue;
            var first = new LayingSearch(part, new StockPrices(part)).First(NoLimit);
            if (first.Filled.Contains(false) || first.Figures[part.Levels.Length] != best.Figures[part.Levels.Length]) continue;
            var known = new KnownBounds(part, null, StockRelaxation.Least(part), first, NoLimit);
            known.AtLeast(RunGoal.Spend, first, best.Figures[part.Levels.Length]);

            var outcome = PartDecision.Decided(part, known, first, NoLimit);

            outcome.Proven.Should().BeTrue("seed {0} is small", seed);
            outcome.Filling.Figures.Should().Equal(best.Figures, "of seed {0}", seed);
            decided++;
            if (best.CompareTo(first) < 0) better++;
        }

        decided.Should().BeGreaterThan(15);
        better.Should().BeGreaterThan(5);
    }

    private static PartOutcome Of(Filling filling) => new(filling, [.. filling.Figures.Select(_ => -9000L)]);
}
