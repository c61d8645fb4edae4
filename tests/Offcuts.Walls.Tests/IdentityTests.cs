using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using static Offcuts.Walls.Tests.Sheets;

namespace Offcuts.Walls.Tests;

/// <summary>
/// What holds of every right-angled closed wall, from its plan alone. Set in by <c>d</c>, a plan of area <c>A</c> and perimeter
/// <c>P</c> has the area <c>A - P d + (convex corners - reflex corners) d2</c>, which for square turns is <c>A - P d + 4 d2</c>.
/// A failing seed is printed; set <c>CsCheck_Seed</c> to replay it.
/// </summary>
public sealed class IdentityTests
{
    // A skyline: columns side by side on one base. Widths and steps are long enough for the corners.
    private static readonly Gen<(int[] Widths, int[] Heights, bool Mirrored, int Turned, bool Metric, int Thickness, int Core)> Skylines =
        from widths in Gen.Int[40, 200].Array[1, 5]
        from steps in Gen.Select(Gen.Int[40, 150], Gen.Bool).Array[5, 5]
        from mirrored in Gen.Bool
        from turned in Gen.Int[0, 11]
        from metric in Gen.Bool
        from thickness in Gen.Int[1, 3]
        from core in Gen.Int[4, 12]
        select (widths, Heights(widths.Length, steps), mirrored, turned, metric, thickness, core);

    [Fact]
    public void In_every_course_the_rows_together_are_the_foams_plan_area_by_its_thickness() => Skylines.Sample(
        drawn =>
        {
            var (wall, system, unit) = Made(drawn);
            var (area, perimeter) = Plan(drawn.Widths, drawn.Heights);
            var (t, c) = ((decimal)drawn.Thickness, (decimal)drawn.Core);
            var w = c + 2 * t;
            decimal Inset(decimal d) => area - perimeter * d + 4 * d * d;
            var foam = Inset(0) - Inset(t) + Inset(t + c) - Inset(w);

            var laid = Laid(wall, system);
            for (var course = 0; course < laid.Courses; course++)
            {
                var rows = laid.Runs.Sum(run => run.Courses[course].Stretches.Sum(stretch => stretch.Length.Units));
                (rows * t / unit).Should().Be(foam);
            }
        },
        iter: 300);

    [Fact]
    public void The_core_is_the_outer_prism_less_the_inner() => Skylines.Sample(
        drawn =>
        {
            var (wall, system, unit) = Made(drawn);
            var (area, perimeter) = Plan(drawn.Widths, drawn.Heights);
            var (t, c) = ((decimal)drawn.Thickness, (decimal)drawn.Core);
            decimal Inset(decimal d) => area - perimeter * d + 4 * d * d;
            var perUnit = unit / Length.PerMillimetre;

            var core = Takeoff.Of(Laid(wall, system), "walls").Concrete.Single();

            var prism = (Inset(t) - Inset(t + c)) * perUnit * perUnit * wall.Height.InMillimetres;
            core.Net.CubicMillimetres.Should().BeApproximately(prism, 1e-6m);
        },
        iter: 300);

    [Fact]
    public void Form_boards_and_footing_fill_their_plan_areas_too() => Gen.Select(Skylines, Gen.Int[0, 8]).Sample(
        (drawn, beyond) =>
        {
            // Twice as large, so that there is room for the footing between its legs.
            drawn = drawn with { Widths = [.. drawn.Widths.Select(width => 2 * width)], Heights = [.. drawn.Heights.Select(height => 2 * height)] };
            var (wall, system, unit) = Made(drawn);
            var size = Length.FromUnits((long)unit);
            var (area, perimeter) = Plan(drawn.Widths, drawn.Heights);
            var p = (decimal)beyond;
            var b = In(1.5m).Units / unit; // a 2x10 is 1-1/2 in thick: PS 20-20 Table 3
            var w = drawn.Core + 2m * drawn.Thickness;
            decimal Inset(decimal d) => area - perimeter * d + 4 * d * d;
            var forms = new FootingForms { Board = (Lumber)Material("2x10"), Beyond = size * beyond, Spacing = Ft(3), Stake = Material("2x4"), StakeLength = Ft(2), Spreader = Material("1x4"), Depth = size * 8 };

            var laid = Laid(wall with { Footing = forms }, system);

            var boards = laid.FootingRuns.Sum(run => run.Courses[0].Stretches.Sum(stretch => stretch.Length.Units)) / unit;
            boards.Should().BeApproximately((Inset(-p - b) - Inset(-p) + Inset(w + p) - Inset(w + p + b)) / b, 1e-15m);
            var perUnit = unit / Length.PerMillimetre;
            Takeoff.Of(laid, "footing").Concrete[1].Net.CubicMillimetres.Should().BeApproximately((Inset(-p) - Inset(w + p)) * 8 * perUnit * perUnit * perUnit, 1e-5m);
        },
        iter: 200);

