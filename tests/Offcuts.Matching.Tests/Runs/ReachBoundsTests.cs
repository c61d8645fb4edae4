using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How many courses must stay open because stock does not reach.</summary>
public class ReachBoundsTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Held against the best filling, which is decided by a method that knows none of this. What is said beside another filling holds as far as that one is as good below.
    [Fact]
    public void They_are_never_above_what_the_best_filling_leaves_open_and_mostly_meet_it()
    {
        var (compared, met, wrong) = (0, 0, new List<string>());
        foreach (var seed in Enumerable.Range(0, 60))
        {
            var problem = RunProblem.Create(DrawnRuns.DrawShort(seed)).Value;
            var part = RunPart.Of(problem, problem.Materials[0]);
            if (part.Open || !part.Rests || part.Bars.Length == 0) continue;
            if (ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not ({ } best, true) || !best.Filled.Contains(false)) continue;
            var (levels, other) = (part.Levels.Length, new LayingSearch(part, new StockPrices(part)).First(NoLimit));
            foreach (var filling in new[] { best, other, Filling.Empty(part) })
            {
                var bounds = ReachBounds.Of(part, filling, NoLimit);
                for (var level = 0; level < levels && filling.Figures[..level].SequenceEqual(best.Figures[..level]); level++)
                    if (bounds[level] > best.Figures[level]) wrong.Add($"seed {seed}, level {level}: {best.Figures[level]} open, bound {bounds[level]}");
            }

            compared++;
            var first = Array.FindIndex(best.Figures, open => open > 0);
            if (ReachBounds.Of(part, best, NoLimit)[first] == best.Figures[first]) met++;
        }

        output.WriteLine($"{compared} compared, {met} met");
        wrong.Should().BeEmpty();
        compared.Should().BeGreaterThan(15);
        met.Should().BeGreaterThan(compared / 2);
    }

    // Three courses of 60 in, and 130 in of stock that covers two of them, each 40 + 20: so one stays open, and above it nothing is said.
    [Fact]
    public void Where_stock_reaches_for_two_of_three_courses_one_stays_open_and_nothing_is_said_above_it()
    {
        var part = Short([Run(60, 2, name: "a"), Run(60, 2, name: "b"), Run(60, 2, name: "c")], 40, 20, 48, 20);

        ReachBounds.Of(part, Filling.Empty(part), NoLimit).Should().Equal(1, 0);
    }

    // Each of two courses of 60 in lies on one of 40: the lower ones take both offcuts of 40, and 60 in are left.
    [Fact]
    public void What_is_covered_below_is_asked_for_as_well()
    {
        static Run Face(string name) => Run(60, 2, name: name) with { Courses = [Run(40).Courses[0], Run(60, 2).Courses[1]] };
        var part = Short([Face("a"), Face("b")], 40, 40, 48, 12);
        var below = new Filling(part, [], [.. part.Rows.Select(row => row.Number == 1)]);

        ReachBounds.Of(part, below, NoLimit).Should().Equal(0, 1);
    }

    [Fact]
    public void A_course_with_a_gap_is_open_besides()
    {
        var part = Short([Run(1, name: "a").Over((0, 4), (10, 50)), Run(60, name: "b")], 40);

        ReachBounds.Of(part, Filling.Empty(part), NoLimit).Should().Equal(2);
    }

    // Of two courses of 60 in stock covers one; beside them a third has nothing but a gap, which is open besides and frees nothing.
    [Fact]
    public void A_course_in_which_nothing_can_be_laid_is_none_of_those_that_may_be_left()
    {
        var part = Short([Run(1, name: "a").Over((0, 4)), Run(60, name: "b"), Run(60, name: "c")], 40, 20);

        ReachBounds.Of(part, Filling.Empty(part), NoLimit).Should().Equal(2);
    }

    [Fact]
    public void Where_stock_reaches_for_all_no_course_must_stay_open_whatever_a_filling_leaves()
    {
        var part = Short([Run(60, 2, name: "a")], 40, 20, 48, 36);

        ReachBounds.Of(part, Filling.Empty(part), NoLimit).Should().Equal(0, 0);
    }

    [Fact]
    public void Where_all_is_covered_or_time_is_over_nothing_is_said()
    {
        var part = Short([Run(60, name: "a"), Run(60, name: "b")], 40, 20);

        ReachBounds.Of(part, Filling.Covered(part), NoLimit).Should().Equal(0);
        ReachBounds.Of(part, Filling.Empty(part), new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) })).Should().Equal(0);
    }

    private static RunPart Short(Run[] runs, params int[] offcuts) =>
        RunPart.Of(RunProblem.Create(Request(runs, [.. offcuts.Select((length, n) => Offcut(n + 1, length))]) with { Buy = false }).Value, Foam);
}
