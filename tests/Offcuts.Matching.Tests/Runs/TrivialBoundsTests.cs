using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What is said of every filling without a program, each rule with its sum beside it.</summary>
public class TrivialBoundsTests
{
    // 30 and 40 in are 70: the third course, of 50, stays open. An inch less, and of the two only one is covered.
    [Theory]
    [InlineData(30, 1)]
    [InlineData(29, 2)]
    public void Of_the_courses_of_a_level_the_shortest_are_taken_as_covered_as_far_as_all_stock_together_reaches(int offcut, int open)
    {
        var part = Short([Run(50, name: "a"), Run(30, name: "b"), Run(40, name: "c")], offcut, 40);

        TrivialBounds.Of(part, Filling.Empty(part))[0].Should().Be(open);
    }

    // Two panels of 48 in are in the store, and they are as good as two offcuts; a course of two stretches takes both of them.
    [Fact]
    public void Of_panels_all_that_the_store_has_count_and_of_a_course_all_its_stretches()
    {
        var request = Request([Run(1, name: "a").Over((0, 20), (30, 50)), Run(56, name: "b")]);

        foreach (var (limit, open) in new[] { (2, 0), (1, 1) })
        {
            var part = RunPart.Of(RunProblem.Create(request with { Prices = new PriceBook([Panel(limit: limit)]) }).Value, Foam);
            TrivialBounds.Of(part, Filling.Empty(part))[0].Should().Be(open);
        }

        var none = Short([Run(60, name: "a"), Run(30, name: "b")]);
        TrivialBounds.Of(none, Filling.Empty(none))[..1].Should().Equal(2);
        TrivialBounds.LeastPieces(none, none.Rows[0]).Should().Be(1, "where there is nothing to cut it from, no joint is claimed");
    }

    // Of the three courses of a level one holds nothing that could be laid, one of 40 in is covered, one of 50 is open: of 140 in 100 are left for 90.
    [Fact]
    public void A_course_in_which_nothing_can_be_laid_takes_nothing_from_those_above()
    {
        var (a, b) = (Run(1, name: "a").Over((0, 4)), Run(50, name: "b"));
        var c = Run(40, 2, name: "c") with { Courses = [Run(40).Courses[0], Run(90, 2).Courses[1]] };
        var part = Short([a, b, c], 70, 70);

        TrivialBounds.Of(part, Covering(part, row => row.Run != 1))[1].Should().Be(0);
    }

    // 80 in are two courses of 40, one on the other, and 79 in are one.
    [Theory]
    [InlineData(40, 0)]
    [InlineData(39, 1)]
    public void What_lies_below_is_gone_for_the_courses_above(int offcut, int open)
    {
        var part = Short([Run(40, courses: 2)], offcut, 40);

        TrivialBounds.Of(part, Covering(part, row => row.Number == 1))[1].Should().Be(open);
    }

    // Of the two courses of a level one is covered, and it may be the shorter one: 40 of 100 in are gone, and 60 are left for the one of 60 that lies on them.
    [Fact]
    public void Of_the_courses_covered_below_the_shortest_are_taken_to_be_those()
    {
        var runs = new[] { Run(50, name: "a"), Run(40, courses: 2, name: "b") with { Courses = [new Course(1, In(12), [new Span(Length.Zero, In(40))]), new Course(2, In(12), [new Span(Length.Zero, In(60))])] } };
        var part = Short(runs, 48, 52);

        TrivialBounds.Of(part, Covering(part, row => row is { Number: 1, Run: 0 }))[1].Should().Be(0);
    }

    // Of 400 in there is enough for all. What lies on an open course stays open too; but the open one may be the one that nothing lies on.
    [Theory]
    [InlineData(2, 2, 1, 1)]
    [InlineData(2, 1, 1, 0)]
    [InlineData(2, 1, 2, 1)]
    [InlineData(2, 2, 2, 2)]
    public void So_many_as_are_open_below_are_open_above_but_for_those_that_nothing_lies_on(int coursesOfA, int coursesOfB, int openBelow, int openAbove)
    {
        var part = Short([Run(40, coursesOfA, name: "a"), Run(40, coursesOfB, name: "b")], [.. Enumerable.Repeat(40, 10)]);
        var open = part.Rows.Where(row => row.Number == 1).Take(openBelow).ToHashSet();

        TrivialBounds.Of(part, Covering(part, row => !open.Contains(row)))[1].Should().Be(openAbove);
    }

