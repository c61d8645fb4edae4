using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>One stretch of one course, the question of the tailgate: decided by counting, without any solver, and as right as with one.</summary>
public class RunAloneTests(ITestOutputHelper output)
{
    // Half inches from here on, so that no corner is like another.
    private const int Corners = 40;

    [Fact]
    public void Every_tier_is_that_of_trying_everything()
    {
        var (compared, laid) = (0, 0);
        foreach (var seed in Enumerable.Range(400_000, 400))
        {
            var problem = RunProblem.Create(DrawnRuns.DrawSingle(seed)).Value;
            if (Part(problem) is not { Bars.Length: > 0 } part || AloneFill.Solve(part) is not { } alone || RunBruteForce.Best(problem, 300_000) is not { } best) continue;
            alone.Figures.Should().Equal(best, $"of seed {seed}");
            compared++;
            if (alone.Filled[0]) laid++;
        }

        output.WriteLine($"{compared} compared, {laid} of them laid");
        compared.Should().BeGreaterThan(80);
        laid.Should().BeGreaterThan(60);
    }

    // Up to 8 ft from a corner and 30 offcuts, with a saw or a knife, with and without prices: what two programs of whole numbers decide by
    // places and patterns.
    [Fact]
    public void It_agrees_with_the_programs_for_larger_parts()
    {
        var (proven, draw) = (0, new Random(11));
        for (var corner = 0; corner < Corners; corner++)
        {
            var part = Part(RunProblem.Create(Corner(draw)).Value);

            var (alone, outcome) = (AloneFill.Solve(part), PartFiller.Searched(part, null, new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(2), Clock = TimeProvider.System }), _ => { }));

            alone.Should().NotBeNull($"corner {corner} is small");
            alone!.CompareTo(outcome.Filling).Should().BeLessThanOrEqualTo(0, $"nothing better than {string.Join(' ', alone.Figures)} is found at corner {corner}");
            if (!outcome.Proven) continue;
            alone.Figures.Should().Equal(outcome.Filling.Figures, $"of corner {corner}");
            proven++;
        }

        output.WriteLine($"{proven} of {Corners} proven by both");
        proven.Should().BeGreaterThan(Corners / 2);
    }

    // 12 | 8 has its joint on the tie at 12 in, 8 | 12 has not.
    [Fact]
    public void Pieces_lie_in_the_order_that_meets_ties()
    {
        var plan = Fill(Request([Run(20)], Offcut(1, 8), Offcut(2, 12)) with { Buy = false });

        Joints(plan, 0).Should().Equal(12);
        plan.Tiers.ExtraTies.Should().Be(Figure.Best(0));
    }

    // 18 | 18 meet again at the tie at 36 in, in any order with the 12 in piece outside of them: one extra tie. Between them it costs two.
    [Fact]
    public void Pieces_that_meet_no_tie_lie_beside_each_other()
    {
        var plan = Fill(Request([Run(48)], Offcut(1, 18), Offcut(2, 12), Offcut(3, 18)) with { Buy = false });

        plan.Tiers.ExtraTies.Should().Be(Figure.Best(1));
        plan.Tiers.Joints.Should().Be(Figure.Best(2));
    }

    // 60 in of a panel of 48 in and an offcut of 12 in, or two panels.
    [Fact]
    public void New_panels_alone_are_counted_in_the_same_way()
    {
        var part = Part(RunProblem.Create(Request([Run(60)], Offcut(1, 12))).Value);

        AloneFill.LeastSpend(part).Should().Be(1800);
        AloneFill.LeastSpend(part.FromStore([true], [Panel()])).Should().Be(3600);
        AloneFill.LeastSpend(part.FromStore([true], [Panel(1800), Panel(1700)])).Should().Be(3400);
    }

    [Fact]
    public void What_cannot_be_covered_stays_open_and_that_is_proven()
    {
        var plan = Fill(Request([Run(60)], Offcut(1, 30), Offcut(2, 28)) with { Buy = false });

        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(1));
        plan.Pieces.Should().BeEmpty();
    }

    [Fact]
    public void Anything_else_than_one_stretch_by_itself_is_left_to_the_others()
    {
        var standing = Run(60) with { Courses = [new Course(2, In(12), [new Span(Length.Zero, In(60))])], Standing = [new StandingCourse(1, [In(24)])] };

        AloneFill.Solve(Part(RunProblem.Create(Request([Run(60)], Offcut(1, 12))).Value)).Should().NotBeNull();
        AloneFill.Solve(Part(RunProblem.Create(Request([Run(60, 2)], Offcut(1, 12))).Value)).Should().BeNull("two courses");
        AloneFill.Solve(Part(RunProblem.Create(Request([Run(60).Over((0, 24), (36, 60))], Offcut(1, 12))).Value)).Should().BeNull("two stretches");
        AloneFill.Solve(Part(RunProblem.Create(Request([standing], Offcut(1, 12))).Value)).Should().BeNull("joints have to keep away from what stands");
    }

    private static RunPart Part(RunProblem problem) => RunPart.Of(problem, problem.Materials.Single());

    private static RunRequest Corner(Random draw)
    {
        var from = DrawnRuns.H(5 + 12 * draw.Next(2));
        var course = new Course(1, In(draw.Next(6) == 0 ? 7 : 12), [new Span(from, from + DrawnRuns.H(28 + draw.Next(160)))]);
        var pieces = Enumerable.Range(1, 30).Select(number => draw.Next(3) switch
        {
            0 => Offcut(number, 8 + 2 * draw.Next(18) + 0.5m, 0.5m),
            1 => Offcut(number, 8 + 2 * draw.Next(18) + 1.5m),
            _ => Offcut(number, 8 + 2 * draw.Next(18)),
        });
        var request = Request([Run(96) with { Courses = [course], Reversible = draw.Next(2) == 0 }], [.. pieces]);
        return request with
        {
            Settings = draw.Next(2) == 0 ? request.Settings : request.Settings with { KerfElsewhere = In(0.125m) },
            Buy = draw.Next(3) > 0,
            Prices = draw.Next(5) == 0 ? PriceBook.Empty : request.Prices,
        };
    }
}
