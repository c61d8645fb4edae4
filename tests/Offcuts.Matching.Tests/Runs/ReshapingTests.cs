using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>A few laid pieces at a time are taken up and others laid there, for the tiers after the spend.</summary>
public class ReshapingTests(ITestOutputHelper output)
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // Ties every foot, joints at 26 and 60: one of them needs a tie of its own.
    [Fact]
    public void A_joint_is_moved_to_where_a_tie_is_where_that_gives_up_nothing()
    {
        var part = PartOf(Request([Run(96)]));
        var laid = Laid(part, [[26, 34, 36]], [0, 1, 2]);
        laid.Figures[^3].Should().Be(1);

        var better = Improved(laid);

        better.Figures[^3].Should().Be(0);
        better.Figures[^2].Should().BeLessThanOrEqualTo(2);
    }

    // Two halves of a panel beside each other become a whole one.
    [Fact]
    public void Short_pieces_become_a_long_one_where_nothing_more_is_spent()
    {
        var part = PartOf(Request([Run(96)]));
        var laid = Laid(part, [[24, 24, 48]], [0, 0, 1]);

        var better = Improved(laid);

        better.Figures[^5..].Should().Equal(3600, 0, 0, 1, 0);
    }

    // Courses on each other: each alone would have its joint on the tie at 48, but the stagger leaves that to one of them.
    [Fact]
    public void Joints_of_neighbours_keep_the_stagger()
    {
        var part = PartOf(Request([Run(96, 2)]));
        var laid = Laid(part, [[14, 40, 42], [34, 34, 28]], [0, 1, 2, 3, 4, 5]);

        var better = Improved(laid);

        var joints = part.Rows.Select(row => better.Bars.SelectMany(bar => bar.Laid).Where(one => one.Row == row && one.To < In(96).Units).Select(one => one.To).ToArray()).ToArray();
        CoursePair.Keeps(joints[0], joints[1], In(12).Units).Should().BeTrue();
        better.CompareTo(laid).Should().BeLessThan(0);
    }

    // The rules are the checker's, which shares no code with any search; the figures are those of a filling, not of the changes that led to it.
    [Fact]
    public void What_it_makes_of_drawn_walls_keeps_every_rule_and_is_never_worse()
    {
        var (tried, improved, best) = (0, new int[5], 0);
        foreach (var (name, request) in Drawn())
        {
            var problem = RunProblem.Create(request).Value;
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (part.Open || part.Bars.Length == 0) continue;
            var laid = new LayingSearch(part, new StockPrices(part)).First(NoLimit);
            if (laid.Bars.Count == 0) continue;
            tried++;

            var better = Improved(laid);

            var tier = Enumerable.Range(0, better.Figures.Length).FirstOrDefault(tier => better.Figures[tier] != laid.Figures[tier], -1);
            if (tier >= 0)
            {
                better.Figures[tier].Should().BeLessThan(laid.Figures[tier], name);
                tier.Should().BeGreaterThanOrEqualTo(part.Levels.Length, "which courses are covered never changes");
                improved[tier - part.Levels.Length]++;
            }

            Faults(problem, better).Should().BeEmpty(name);
            if (ExactFill.Solve(part, ExactSize.Usual, NoLimit) is ({ } exact, true) && exact.CompareTo(better) is var compared)
            {
                compared.Should().BeLessThanOrEqualTo(0, $"{name}: nothing is better than the best");
                if (compared == 0) best++;
            }
        }

        output.WriteLine($"{tried} tried, better first in spend, value, ties, joints, saw cuts: {string.Join(' ', improved)}; {best} the best there is");
        tried.Should().BeGreaterThan(60);
        improved.Sum().Should().BeGreaterThan(20);
        best.Should().BeGreaterThan(20);
    }

    [Fact]
    public void Without_a_limit_of_time_the_same_filling_becomes_the_same()
    {
        foreach (var (name, request) in Drawn().TakeLast(3))
        {
            var part = PartOf(request);
            var laid = new LayingSearch(part, new StockPrices(part)).First(NoLimit);

            Told(Improved(laid)).Should().Equal(Told(Improved(laid)), name);
        }

        static string[] Told(Filling filling) => [.. filling.Bars.SelectMany(bar => bar.Laid.Zip(bar.Pattern.Cuts, (one, cut) => $"{bar.Pattern.Bar.Index} {bar.Pattern.View.Mirrored} {cut.X} {one.Row.Index} {one.From} {one.To}"))];
    }

    [Fact]
    public void Where_time_is_over_it_stays_as_it_is()
    {
        var laid = Laid(PartOf(Request([Run(96)])), [[26, 34, 36]], [0, 1, 2]);

        Reshaping.Improve(laid, Unknown, new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) }), _ => { }).Should().BeSameAs(laid);
    }

    // What is told of a change before it is made is what the filling's figures change by.
    [Fact]
    public void What_a_change_is_said_to_cost_is_what_it_costs()
    {
        foreach (var (name, request) in Drawn().TakeLast(6))
        {
            var part = PartOf(request);
            var laying = new LooseLaying(new LayingSearch(part, new StockPrices(part)).First(NoLimit), new CutSets(part));
            var (random, changes) = (new Random(3), 0);
            for (var n = 0; n < 4000 && changes < 40; n++)
            {
                var lane = laying.Lanes[random.Next(laying.Lanes.Length)];
                if (lane.Pieces.Count < 2) continue;
                var first = random.Next(lane.Pieces.Count - 1);
                var both = lane.Pieces[first + 1].To - lane.Pieces[first].From;
                var joint = lane.Row.Interval * random.NextInt64(1, 1 + both / lane.Row.Interval);
                Window[] windows = [new Window(lane, first, 2, joint < both ? [joint, both - joint] : [both])];
                if (laying.Try(windows) is not { } change) continue;
                laying.Lay(windows, change);
                changes++;

                var figures = laying.Filling().Figures[^5..];
                new LaterFigures(figures[0], figures[1], figures[2], figures[3], figures[4]).Should().Be(laying.Figures, $"{name}, change {changes}");
            }

            changes.Should().BePositive(name);
        }
    }

    private static IEnumerable<(string Name, RunRequest Request)> Drawn() => Enumerable.Range(0, 90).Select(seed => ($"seed {seed}", DrawnRuns.Draw(seed))).Concat(
        from seed in Enumerable.Range(0, 6)
        let draw = new Random(seed)
        let run = Run(132 + 2 * draw.Next(40), 3, stagger: 6 * draw.Next(4))
        select ($"longer {seed}", Request([run], [.. Enumerable.Range(1, 6).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))])));

    private static Filling Improved(Filling laid) => Reshaping.Improve(laid, Unknown, NoLimit, _ => { });

    private static Offcuts.Matching.Runs.PartOutcome Unknown(Filling filling) => new(filling, [.. filling.Figures.Select(figure => figure - 1)]);

    private static IReadOnlyList<string> Faults(RunProblem problem, Filling filling)
    {
        var figures = filling.Figures.Select(figure => new Figure(figure, figure)).ToArray();
        var levels = filling.Part.Levels.Select((number, level) => new CourseFigure(number, figures[level]));
        var tiers = new RunTiers([.. levels], figures[^5], figures[^4], figures[^3], figures[^2], figures[^1]);
        var savings = new PlanSavings(new Money(figures[^5].Value), new Money(figures[^5].Value), false, []);
        return RunChecker.Faults(problem, RunPlanWriter.Write(problem, [filling], tiers, savings));
    }

    // Rows of pieces so many inches long, each from the new panel of that number.
    private static Filling Laid(RunPart part, int[][] rows, int[] panels)
    {
        var (laid, fresh) = (new List<Laid>(), part.Bars.Single(bar => bar.Bought is not null));
        for (var r = 0; r < rows.Length; r++)
        {
            var at = 0L;
            foreach (var length in rows[r].Select(inches => In(inches).Units))
            {
                laid.Add(new Laid(part.Rows[r], 0, at, at + length, part.Rows[r].KindOf(part.Rows[r].Stretches[0], at, at + length)));
                at += length;
            }
        }

        var bars = laid.Zip(panels).GroupBy(one => one.Second, one => one.First).Select(panel => new UsedBar(BarPattern.Of(part, new View(fresh, false), panel.Select(one => (one.Kind, Cutting.Ways(one.Kind.Ends)[0])))!, [.. panel]));
        return new Filling(part, [.. bars], [.. part.Rows.Select(_ => true)]);
    }

    private static RunPart PartOf(RunRequest request)
    {
        var problem = RunProblem.Create(request).Value;
        return RunPart.Of(problem, problem.Materials.Single());
    }
}