    [Fact]
    public void A_course_with_a_stretch_shorter_than_any_piece_counts_as_open_once_whatever_is_laid()
    {
        var part = Short([Run(1, name: "a").Over((0, 4), (10, 50), (60, 64)), Run(40, name: "b")], 40, 40, 40);

        TrivialBounds.Of(part, Covering(part, _ => true))[0].Should().Be(1);
    }

    // 96 in are two panels of 48 and a joint, an inch more three and two; of two stretches each takes a piece without a joint.
    [Fact]
    public void A_stretch_takes_as_many_pieces_as_the_longest_goes_into_it_rounded_up()
    {
        Joints(Run(96)).Should().Be(1);
        Joints(Run(97)).Should().Be(2);
        Joints(Run(1).Over((0, 96), (120, 160))).Should().Be(1);
        Joints(Run(96), Run(97, name: "north inside")).Should().Be(3);
        Joints(Run(97, courses: 3)).Should().Be(6);
    }

    // Where one of two stays open, it may be the one with more joints.
    [Fact]
    public void Of_the_courses_that_are_covered_those_with_fewest_joints_are_taken()
    {
        var part = Part([Run(144, name: "a"), Run(96, name: "b")]);

        TrivialBounds.Of(part, Covering(part, row => row.Run == 0))[^2].Should().Be(1);
        TrivialBounds.Of(part, Covering(part, _ => false))[^2].Should().Be(0);
    }

    // Panels a foot high: a course of half of that is sawn once a piece.
    [Fact]
    public void Every_piece_of_a_low_course_takes_a_saw_cut()
    {
        var run = Run(97, courses: 2) with { Courses = [.. Run(97, courses: 2).Courses.Select((course, c) => c == 1 ? course with { Height = In(6) } : course)] };
        var part = Part([run]);

        TrivialBounds.Of(part, Covering(part, _ => true))[^1].Should().Be(3);
        var both = Part([run with { Courses = [.. run.Courses.Select(course => course with { Height = In(6) })] }]);
        TrivialBounds.Of(both, Covering(both, _ => true))[^1].Should().Be(6);
    }

    // What is bought brings no more value into the yard than so many panels hold as the spend pays for, and as the store has.
    [Fact]
    public void Value_is_gained_from_no_more_panels_than_the_spend_pays_for()
    {
        long Least(int limit, int bought, params StorePrice[] others)
        {
            var part = RunPart.Of(RunProblem.Create(Request([Run(432)]) with { Prices = new PriceBook([Panel(limit: limit), .. others]) }).Value, Foam);
            var pattern = BarPattern.Of(part, new View(part.Bars.Single(bar => bar.Length == In(48).Units), Mirrored: false), [(new Kind(In(20).Units, Ends.Free), Ends.Free)])!;
            return TrivialBounds.Of(part, new Filling(part, [.. Enumerable.Repeat(new UsedBar(pattern, []), bought)], [false]))[^4];
        }

        var one = Least(9, 1);
        one.Should().BeLessThanOrEqualTo(-1800, "all of a panel may be kept");
        (Least(9, 0), Least(9, 2), Least(9, 5), Least(3, 5)).Should().Be((0, 2 * one, 5 * one, 3 * one));
        Least(9, 2, Panel(1800) with { Length = In(46) }).Should().BeLessThan(3 * one, "it might have gone into either length");
    }

    private static long Joints(params Run[] runs)
    {
        var part = Part(runs);
        return TrivialBounds.Of(part, Covering(part, _ => true))[^2];
    }

    private static RunPart Part(Run[] runs) => RunPart.Of(RunProblem.Create(Request(runs)).Value, Foam);

    private static RunPart Short(Run[] runs, params int[] offcuts) =>
        RunPart.Of(RunProblem.Create(Request(runs, [.. offcuts.Select((length, n) => Offcut(n + 1, length))]) with { Buy = false }).Value, Foam);

    // Nothing laid, but these courses taken as covered.
    private static Filling Covering(RunPart part, Func<Row, bool> covered) => new(part, [], [.. part.Rows.Select(covered)]);
}
