using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Form boards whose lengths have no step in common: every sum of them is a place on a bar. Invented.</summary>
public class KindTableTests
{
    private static readonly Effort Endless = new(MatchLimits.None);

    // Eight legs from 20 ft up, boards of 16 ft, stakes every foot; each leg begins and ends off its stakes by another bit.
    private static RunRequest Footing(Func<int, Length> before, Func<int, Length> beyond) => Request(Enumerable.Range(0, 8).Select(leg => Run(1, name: $"leg {leg}", leg: $"leg {leg}") with
    {
        Material = DrawnRuns.Board,
        Lines = new PatternLines(Length.Zero, In(12), In(12)),
        Joints = JointRule.OnLines,
        Stagger = Length.Zero,
        ShortestPiece = In(24),
        Courses = [new Course(1, In(9.25m), [new Span(before(leg), In(240 + 14 * leg) + beyond(leg))])],
    })) with
    {
        Pieces = [.. Enumerable.Range(1, 12).Select(n => new Piece { Code = Scene.CodeOf(n), Material = DrawnRuns.Board, Length = In(60 + 11 * n + n / 16m) })],
        Prices = new PriceBook([new StorePrice { Material = DrawnRuns.Board, Length = In(192), Price = new Money(2999) }]),
    };

    private static RunRequest Sixteenths => Footing(_ => Length.Zero, leg => In((2 * leg + 1) / 16m));

    // In 1/8128 in: sums of these meet hardly ever.
    private static RunRequest Uneven => Footing(leg => Length.FromUnits(5 + 53 * leg * leg * leg), leg => Length.FromUnits(1 + 37 * (1L << leg)));

    private static RunPart PartOf(RunRequest request) => RunPart.Of(RunProblem.Create(request).Value, DrawnRuns.Board);

    [Fact]
    public void A_table_that_would_grow_beyond_its_size_is_given_up()
    {
        var part = PartOf(Sixteenths with { Pieces = [] });
        var whole = KindTable.Of(part, new KindTable.Size(3000, int.MaxValue, long.MaxValue), Endless)!;
        whole.BarArcs.Should().BeGreaterThan(50_000);
        KindTable.Of(part, new KindTable.Size(3000, whole.BarArcs, long.MaxValue), Endless).Should().NotBeNull();
        KindTable.Of(part, new KindTable.Size(3000, whole.BarArcs - 1, long.MaxValue), Endless).Should().BeNull();
        KindTable.Of(part, new KindTable.Size(whole.Kinds.Count - 1, int.MaxValue, long.MaxValue), Endless).Should().BeNull();
        KindTable.Of(part, new KindTable.Size(3000, int.MaxValue, 20), Endless).Should().BeNull();
    }

    [Fact]
    public void It_is_given_up_too_once_the_search_is_over()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        KindTable.Of(PartOf(Sixteenths), KindTable.Size.Usual, new Effort(MatchLimits.None with { Cancel = cancel.Token })).Should().BeNull();
    }

    [Fact]
    public void Nothing_is_bounded_by_prices_that_were_not_reckoned_to_the_end()
    {
        using var cancel = new CancellationTokenSource();
        var part = PartOf(Sixteenths with { Runs = [Sixteenths.Runs[0]] });
        var table = KindTable.Of(part, KindTable.Size.Usual, Endless)!;
        cancel.Cancel();
        PairRelaxation.Solve(table, RunGoal.Spend, 0, new StockPrices(part), long.MaxValue, new Effort(MatchLimits.None with { Cancel = cancel.Token })).Should().BeNull();
    }

    [Fact]
    public void Boards_whose_lengths_have_no_step_in_common_are_laid_without_it()
    {
        var problem = RunProblem.Create(Uneven).Value;
        (KindTable.Of(RunPart.Of(problem, DrawnRuns.Board), KindTable.Size.Usual, Endless) is null).Should().BeTrue();
        var plan = RunFiller.Fill(problem, new MatchLimits { Time = TimeSpan.FromSeconds(10), Clock = TimeProvider.System });
        RunChecker.Faults(problem, plan).Should().BeEmpty();
        plan.Courses.Should().HaveCount(8).And.NotContain(course => course.Unfilled);
        plan.Tiers.Spend.Bound.Should().BeInRange(1, plan.Tiers.Spend.Value);
    }

    [Fact]
    public void Layouts_found_again_are_kept_once_and_the_oldest_is_forgotten()
    {
        var known = new KnownLayouts(3);
        foreach (var arc in new[] { 1, 2, 1, 3, 2, 2, 4 }) known.Add(new PairLayout([arc], [], [0], 0));
        known.All.Select(layout => layout.Lower[0]).Should().Equal(3, 2, 4);
    }
}
