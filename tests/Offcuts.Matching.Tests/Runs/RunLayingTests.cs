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

    [Fact]
    public void A_run_is_laid_wherever_trying_every_layout_finds_a_way()
    {
        var (laid, impossible) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 40))
        {
            var table = TableOf(Windowed(seed));
            var some = RunLayouts.LeastByTrying(table, new long[table.Kinds.Count], In(24).Units);

            var arcs = Laid(table, new bool[table.Kinds.Count]);

            (arcs is null).Should().Be(some is null, $"seed {seed}");
            if (arcs is null) impossible++;
            else laid++;
        }

        laid.Should().BeGreaterThan(8);
        impossible.Should().BeGreaterThan(2);
    }

    // Which pieces can't be had is drawn: the least at a price of 1 for each of those is 0 where there is a way without them.
    [Fact]
    public void Nothing_is_laid_from_pieces_that_can_not_be_had()
    {
        var (laid, impossible) = (0, 0);
        foreach (var seed in Enumerable.Range(0, 40))
        {
            var table = TableOf(Windowed(seed));
            var draw = new Random(seed);
            bool[] lacking = [.. table.Kinds.Select(_ => draw.Next(4) == 0)];
            var least = RunLayouts.LeastByTrying(table, [.. lacking.Select(lacks => lacks ? 1L : 0)], In(24).Units);

            var arcs = Laid(table, lacking);

            (arcs is not null).Should().Be(least == 0, $"seed {seed}");
            if (arcs is null) impossible++;
            else laid++;
            arcs?.SelectMany((row, r) => row.Select(arc => table.Rows[r].Kind[arc])).Should().NotContain(kind => lacking[kind]);
        }

        laid.Should().BeGreaterThan(3);
        impossible.Should().BeGreaterThan(2);
    }

    [Fact]
    public void Once_time_is_over_nothing_is_laid()
    {
        var table = TableOf(Run(96, 2));
        int[][]? Of(Effort effort) => RunLaying.Of(table.Rows, In(12).Units, In(8).Units, new bool[table.Kinds.Count], effort);

        Of(new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) })).Should().BeNull();
        Of(NoLimit).Should().NotBeNull("with time it is");
    }

    // Every stretch is covered, and the stagger kept.
    private static int[][]? Laid(KindTable table, bool[] lacking)
    {
        var arcs = RunLaying.Of(table.Rows, In(24).Units, table.Part.Rows[0].Shortest, lacking, NoLimit);
        if (arcs is null) return null;
        arcs.Select((row, r) => row.Sum(arc => table.Rows[r].At[table.Rows[r].To[arc]] - table.Rows[r].At[table.Rows[r].From[arc]])).Should().Equal(table.Part.Rows.Select(row => row.Stretches.Sum(stretch => stretch.Length)));
        var joints = arcs.Select((row, r) => new RowLayout(table.Rows[r], row).Joints).ToArray();
        joints.Zip(joints.Skip(1)).Should().OnlyContain(one => CoursePair.Keeps(one.First, one.Second, In(24).Units));
        return arcs;
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
