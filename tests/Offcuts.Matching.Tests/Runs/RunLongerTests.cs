using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using Xunit.Abstractions;
using static Offcuts.Matching.Tests.Runs.RunScene;
using PartOutcome = Offcuts.Matching.Runs.PartOutcome;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>
/// What more time is good for: the same walls with one limit after the other, by a clock that goes on only when it is asked. The solvers' own limit is
/// real time, which this clock does not move: it is a look at drawn walls and no proof.
/// </summary>
public class RunLongerTests(ITestOutputHelper output)
{
    // In thousandths of a second, each of them a look at the clock.
    private static readonly int[] Limits = [10, 100, 400, 1600];

    [Fact]
    public void A_longer_time_never_lays_less_than_a_shorter_one()
    {
        var (less, dearer, more, all) = (new List<string>(), 0, 0, 0);
        foreach (var (name, part) in Walls)
        {
            PartOutcome? before = null;
            foreach (var limit in Limits)
            {
                var now = Filled(part, limit, _ => { });
                if (before is not null)
                {
                    all++;
                    var compared = Laid(now.Filling).Zip(Laid(before.Filling), (one, other) => one.CompareTo(other)).FirstOrDefault(sign => sign != 0);
                    if (compared > 0) less.Add($"{name}, {limit}: {Text(now.Filling)} after {Text(before.Filling)}");
                    if (compared < 0) more++;
                    if (compared == 0 && now.Filling.CompareTo(before.Filling) > 0) dearer++;
                }

                before = now;
            }
        }

        output.WriteLine($"{all} longer times, {more} lay more, {less.Count} less, {dearer} as much but dearer");
        foreach (var one in less) output.WriteLine(one);
        less.Should().BeEmpty();
        more.Should().BePositive("or the walls are too easy");
    }

    [Fact]
    public void What_was_found_once_is_not_given_up_for_what_is_found_later()
    {
        var told = 0;
        foreach (var (name, part) in Walls)
        {
            var best = PartFiller.AtOnce(part, Endless).Filling;
            var outcome = Filled(part, Limits[^1], one =>
            {
                told++;
                one.Filling.CompareTo(best).Should().BeLessThanOrEqualTo(0, $"{name}: {Text(one.Filling)} after {Text(best)}");
                best = one.Filling;
            });
            outcome.Filling.CompareTo(best).Should().BeLessThanOrEqualTo(0, $"{name}: {Text(outcome.Filling)} at the end, after {Text(best)}");
        }

        told.Should().BeGreaterThan(30);
    }

    private static readonly Effort Endless = new(MatchLimits.None);

    private static PartOutcome Filled(RunPart part, int asks, Action<PartOutcome> better)
    {
        var effort = new Effort(new MatchLimits { Time = TimeSpan.FromMilliseconds(asks), Clock = new AskedClock() });
        return PartFiller.Fill(part, PartFiller.AtOnce(part, effort), effort, better);
    }

    private static long[] Laid(Filling filling) => filling.Figures[..filling.Part.Levels.Length];

    private static string Text(Filling filling) => string.Join(' ', filling.Figures);

    private static IEnumerable<(string Name, RunPart Part)> Walls =>
    [
        .. Enumerable.Range(1, 8).Select(seed => ($"short {seed}", Short(seed))),
        .. Enumerable.Range(1, 6).Select(seed => ($"window {seed}", Window(seed))),
    ];

    // Two legs with both faces, and offcuts for some of their courses; nothing can be bought.
    private static RunPart Short(int seed)
    {
        var draw = new Random(seed);
        var (long_, short_, courses, stagger) = (100 + 2 * draw.Next(60), 60 + 2 * draw.Next(40), 4 + draw.Next(4), 12 * draw.Next(3));
        Run Face(decimal length, string leg, string face) => Run(length, courses, stagger, $"{leg} {face}", leg);
        Run[] runs = [Face(long_, "a", "outside"), Face(long_ - 17, "a", "inside"), Face(short_, "b", "outside"), Face(short_ - 17, "b", "inside")];
        var pieces = Enumerable.Range(1, 20 + draw.Next(30)).Select(number => Offcut(number, 20 + 2 * draw.Next(15))).ToArray();
        return PartOf(Request(runs, pieces) with { Buy = false });
    }

    // A face with a window in two of its courses, half a panel of stagger and long shortest pieces: some course may have no place for its joints.
    private static RunPart Window(int seed)
    {
        var draw = new Random(seed);
        var length = 110 + 2 * draw.Next(20);
        var (from, low) = (40 + 2 * draw.Next(10), draw.Next(2));
        Span[] around = [new(Length.Zero, In(from)), new(In(from + 30), In(length))];
        var run = Run(length, 5, 24) with { ShortestPiece = In(10 + 2 * draw.Next(3)) };
        run = run with { Courses = [.. run.Courses.Select((course, c) => c >= low && c <= low + 1 ? course with { Stretches = around } : course)] };
        return PartOf(Request([run], [.. Enumerable.Range(1, 10).Select(number => Offcut(number, 14 + 2 * draw.Next(15)))]));
    }

    private static RunPart PartOf(RunRequest request) => RunPart.Of(RunProblem.Create(request).Value, Foam);
}
