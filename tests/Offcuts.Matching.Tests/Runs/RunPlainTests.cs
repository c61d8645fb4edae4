using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Where stock is limited a wall is laid from the bottom up at once, and no limit of time, however short or long, hands out less.</summary>
public class RunPlainTests(ITestOutputHelper output)
{
    private static IEnumerable<int> Seeds => Enumerable.Range(600, 8);

    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    [InlineData(1)]
    public void No_limit_of_time_hands_out_less_than_is_laid_at_once(double seconds)
    {
        foreach (var seed in Seeds)
        {
            var problem = RunProblem.Create(Wall(seed)).Value;
            var plain = PlainLaying.Of(RunPart.Of(problem, Foam));

            // A thousandth of a second goes by whenever it is asked, on a fast machine as on a slow one.
            var plan = RunFiller.Fill(problem, new MatchLimits { Time = TimeSpan.FromSeconds(seconds), Clock = new AskedClock() });

            Compare(Figures(plan.Tiers), plain.Figures).Should().BeLessThanOrEqualTo(0, $"of seed {seed}: {string.Join(' ', plain.Figures)}");
        }
    }

    [Fact]
    public void What_is_stopped_before_it_began_is_laid_all_the_same()
    {
        foreach (var seed in Seeds)
        {
            var problem = RunProblem.Create(Wall(seed)).Value;
            var stopped = new CancellationToken(canceled: true);
            var plain = PlainLaying.Of(RunPart.Of(problem, Foam), Stopped).Figures;

            Figures(RunFiller.Fill(problem, new MatchLimits { Cancel = stopped }).Tiers).Should().Equal(plain, $"of seed {seed}");
            Figures(RunFiller.Fill(problem, new MatchLimits { Cancel = stopped, Patience = TimeSpan.Zero }).Tiers).Should().Equal(plain, $"of seed {seed}");
        }
    }

    // The lowest and shortest course is the first for which stock is taken.
    [Fact]
    public void The_first_course_stays_open_only_where_nothing_covers_it()
    {
        var open = 0;
        foreach (var seed in Enumerable.Range(700_000, 200))
        {
            var problem = RunProblem.Create(DrawnRuns.DrawShort(seed)).Value;
            var part = RunPart.Of(problem, problem.Materials.Single());
            if (part.Bars.Length == 0 || part.Rows.All(row => row.Stretches.Length == 0)) continue;
            var first = part.Rows.Where(row => row.Stretches.Length > 0).OrderBy(row => row.Number).ThenBy(row => row.Stretches.Sum(stretch => stretch.Length)).First();

            if (PlainLaying.Of(part).Filled[first.Index] || AloneFill.Solve(part.Only([.. part.Rows.Select(row => row == first)]).Part) is not { } alone) continue;

            alone.Filled[0].Should().BeFalse($"of seed {seed}");
            open++;
        }

        open.Should().BeGreaterThan(10);
    }

    // 10 ft and 6 ft, both faces, five courses, 24 panels of 4 ft and some inches less: a course takes 32 ft, so that three take all there is.
    [Fact]
    public void Two_whole_courses_are_laid_before_anything_is_begun_above_them()
    {
        Run Face(decimal length, string leg, string face) => Run(length, courses: 5, name: $"{leg} {face}", leg: leg);
        Run[] faces = [Face(120, "a", "outside"), Face(120, "a", "inside"), Face(72, "b", "outside"), Face(72, "b", "inside")];
        var pieces = Enumerable.Range(1, 24).Select(number => Offcut(number, 48 - number % 5 * 2)).ToArray();
        var part = RunPart.Of(RunProblem.Create(Request(faces, pieces) with { Buy = false }).Value, Foam);

        var open = PlainLaying.Of(part).Figures[..5];

        open[..2].Should().Equal(0, 0);
        open.Should().BeInAscendingOrder();
        open[4].Should().Be(4);
    }

    // 48 rows of 20 ft and more, and stock for about a fifth of them. What is asked of the bars is counted, since that is most of the work.
    [Fact]
    public void A_large_wall_is_tried_once_and_no_further_than_to_where_a_dozen_rows_running_find_no_room()
    {
        var draw = new Random(3);
        var runs = Enumerable.Range(0, 8).Select(face => Run(240 + 10 * face, 6, 12, $"face {face}", $"leg {face / 2}")).ToArray();
        var pieces = Enumerable.Range(1, 420).Select(number => Offcut(number, 8 + 0.25m * draw.Next(16))).ToArray();
        var (part, asked) = (RunPart.Of(RunProblem.Create(Request(runs, pieces) with { Buy = false }).Value, Foam), 0L);

        var filling = PlainLaying.Of(Counted(part, () => asked++));
        output.WriteLine($"{asked} asked, {filling.Filled.Count(one => one)} filled");
        var whole = asked;
        asked = 0;
        var stopped = PlainLaying.Of(Counted(part, () => asked++), Stopped);

        filling.Filled.Should().Contain(false);
        stopped.Figures.Should().Equal(filling.Figures);
        asked.Should().Be(whole, "it is tried but once, stopped or not");
    }

