using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>How few extra ties a filling has that covers every course for no more money and value.</summary>
public class TieBoundsTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Held against the best filling, which is decided by a method that knows none of this, and against one that is laid row by row: what holds of both is asked at the figures of each.
    [Fact]
    public void They_are_never_above_the_ties_of_a_filling_and_sometimes_meet_those_of_the_best()
    {
        var (compared, above, met, wrong) = (0, 0, 0, new List<string>());
        foreach (var (name, request) in Enumerable.Range(0, 40).Select(seed => ($"seed {seed}", DrawnRuns.Draw(seed))).Concat(Legs()))
        {
            var part = PartOf(request);
            if (part.Open || part.Rests || KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table) continue;
            if (ExactFill.Solve(part, ExactSize.Usual, NoLimit) is not ({ } best, true) || best.Filled.Contains(false)) continue;
            var bounds = BoundsOf(table, best);
            compared++;
            foreach (var filling in new[] { best, new LayingSearch(part, new StockPrices(part)).First(NoLimit) })
            {
                if (filling.Filled.Contains(false)) continue;
                if (Least(bounds, filling) > filling.Figures[^3]) wrong.Add($"{name}: {string.Join(' ', filling.Figures)}, bound {Least(bounds, filling)}");
            }

            if (Least(bounds, best) > 0) above++;
            if (best.Figures[^3] > 0 && Least(bounds, best) == best.Figures[^3]) met++;
        }

        output.WriteLine($"{compared} compared, {above} with a bound above nothing, {met} met");
        wrong.Should().BeEmpty();
        compared.Should().BeGreaterThan(20);
        met.Should().BeGreaterThan(2);
    }

    // Ten courses of 62 in from panels of 4 ft: a joint from 14 to 48 in each, the ties every foot; but lines only at 2 + 4 n.
    [Fact]
    public void Where_no_joint_can_lie_on_a_tie_each_course_has_an_extra_one_whatever_is_spent()
    {
        var run = Run(62, 10, stagger: 8) with { Lines = new PatternLines(In(2), In(4), In(60)) };
        var part = PartOf(Request([run]));
        var bounds = TieBounds.Of(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, [], NoLimit);

        bounds.Least(long.MaxValue / 8, long.MaxValue / 8).Should().Be(10);
    }

    // Both faces of a leg have their joints at the same places at best: one tie serves two.
    [Fact]
    public void A_tie_that_serves_two_faces_is_counted_once()
    {
        var run = Run(62, 10, stagger: 8) with { Lines = new PatternLines(In(2), In(4), In(60)) };
        var part = PartOf(Request([run, run with { Name = "north inside" }]));
        var bounds = TieBounds.Of(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, [], NoLimit);

        bounds.Least(long.MaxValue / 8, long.MaxValue / 8).Should().Be(10);
    }

    // Two courses of one face, and of the other face the lower or the upper one alone: two ties, one of them for both.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_tie_of_a_course_that_only_one_of_two_has_on_both_faces_is_counted_once_too(int shared)
    {
        var run = Run(62, 2, stagger: 8) with { Lines = new PatternLines(In(2), In(4), In(60)) };
        var part = PartOf(Request([run, run with { Name = "north inside", Courses = [run.Courses[shared]] }]));
        var bounds = TieBounds.Of(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, [], NoLimit);

        bounds.Least(long.MaxValue / 8, long.MaxValue / 8).Should().Be(2);
    }

    [Fact]
    public void Where_time_is_over_nothing_is_said()
    {
        var part = PartOf(Request([Run(62, 10, stagger: 8) with { Lines = new PatternLines(In(2), In(4), In(60)) }]));
        var over = new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) });

        TieBounds.Of(KindTable.Of(part, KindTable.Size.Usual, NoLimit)!, [], over).Least(0, 0).Should().Be(0);
    }

    // Money and value pay for what saves a tie.
    [Fact]
    public void The_more_may_be_spent_or_given_up_the_fewer_ties_are_asked_for()
    {
        var fewer = 0;
        foreach (var (name, request) in Legs().Take(8))
        {
            var part = PartOf(request);
            if (KindTable.Of(part, KindTable.Size.Usual, NoLimit) is not { } table) continue;
            var filling = new LayingSearch(part, StockRelaxation.Least(part)).First(NoLimit);
            if (filling.Filled.Contains(false)) continue;
            var (bounds, spend, given) = (BoundsOf(table, filling), filling.Figures[^5], filling.Figures[^4]);
            var least = bounds.Least(spend - 1800, given - 1800);

            bounds.Least(spend - 1800, given).Should().BeLessThanOrEqualTo(least, name);
            bounds.Least(spend, given - 1800).Should().BeLessThanOrEqualTo(least, name);
            bounds.Least(spend, given).Should().BeLessThanOrEqualTo(Math.Min(bounds.Least(spend - 1800, given), bounds.Least(spend, given - 1800)), name);
            bounds.Least(spend, given).Should().BeLessThanOrEqualTo(filling.Figures[^3], name);
            if (bounds.Least(spend, given) < least) fewer++;
        }

        fewer.Should().BePositive();
    }

    // One course or two, one face or both; of every other one the ties lie so far apart that few joints can lie on one.
    private static IEnumerable<(string Name, RunRequest Request)> Legs() =>
        from seed in Enumerable.Range(0, 24)
        let draw = new Random(seed)
        let length = draw.Next(2) == 0 ? 96 : 50 + 2 * draw.Next(18)
        let run = Run(length, 1 + draw.Next(2), stagger: 12 * draw.Next(3)) with { Lines = draw.Next(2) == 0 ? new PatternLines(In(2 * draw.Next(6)), In(2), In(12)) : new PatternLines(In(2), In(4), In(60)) }
        let runs = draw.Next(2) == 0 ? new[] { run } : [run, run with { Name = "north inside" }]
        select ($"leg {seed}", Request(runs, [.. Enumerable.Range(1, draw.Next(3)).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]));

    private static long Least(TieBounds bounds, Filling filling) => bounds.Least(filling.Figures[^5], filling.Figures[^4]);

    private static TieBounds BoundsOf(KindTable table, Filling best)
    {
        var (spend, given, start) = (best.Figures[^5], best.Figures[^4], StockRelaxation.Least(table.Part));
        var ofSpend = PairRelaxation.Solve(table, RunGoal.Spend, spend, start.OfSpend, spend, NoLimit)!.Value.Prices;
        var ofGiven = PairRelaxation.Solve(table, RunGoal.GivenUp, spend, start, given, NoLimit)!.Value.Prices;
        return TieBounds.Of(table, [ofSpend, ofGiven], NoLimit);
    }

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials.Single());
    }
}
