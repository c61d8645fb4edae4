using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How few joints and saw cuts any filling has that covers every course, and how little it spends in whole new pieces.</summary>
public class LaterBoundsTests
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    [Fact]
    public void No_filling_that_covers_every_course_of_a_drawn_wall_comes_below_them()
    {
        var (compared, saws) = (0, 0);
        for (var seed = 0; seed < 160; seed++)
        {
            var problem = RunProblem.Create(DrawnRuns.Draw(seed)).Value;
            foreach (var part in problem.Materials.Select(material => RunPart.Of(problem, material)).Where(part => !part.Open))
            {
                if (KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table || LaterBounds.Of(table) is not { } bounds) continue;
                if (ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not (Best: { } best, Proven: true) || best.Filled.Contains(false)) continue;
                compared++;
                bounds.Joints.Should().BeLessThanOrEqualTo(best.Figures[^2], $"seed {seed}, joints");
                bounds.Saws.Should().BeLessThanOrEqualTo(best.Figures[^1], $"seed {seed}, saw cuts");
                if (bounds.Saws > TrivialBounds.Of(part, best)[^1]) saws++;
            }
        }

        compared.Should().BeGreaterThan(20);
        saws.Should().BeGreaterThan(0, "else no cut is ever seen");
    }

    // A course of 5 ft from panels of 4 ft takes a joint and one piece that is sawn at least; no number of pieces and cuts of 1/8 in uses a panel up.
    [Fact]
    public void Each_course_that_no_whole_panels_make_takes_a_saw_cut() => BoundsOf(0.125m, [Run(60, 10)]).Should().Be((10, 10));

    // 94 in from panels of 48: a joint lies at 46 or 48, so the course on it, a foot from that, takes two, and two pieces that are sawn.
    [Fact]
    public void A_course_that_the_stagger_leaves_no_room_takes_a_joint_more() => BoundsOf(0.125m, [Run(94, 2)]).Should().Be((3, 3));

    // With a knife one cut makes two pieces of 2 ft, and they might be those.
    [Fact]
    public void Where_pieces_use_up_a_panel_one_cut_serves_two() => BoundsOf(0, [Run(60, 10)]).Should().Be((10, 5));

    // 48 and 12, and a leftover of 12 that needs no saw.
    [Fact]
    public void A_leftover_that_is_laid_whole_saves_one() => BoundsOf(0.125m, [Run(60, 2)], Offcut(1, 12)).Should().Be((2, 1));

    // Three of 12 ft and two of 16 ft cost 84.60 and are too short for 70 ft; six of 12 ft cost 85.20.
    [Fact]
    public void Whole_boards_have_to_have_the_length_together()
    {
        SpendCover.Least(840, [(1420, 144), (2100, 192)]).Should().Be(8520);
        SpendCover.Least(816, [(1420, 144), (2100, 192)]).Should().Be(8460);
        SpendCover.Least(0, [(1420, 144)]).Should().Be(0);
        SpendCover.Least(10, []).Should().Be(0, "nothing is said where nothing can be bought");
    }

    private static (long Joints, long Saws) BoundsOf(decimal kerf, IReadOnlyList<Run> runs, params Piece[] pieces)
    {
        var request = Request(runs, pieces) with { Settings = YardSettings.Usual with { KerfElsewhere = In(kerf) } };
        return LaterBounds.Of(KindTable.Of(RunPart.Of(RunProblem.Create(request).Value, Foam), KindTable.Size.Usual, NoLimit)!)!.Value;
    }
}