    // A small wall is tried three times where rows stay open, and once where it is stopped.
    [Fact]
    public void Where_it_is_stopped_nothing_is_tried_again()
    {
        foreach (var seed in Seeds)
        {
            var (part, asked) = (RunPart.Of(RunProblem.Create(Wall(seed)).Value, Foam), 0L);
            var whole = PlainLaying.Of(Counted(part, () => asked++));
            whole.Filled.Should().Contain(false);
            var all = asked;
            asked = 0;

            var stopped = PlainLaying.Of(Counted(part, () => asked++), Stopped);

            asked.Should().BeInRange(1, all * 2 / 3, $"of seed {seed}");
            stopped.CompareTo(whole).Should().BeGreaterThanOrEqualTo(0);
        }
    }

    // 36 rows of 20 ft and more, and thousands of offcuts that are all different, so that what is asked is more than anybody has to wait for.
    [Fact]
    public void A_very_large_wall_that_is_stopped_is_whole_as_far_as_it_has_come()
    {
        var runs = Enumerable.Range(0, 6).Select(face => Run(240 + 10 * face, 6, 12, $"face {face}", $"leg {face / 2}")).ToArray();
        var pieces = Enumerable.Range(1, 2500).Select(number => Offcut(number, 8 + number / 64m, number % 64 / 32m)).ToArray();
        var problem = RunProblem.Create(Request(runs, pieces) with { Buy = false }).Value;
        var (part, asked) = (RunPart.Of(problem, Foam), 0L);
        var whole = PlainLaying.Of(Counted(part, () => asked++));
        var all = asked;
        asked = 0;

        var stopped = PlainLaying.Of(Counted(part, () => asked++), Stopped);

        output.WriteLine($"{all} asked, {whole.Filled.Count(one => one)} filled; stopped {asked} asked, {stopped.Filled.Count(one => one)} filled");
        whole.Filled.Should().NotContain(false);
        asked.Should().BeLessThan(all * 2 / 3);
        stopped.Figures[..6].Should().BeInAscendingOrder().And.StartWith(0L);
        Figures(RunFiller.Fill(problem, new MatchLimits { Cancel = new CancellationToken(canceled: true) }).Tiers).Should().Equal(stopped.Figures);
    }

    private static Effort Stopped => new(new MatchLimits { Cancel = new CancellationToken(canceled: true) });

    // What was alike stays alike.
    private static RunPart Counted(RunPart part, Action ask)
    {
        var counted = part.Bars.Select(bar => bar.Value).Distinct().ToDictionary(value => value, value => (Func<long, long>)(length =>
        {
            ask();
            return value(length);
        }));
        return Counted(part, bar => counted[bar.Value]);
    }

    private static RunPart Counted(RunPart part, Func<Bar, Func<long, long>> value) => new()
    {
        Material = part.Material,
        Rows = part.Rows,
        Kerf = part.Kerf,
        Interval = part.Interval,
        Levels = part.Levels,
        Unpriced = part.Unpriced,
        Rests = part.Rests,
        Bars = [.. part.Bars.Select(bar => new Bar
        {
            Piece = bar.Piece, Bought = bar.Bought, Start = bar.Start, Length = bar.Length, Line = bar.Line, Count = bar.Count,
            Value = value(bar), MostKept = bar.MostKept, Bends = bar.Bends, Index = bar.Index,
        })],
    };

    // One or two legs of 6 to 12 ft, both faces, three or four courses, and about half of what that takes; of every third nobody said what a panel costs.
    private static RunRequest Wall(int seed)
    {
        var draw = new Random(seed);
        var stagger = 6 * draw.Next(3);
        var courses = 3 + draw.Next(2);
        var runs = Enumerable.Range(1, 1 + draw.Next(2)).Select(leg => (Leg: $"leg {leg}", Length: 72 + 2 * draw.Next(36)))
            .SelectMany(leg => (Run[])[Run(leg.Length, courses, stagger, $"{leg.Leg} outside", leg.Leg), Run(leg.Length - 17, courses, stagger, $"{leg.Leg} inside", leg.Leg)]).ToArray();
        var taken = runs.Sum(run => run.Courses.Sum(course => course.Stretches[0].Length.InInches));
        var pieces = Enumerable.Range(1, (int)(taken / 60)).Select(number => Offcut(number, 10 + 2 * draw.Next(20))).ToArray();
        var request = Request(runs, pieces) with { Buy = false };
        return request with
        {
            Prices = draw.Next(3) == 0 ? PriceBook.Empty : request.Prices,
            Settings = draw.Next(2) == 0 ? request.Settings : YardSettings.Usual,
        };
    }

    private static int Compare(long[] a, long[] b) => a.Zip(b, (x, y) => x.CompareTo(y)).FirstOrDefault(one => one != 0);

    private static long[] Figures(RunTiers tiers) =>
    [
        .. tiers.Unfilled.Select(level => level.Unfilled.Value),
        tiers.Spend.Value, tiers.ValueGivenUp.Value, tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value,
    ];
}
