using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Runs of which all courses are laid on each other at once.</summary>
public class RunLayingTests
{
    private static readonly Effort NoLimit = new(MatchLimits.None);

    // It may stop within one in a hundred of the least.
    [Fact]
    public void A_run_is_laid_for_hardly_more_than_the_least_that_trying_every_layout_finds_or_can_not_be()
    {
        var (laid, impossible) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 24))
        {
            var table = TableOf(Windowed(seed));
            var draw = new Random(seed);
            long[] prices = [.. table.Kinds.Select(_ => StockPrices.Scale * draw.Next(1, 1000))];
            var least = RunLayouts.LeastByTrying(table, prices, In(24).Units);

            var arcs = RunLaying.Of(table.Rows, In(24).Units, prices, NoLimit);

            if (arcs is null)
            {
                least.Should().BeNull($"seed {seed}: what can be laid is laid");
                impossible++;
                continue;
            }

            var cost = arcs.Select((row, r) => row.Sum(arc => prices[table.Rows[r].Kind[arc]])).Sum();
            cost.Should().BeInRange(least!.Value, (long)(least.Value * 1.02), $"seed {seed}");
            arcs.Select((row, r) => row.Sum(arc => table.Rows[r].At[table.Rows[r].To[arc]] - table.Rows[r].At[table.Rows[r].From[arc]])).Should().Equal(table.Part.Rows.Select(row => row.Stretches.Sum(stretch => stretch.Length)));
            var joints = arcs.Select((row, r) => new RowLayout(table.Rows[r], row).Joints).ToArray();
            joints.Zip(joints.Skip(1)).Should().OnlyContain(one => CoursePair.Keeps(one.First, one.Second, In(24).Units));
            laid++;
        }

        laid.Should().BeGreaterThan(8);
        impossible.Should().BePositive();
    }

    [Fact]
    public void Once_time_is_over_nothing_is_laid()
    {
        var table = TableOf(Run(96, 2));

        RunLaying.Of(table.Rows, In(12).Units, new long[table.Kinds.Count], new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) })).Should().BeNull();
        RunLaying.Of(table.Rows, In(12).Units, new long[table.Kinds.Count], NoLimit).Should().NotBeNull("with time it is");
    }

    private static Run Windowed(int seed)
    {
        var draw = new Random(seed);
        var length = 52 + 4 * draw.Next(6);
        var run = Run(length, 4, 24) with { Lines = new PatternLines(Length.Zero, In(4), In(12)), ShortestPiece = In(8 + 4 * draw.Next(4)) };
        var (from, to, low) = (16 + 4 * draw.Next(3), 36 + 4 * draw.Next(3), draw.Next(2));
        Span[] around = [new(Length.Zero, In(from)), new(In(to), In(length))];
        return run with { Courses = [.. run.Courses.Select((course, c) => c >= low && c <= low + 1 ? course with { Stretches = around } : course)] };
    }

    private static KindTable TableOf(Run run) => KindTable.Of(RunPart.Of(RunProblem.Create(Request([run])).Value, Foam), KindTable.Size.Usual, NoLimit)!;
}
