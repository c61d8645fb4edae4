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

            var (alone, outcome) = (AloneFill.Solve(part), PartFiller.Searched(part, null, new Effort(new MatchLimits { Time = TimeSpan.FromSeconds(60), Clock = new AskedClock() }), _ => { }));

            alone.Should().NotBeNull($"corner {corner} is small");
            alone!.CompareTo(outcome.Filling).Should().BeLessThanOrEqualTo(0, $"nothing better than {string.Join(' ', alone.Figures)} is found at corner {corner}");
            if (!outcome.Proven) continue;
            alone.Figures.Should().Equal(outcome.Filling.Figures, $"of corner {corner}");
            proven++;
        }

        output.WriteLine($"{proven} of {Corners} proven by both");
        proven.Should().BeGreaterThan(Corners / 2);
    }

    // 8 ft take two panels of 4 ft, and the store has two; 12 ft take three.
    [Fact]
    public void Panels_of_which_the_store_has_few_are_taken_as_often_as_it_has_them()
    {
        RunPart Few(decimal length) => Part(RunProblem.Create(Request([Run(length)]) with { Prices = new PriceBook([Panel(limit: 2)]) }).Value)!;

        AloneFill.Solve(Few(96))!.Figures.Should().Equal(0, 3600, 0, 0, 1, 0);
        AloneFill.Solve(Few(144))!.Figures[0].Should().Be(1);
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

    // 24 ft with ties a foot apart and a value by the inch, so that any pieces that fill it cost the same. Eight of 16 in and eight of 20 in lie in turns of
    // three with eight extra ties and 15 joints; sixteen of them make a step from tie to tie, one more than is told apart. With one of 16 in and
    // two of 12 in more there is a row with eight extra ties too, but with 16 joints, of which only fifteen make a step.
    [Theory]
    [InlineData(8, 8, 0)]
    [InlineData(9, 8, 2)]
    public void It_gives_up_rather_than_prove_ties_and_joints_beside_rows_that_it_cannot_tell_apart(int sixteens, int twenties, int twelves)
    {
        var row = Run(288) with { Lines = new PatternLines(Length.Zero, In(4), In(12)), ShortestPiece = In(12) };
        int[] lengths = [.. Enumerable.Repeat(16, sixteens), .. Enumerable.Repeat(20, twenties), .. Enumerable.Repeat(12, twelves)];
        var request = Request([row], [.. lengths.Select((length, n) => Offcut(n + 1, length))]) with
        {
            Buy = false,
            Prices = new PriceBook([.. new[] { 12, 16, 20, 48 }.Select(length => Panel(40 * length) with { Length = In(length) })]),
        };

        AloneFill.Solve(Part(RunProblem.Create(request).Value)).Should().BeNull("the best row has 15 joints, and what is seen has 16");
    }

    // One less of each: seven extra ties, fourteen pieces that make a step, and that is told apart.
    [Fact]
    public void Up_to_fifteen_pieces_that_make_a_step_are_told_apart()
    {
        var row = Run(252) with { Lines = new PatternLines(Length.Zero, In(4), In(12)), ShortestPiece = In(12) };
        var request = Request([row], [.. Enumerable.Range(1, 14).Select(n => Offcut(n, n % 2 == 0 ? 16 : 20))]) with { Buy = false };

        var figures = AloneFill.Solve(Part(RunProblem.Create(request).Value))!.Figures;

        figures[^3..].Should().Equal(7, 13, 0);
    }

    // 18 in of form boards or panels between two stakes 2 ft apart: nothing to join on, so one piece covers it or none does.
    [Theory]
    [InlineData(JointRule.OnLines, true)]
    [InlineData(JointRule.OnLines, false)]
    [InlineData(JointRule.OnPattern, true)]
    [InlineData(JointRule.OnPattern, false)]
    public void A_stretch_between_two_lines_is_covered_by_one_piece_or_stays_open(JointRule joints, bool reversible)
    {
        var run = (Run(18) with { Lines = new PatternLines(In(1), In(24), In(24)), Joints = joints, Reversible = reversible }).Over((3, 21));

        var covered = Fill(Request([run], Offcut(1, 30), Offcut(2, 17)));
        var bought = Fill(Request([run], Offcut(1, 10), Offcut(2, 10)));
        var open = Fill(Request([run], Offcut(1, 10), Offcut(2, 10)) with { Buy = false });

        covered.Pieces.Should().ContainSingle().Which.Source!.Code.Should().Be(Scene.CodeOf(1));
        (covered.Tiers.Proven, covered.Tiers.Spend, covered.Tiers.Joints, covered.Tiers.SawCuts).Should().Be((true, Figure.Best(0), Figure.Best(0), Figure.Best(1)));
        (bought.Tiers.Proven, bought.Tiers.Spend, bought.Savings.AllNew, bought.Savings.AllNewProven).Should().Be((true, Figure.Best(1800), new Money(1800), true));
        (open.Tiers.Proven, open.Tiers.UnfilledInAll, open.Pieces.Count).Should().Be((true, Figure.Best(1), 0));
    }

    // 6 in where no piece may be shorter than 8 in, and neither stock nor price.
    [Fact]
    public void A_course_shorter_than_any_piece_counts_once_as_unfilled()
    {
        var plan = Fill(Request([Run(6)]) with { Prices = PriceBook.Empty });

        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(1));
    }

    [Fact]
    public void A_drawn_stretch_without_a_line_has_the_figures_of_trying_everything()
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(0, 1500).Select(n => 410_003 + 8 * n))
        {
            var problem = RunProblem.Create(DrawnRuns.DrawSingle(seed)).Value;
            if (Part(problem) is not { Rows: [{ Stretches.Length: 1 }], Bars.Length: > 0 } part || AloneRow.Of(part) is not { Intervals: < 0 }) continue;

            var (alone, best) = (AloneFill.Solve(part), RunBruteForce.Best(problem, 300_000));

            alone!.Figures.Should().Equal(best, $"of seed {seed}");
            compared++;
        }

        compared.Should().BeGreaterThan(40);
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