    [Fact]
    public void Every_figure_is_the_sum_of_what_it_is_made_of_and_ties_are_those_counted_place_by_place() => Skylines.Sample(
        drawn =>
        {
            var (wall, system, _) = Made(drawn);
            var laid = Laid(wall, system);

            // Place by place along each axis, by the run's own word on where its ties lie.
            long ties = 0;
            foreach (var leg in laid.Runs.GroupBy(run => run.Leg).Select(faces => faces.ToArray()))
            {
                for (var course = 0; course < laid.Courses; course++)
                {
                    bool Stands(Run run, long at) => run.Courses[course].Stretches.Any(stretch => stretch.Start.Units <= at && at <= stretch.End.Units);
                    var end = leg.Max(run => run.Courses[course].Stretches[^1].End.Units);
                    for (var at = leg[0].Lines.FirstTie.Units; at <= end; at += leg[0].Lines.TieSpacing.Units)
                        if (leg.All(run => Stands(run, at))) ties++;
                }
            }

            Takeoff.Of(laid, "walls").Hardware[0].Count.Figure.Should().Be(ties);
        },
        iter: 150);

    [Fact]
    public void Lines_of_both_faces_lie_across_from_each_other() => Skylines.Sample(
        drawn =>
        {
            var (wall, system, _) = Made(drawn);
            foreach (var leg in Laid(wall, system).Runs.GroupBy(run => run.Leg)) leg.Select(run => run.Lines).Distinct().Should().HaveCount(1);
        },
        iter: 50);

    private static int[] Heights(int count, (int By, bool Up)[] steps)
    {
        var heights = new int[count];
        heights[0] = 400;
        for (var i = 1; i < count; i++) heights[i] = heights[i - 1] + (steps[i - 1].Up || heights[i - 1] - steps[i - 1].By < 100 ? steps[i - 1].By : -steps[i - 1].By);
        return heights;
    }

    private static (decimal Area, decimal Perimeter) Plan(int[] widths, int[] heights)
    {
        var area = widths.Zip(heights, (width, height) => (decimal)width * height).Sum();
        var steps = Enumerable.Range(1, heights.Length - 1).Sum(i => Math.Abs(heights[i] - heights[i - 1]));
        return (area, 2 * widths.Sum() + heights[0] + heights[^1] + steps);
    }

    // The outline, walked with the building on the left: along the base, then back over the tops.
    private static (WallSheet Wall, SystemSheet System, decimal Unit) Made((int[] Widths, int[] Heights, bool Mirrored, int Turned, bool Metric, int Thickness, int Core) drawn)
    {
        var walk = new List<(int Length, Turn Turn)> { (drawn.Widths.Sum(), Turn.Left), (drawn.Heights[^1], Turn.Left) };
        for (var i = drawn.Widths.Length - 1; i > 0; i--)
        {
            var down = drawn.Heights[i - 1] < drawn.Heights[i];
            walk.Add((drawn.Widths[i], down ? Turn.Left : Turn.Right));
            walk.Add((Math.Abs(drawn.Heights[i - 1] - drawn.Heights[i]), down ? Turn.Right : Turn.Left));
        }

        walk.Add((drawn.Widths[0], Turn.Left));
        walk.Add((drawn.Heights[0], Turn.Left));
        if (drawn.Mirrored)
        {
            // Backwards: the turn at the end of a leg is then that at its start, to the other hand.
            var back = walk.Select((leg, i) => (leg.Length, walk[(i + walk.Count - 1) % walk.Count].Turn)).Reverse();
            walk = [.. back.Select(leg => (leg.Length, leg.Turn == Turn.Left ? Turn.Right : Turn.Left))];
        }

        walk = [.. walk.Skip(drawn.Turned % walk.Count), .. walk.Take(drawn.Turned % walk.Count)];
        Length Size(int size) => drawn.Metric ? Mm(size * 25) : In(size);
        var system = (drawn.Metric ? Metric : Sheets.System) with { Thickness = Size(drawn.Thickness) };
        var wall = Wall([.. walk.Select((leg, i) => Leg($"leg {i + 1}", Size(leg.Length), leg.Turn))]) with
        {
            System = system.Name,
            Height = Size(25),
            CoreWidth = Size(drawn.Core),
            Closed = true,
        };
        return (wall, system, drawn.Metric ? 25 * Length.PerMillimetre : Length.PerInch);
    }
}
