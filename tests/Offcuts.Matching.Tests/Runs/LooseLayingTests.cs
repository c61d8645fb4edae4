using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>What may lie instead of a few pieces: 60 in from panels of 48, lines every 2 in, nothing shorter than 8.</summary>
public class LooseLayingTests
{
    // A joint may lie anywhere from 12 to 48 in, on a line, so that both pieces come from a panel.
    [Theory]
    [InlineData(12, true)]
    [InlineData(48, true)]
    [InlineData(30, true)]
    [InlineData(31, false)]
    [InlineData(10, false)]
    [InlineData(50, false)]
    public void Pieces_lie_from_line_to_line_and_are_cut_from_what_there_is(int joint, bool lies)
    {
        var laying = Loose(Run(60), [20]);

        Lies(laying, 0, joint).Should().Be(lies);
    }

    [Fact]
    public void No_piece_is_shorter_than_the_shortest()
    {
        Lies(Loose(Run(52), [20]), 0, 8).Should().BeTrue();
        Lies(Loose(Run(52), [20]), 0, 6).Should().BeFalse();
        Lies(Loose(Run(52), [20]), 0, 44).Should().BeTrue();
        Lies(Loose(Run(52), [20]), 0, 46).Should().BeFalse();
    }

    [Fact]
    public void What_lies_in_a_window_fills_it_to_its_end()
    {
        var laying = Loose(Run(60), [20]);

        laying.Try([new Window(laying.Lanes[0], 0, 2, [In(20).Units, In(38).Units])]).Should().BeNull();
        laying.Try([new Window(laying.Lanes[0], 0, 2, [In(20).Units, In(42).Units])]).Should().BeNull();
    }

    // A joint at 30 in of a course that stands, below or above, bars what is nearer than a foot.
    [Theory]
    [InlineData(2)]
    [InlineData(0)]
    public void No_joint_lies_nearer_than_the_stagger_to_one_of_a_course_that_stands(int number)
    {
        var run = Run(60) with { Standing = [new StandingCourse(number, [In(30)])] };

        foreach (var joint in new[] { 12, 18, 42, 48 }) Lies(Loose(run, [16]), 0, joint).Should().BeTrue($"at {joint}");
        foreach (var joint in new[] { 20, 30, 40 }) Lies(Loose(run, [16]), 0, joint).Should().BeFalse($"at {joint}");
    }

    [Fact]
    public void No_joint_lies_nearer_than_the_stagger_to_one_of_the_courses_below_and_above()
    {
        foreach (var joint in new[] { 12, 18 }) Lies(Loose(Run(60, 3), [44, 16, 30]), 1, joint).Should().BeTrue($"at {joint}");
        foreach (var joint in new[] { 20, 32, 34, 40 }) Lies(Loose(Run(60, 3), [44, 16, 30]), 1, joint).Should().BeFalse($"at {joint}, a foot from either");
        Lies(Loose(Run(60, 3), [44, 16, 44]), 1, 32).Should().BeTrue();
        Lies(Loose(Run(60, 3) with { Stagger = In(0) }, [44, 16, 30]), 1, 44).Should().BeTrue("without a stagger it may");
    }

    // Of courses that are both laid anew the new joints keep the stagger, and the old ones are no matter.
    [Theory]
    [InlineData(44, 20, true)]
    [InlineData(28, 40, true)]
    [InlineData(28, 38, false)]
    [InlineData(44, 44, false)]
    public void Of_courses_laid_anew_together_only_the_new_joints_count(int below, int above, bool lies)
    {
        var laying = Loose(Run(60, 2), [16, 44]);

        (laying.Try([Window(laying, 0, below), Window(laying, 1, above)]) is not null).Should().Be(lies);
    }

    // Two offcuts of 30 in are alike, and there is one of each: what is cut from both is cut from one and the other.
    [Fact]
    public void Of_bars_that_are_alike_each_is_used_no_more_often_than_it_is_there()
    {
        var part = Part(Request([Run(60)], Offcut(1, 30), Offcut(2, 30)) with { Buy = false });
        var filling = new LayingSearch(part, new StockPrices(part)).First(new Effort(MatchLimits.None));
        part.Shapes.Count.Should().Be(1);

        var bars = new LooseLaying(filling, new CutSets(part)).Filling().Bars;

        bars.Select(bar => bar.Pattern.Bar.Index).Should().BeEquivalentTo([0, 1]);
    }

    private static bool Lies(LooseLaying laying, int row, int joint) => laying.Try([Window(laying, row, joint)]) is not null;

    private static Window Window(LooseLaying laying, int row, int joint)
    {
        var lane = laying.Lanes[row];
        return new Window(lane, 0, 2, [In(joint).Units, lane.To - In(joint).Units]);
    }

    // Courses with one joint each, every piece from a panel of its own.
    private static LooseLaying Loose(Run run, int[] joints)
    {
        var part = Part(Request([run]));
        var (fresh, bars) = (part.Bars.Single(), new List<UsedBar>());
        foreach (var (row, joint) in part.Rows.Zip(joints, (row, joint) => (row, In(joint).Units)))
        {
            var stretch = row.Stretches[0];
            foreach (var (from, to) in new[] { (stretch.From, joint), (joint, stretch.To) })
            {
                var kind = row.KindOf(stretch, from, to);
                bars.Add(new UsedBar(BarPattern.Of(part, new View(fresh, false), [(kind, Cutting.Ways(kind.Ends)[0])])!, [new Laid(row, 0, from, to, kind)]));
            }
        }

        return new LooseLaying(new Filling(part, bars, [.. part.Rows.Select(_ => true)]), new CutSets(part));
    }

    private static RunPart Part(RunRequest request) => RunPart.Of(RunProblem.Create(request).Value, Foam);
}
