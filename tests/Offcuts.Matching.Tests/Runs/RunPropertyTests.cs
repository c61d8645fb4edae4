using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What must hold of every filling, on drawn walls.</summary>
public class RunPropertyTests
{
    private static IEnumerable<int> Seeds => Enumerable.Range(5000, 25);

    [Fact]
    public void More_stock_never_leaves_more_unfilled_nor_spends_more_for_the_same()
    {
        foreach (var seed in Seeds)
        {
            var request = DrawnRuns.Draw(seed);
            var before = Figures(RunScene.Fill(request));
            var one = new Piece { Code = Scene.CodeOf(99), Material = request.Runs[0].Material, Length = DrawnRuns.H(17), FirstLine = request.Runs[0].Material is FoamPanel ? Length.Zero : null };
            var after = Figures(RunScene.Fill(request with { Pieces = [.. request.Pieces, one] }));
            Compare(after, before).Should().BeLessThanOrEqualTo(0, $"of seed {seed} with one piece more");
        }
    }

    [Fact]
    public void All_lengths_twice_as_long_change_nothing()
    {
        foreach (var seed in Seeds)
        {
            var request = DrawnRuns.Draw(seed);
            Tiers(RunScene.Fill(Twice(request))).Should().Equal(Tiers(RunScene.Fill(request)), $"of seed {seed}");
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void A_limit_of_time_hands_back_a_whole_checked_plan(double seconds)
    {
        var problem = RunProblem.Create(Request([Run(432, 6), Run(419, 6, name: "north inside")], [.. Enumerable.Range(1, 20).Select(n => Offcut(n, 10 + 2 * (n % 16)))])).Value;
        var plan = RunFiller.Fill(problem, new MatchLimits { Time = TimeSpan.FromSeconds(seconds), Clock = TimeProvider.System });
        RunChecker.Faults(problem, plan).Should().BeEmpty();
        plan.Courses.Should().HaveCount(12).And.NotContain(course => course.Unfilled);
        plan.Tiers.Spend.Bound.Should().BeLessThanOrEqualTo(plan.Tiers.Spend.Value);
    }

    [Fact]
    public void Pieces_that_may_meet_anywhere_need_a_shortest_length()
    {
        var run = Run(96) with { Material = DrawnRuns.Board, Joints = JointRule.Anywhere, ShortestPiece = Length.Zero, Courses = [new Course(1, In(9.25m), [new Span(Length.Zero, In(96))])] };
        RunProblem.Create(Request([run])).Faults.Select(fault => fault.Sentence).Should().Equal("north outside: where pieces may meet anywhere a shortest piece is needed, longer than nothing");
    }

    [Fact]
    public void What_has_no_price_is_said_to_have_none_and_all_that_cannot_be_laid_is_proven()
    {
        // Two courses of 8 ft and 5 ft of offcuts: not even one course, whatever is laid where.
        var plan = RunScene.Fill(Request([Run(96, 2)], Offcut(1, 30), Offcut(2, 30)) with { Prices = PriceBook.Empty });
        plan.Tiers.UnfilledInAll.Should().Be(new Figure(2, 2));
        plan.Unpriced.Should().Equal(Foam.Name);
        plan.Courses[0].Reason.Should().Be($"what is left of {Foam.Name} does not reach, and it has no price, so none can be bought");
    }

    private static long[] Tiers(RunPlan plan) => [.. Figures(plan), plan.Tiers.ExtraTies.Value, plan.Tiers.Joints.Value, plan.Tiers.SawCuts.Value];

    private static long[] Figures(RunPlan plan) => [.. plan.Tiers.Unfilled.Select(level => level.Unfilled.Value), plan.Tiers.Spend.Value];

    private static int Compare(long[] a, long[] b) => a.Zip(b, (x, y) => x.CompareTo(y)).FirstOrDefault(one => one != 0);

    private static RunRequest Twice(RunRequest request) => request with
    {
        Runs = [.. request.Runs.Select(run => run with
        {
            Lines = new PatternLines(run.Lines.FirstTie * 2, run.Lines.Interval * 2, run.Lines.TieSpacing * 2),
            Stagger = run.Stagger * 2,
            ShortestPiece = run.ShortestPiece * 2,
            Courses = [.. run.Courses.Select(course => course with { Stretches = [.. course.Stretches.Select(Twice)] })],
        })],
        Pieces = [.. request.Pieces.Select(piece => piece with
        {
            Length = piece.Length * 2,
            FirstLine = piece.FirstLine is { } line ? line * 2 : null,
            TrimLeft = piece.TrimLeft * 2,
            BadSpots = [.. piece.BadSpots.Select(Twice)],
        })],
        Prices = new PriceBook(request.Prices.All.Select(price => price with { Length = price.Length * 2 })),
        Settings = request.Settings with { KerfElsewhere = request.Settings.KerfElsewhere * 2, KeepElsewhere = request.Settings.KeepElsewhere * 2 },
    };

    private static Span Twice(Span span) => new(span.Start * 2, span.End * 2);
}
