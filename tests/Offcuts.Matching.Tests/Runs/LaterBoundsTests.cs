using Google.OrTools.Sat;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How few joints and saw cuts any filling has that covers every course.</summary>
public class LaterBoundsTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Not only the best filling has to keep them, but every one: so the fewest there can be are asked, whatever those spend, of a model that is written from the definition alone.
    [Fact]
    public void No_filling_that_covers_every_course_of_a_drawn_wall_comes_below_them()
    {
        var (compared, metJoints, metSaws, above, wrong) = (0, 0, 0, 0, new List<string>());
        foreach (var (name, request) in Enumerable.Range(0, 100).Select(seed => ($"seed {seed}", DrawnRuns.Draw(seed))).Concat(Plain()))
        {
            var problem = RunProblem.Create(request).Value;
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (part.Open || KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table || LaterBounds.Of(table, NoLimit) is not { } bounds) continue;
            if (Fewest(problem, after: 3) is not { } joints || Fewest(problem, after: 4) is not { } saws) continue;
            compared++;
            if (bounds.Joints > joints) wrong.Add($"{name}: {joints} joints, bound {bounds.Joints}");
            if (bounds.Saws > saws) wrong.Add($"{name}: {saws} saw cuts, bound {bounds.Saws}");
            if (joints > 0 && bounds.Joints == joints) metJoints++;
            if (saws > 0 && bounds.Saws == saws) metSaws++;
            if (bounds.Saws > TrivialBounds.Of(part, Filling.Covered(part))[^1]) above++;
        }

        wrong.Should().BeEmpty();
        output.WriteLine($"{compared} compared, {metJoints} joints and {metSaws} saw cuts met, {above} above what is known without it");
        compared.Should().BeGreaterThan(40);
        metJoints.Should().BeGreaterThan(15);
        metSaws.Should().BeGreaterThan(8);
        above.Should().BeGreaterThan(8, "what is known without it says nothing of most cuts");
    }

    // With a knife, no offcuts and a panel that costs next to nothing, a filling of fewest cuts buys what the best one would not.
    private static IEnumerable<(string Name, RunRequest Request)> Plain() =>
        from seed in Enumerable.Range(0, 30)
        let draw = new Random(seed)
        let length = 30 + 2 * draw.Next(26)
        let run = Run(length, 1 + draw.Next(2), stagger: 4 * draw.Next(4)) with { Lines = new PatternLines(In(2 * draw.Next(3)), In(4), In(12)) }
        let cents = draw.Next(2) == 0 ? 1 : 10
        let second = new StorePrice { Material = Foam, Length = In(30 + 2 * draw.Next(6)), Price = new Money(1 + draw.Next(10)) }
        select ($"plain {seed}", Request([run]) with { Prices = new PriceBook(draw.Next(2) == 0 ? [Panel(cents)] : [Panel(cents), second]) });

    // The least of one tier among all fillings that leave no course open that could be covered; the tiers before it are not asked. None where some course can't be covered.
    private static long? Fewest(RunProblem problem, int after)
    {
        var model = RunModel.Of(problem);
        var gaps = problem.Runs.SelectMany(run => run.Courses.Select(course => course.Stretches.Any(stretch => stretch.Length < run.ShortestPiece))).Count(gap => gap);
        model.Model.Add(LinearExpr.Sum(model.Tiers.Take(model.Levels)) == gaps);
        model.Model.Minimize(model.Tiers[model.Levels + after]);
        using var solver = new CpSolver { StringParameters = "num_workers:1 max_deterministic_time:0.3" };
        return solver.Solve(model.Model) == CpSolverStatus.Optimal ? (long)Math.Round(solver.ObjectiveValue) : null;
    }

    [Fact]
    public void Where_time_is_over_nothing_is_said()
    {
        var (table, over) = (TableOf(Request([Run(60, 10)])), new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }));

        LaterBounds.Of(table, over).Should().BeNull();
        LaterBounds.Of(table, NoLimit).Should().NotBeNull();
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

    // 48 and 8, the shortest there is: two of 8 in and the cut between them, and nothing is left.
    [Fact]
    public void A_leftover_that_the_shortest_two_pieces_use_up_saves_one_too() => BoundsOf(0.125m, [Run(56, 2)], Offcut(1, 16.125m)).Should().Be((2, 1));

    // Of 48 in two cuts of 2 in make three pieces on lines of 4 in, and nothing else does; of 50 in one makes two, and then they might be those.
    [Fact]
    public void The_length_that_the_fewest_pieces_use_up_tells_how_many_a_cut_serves()
    {
        var request = Request([Run(60, 10) with { Lines = new PatternLines(Length.Zero, In(4), In(12)) }]) with { Settings = YardSettings.Usual with { KerfElsewhere = In(2) } };
        var other = new StorePrice { Material = Foam, Length = In(50), Price = new Money(900) };

        LaterBounds.Of(TableOf(request), NoLimit).Should().Be((10L, 7L));
        LaterBounds.Of(TableOf(request with { Prices = new PriceBook([Panel(cents: 800), other]) }), NoLimit).Should().Be((10L, 5L));
    }

    private static (long Joints, long Saws) BoundsOf(decimal kerf, IReadOnlyList<Run> runs, params Piece[] pieces) =>
        LaterBounds.Of(TableOf(Request(runs, pieces) with { Settings = YardSettings.Usual with { KerfElsewhere = In(kerf) } }), NoLimit)!.Value;

    private static KindTable TableOf(RunRequest request) => KindTable.Of(RunPart.Of(RunProblem.Create(request).Value, Foam), KindTable.Size.Usual, NoLimit)!;
}
