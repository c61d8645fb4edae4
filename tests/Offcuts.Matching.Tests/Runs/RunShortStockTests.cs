using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Methods;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Walls for which stock does not reach: what is filled, what stays open, and that the later tiers still count.</summary>
public class RunShortStockTests
{
    private const string NothingUnder = "the course below it stays open, so nothing is cut for it yet";

    // The offcut of 40 in covers the upper course; the lower one of 60 in stays open.
    private static RunRequest Hanging => Request([Run(60, courses: 2, stagger: 0) with
    {
        Courses = [new Course(1, In(12), [new Span(Length.Zero, In(60))]), new Course(2, In(12), [new Span(Length.Zero, In(40))])],
    }], Offcut(1, 40));

    [Fact]
    public void Nothing_is_laid_on_a_course_that_stays_open()
    {
        var plan = Fill(Hanging with { Buy = false });

        plan.Pieces.Should().BeEmpty();
        plan.Tiers.Unfilled.Select(level => level.Unfilled).Should().Equal(Figure.Best(1), Figure.Best(1));
        plan.Courses.Select(course => course.Reason).Should().Equal("what is left of foam 2-1/2x12 does not reach, and no more can be bought", NothingUnder);
    }

    [Fact]
    public void So_it_is_where_the_store_has_too_few()
    {
        Fill(Hanging with { Prices = new PriceBook([Panel(limit: 0)]) }).Pieces.Should().BeEmpty();
        Fill(Hanging with { Prices = new PriceBook([Panel(limit: 2)]) }).Tiers.UnfilledInAll.Should().Be(Figure.Best(0));
    }

    // No joint in 50 in leaves 26 in on either side, and the longest panel is 48 in: that is no matter of stock, and something will be found on the site.
    [Fact]
    public void What_lies_on_a_course_that_nothing_new_could_cover_is_laid_all_the_same()
    {
        var run = Hanging.Runs[0] with
        {
            ShortestPiece = In(26),
            Courses = [new Course(1, In(12), [new Span(Length.Zero, In(50))]), new Course(2, In(12), [new Span(Length.Zero, In(40))])],
        };

        var plan = Fill(Request([run], Offcut(1, 40)));

        plan.Courses.Select(course => course.Reason).Should().Equal("no row of pieces that can be had keeps the lines, the shortest piece and the stagger", null);
    }

    [Fact]
    public void A_plan_with_something_on_an_open_course_is_found_out()
    {
        var wall = Hanging with { Buy = false };
        var upper = RunProblem.Create(wall with { Runs = [wall.Runs[0] with { Courses = [wall.Runs[0].Courses[1]] }] }).Value;
        var (laid, both) = (RunFiller.Fill(upper, MatchLimits.None), RunProblem.Create(wall).Value);

        var hanging = laid with
        {
            Courses = [new LaidCourse("north outside", 1, [], "open"), .. laid.Courses],
            Tiers = laid.Tiers with { Unfilled = [new CourseFigure(1, Figure.Best(1)), .. laid.Tiers.Unfilled] },
        };

        RunChecker.Faults(both, hanging).Should().Equal("north outside, course 2: it is laid on a course that stays open");
    }

    // 8 ft x 3 ft, both faces, a saw of 1/8 in, half a panel of stagger, no price. Courses 1 and 3 are 48 | 48: no cut, 1 joint each. Course 2 is
    // 24 | 48 | 24; two pieces of 24 in and the saw take more than one panel, so it takes 3 panels, 2 cuts and 2 joints. Of 12 panels courses 1
    // take 4, courses 2 take 6, and 2 are left for one of the two courses 3: 1 + 1 + 2 + 2 + 1 joints, 2 x 2 cuts, all joints on ties.
    [Fact]
    public void Whole_panels_are_not_chopped_where_something_stays_open()
    {
        var panels = Enumerable.Range(1, 12).Select(number => Offcut(number, 48)).ToArray();
        var request = Request([Run(96, courses: 3, stagger: 24), Run(96, courses: 3, stagger: 24, name: "north inside")], panels) with { Prices = PriceBook.Empty, Settings = YardSettings.Usual };

        var tiers = Fill(request).Tiers;

        tiers.Unfilled.Select(level => level.Unfilled.Value).Should().Equal(0, 0, 1);
        (tiers.ExtraTies.Value, tiers.Joints.Value, tiers.SawCuts.Value).Should().Be((0, 7, 4));
    }

    // 10 ft and 6 ft, both faces: a course takes 32 ft, and 24 panels of 4 ft and a few inches less are 3 courses less what the saw takes. Each
    // face goes up by itself, but nothing of the fourth course is begun while some of the second is open.
    [Fact]
    public void Courses_are_filled_from_the_bottom_up()
    {
        Run Face(decimal length, string leg, string face) => Run(length, courses: 5, name: $"{leg} {face}", leg: leg);
        Run[] faces = [Face(120, "a", "outside"), Face(120, "a", "inside"), Face(72, "b", "outside"), Face(72, "b", "inside")];
        var pieces = Enumerable.Range(1, 24).Select(number => Offcut(number, 48 - number % 5 * 2)).ToArray();

        var plan = Fill(Request(faces, pieces) with { Buy = false });

        plan.Tiers.Unfilled.Take(2).Should().OnlyContain(level => level.Unfilled == Figure.Best(0));
        plan.Tiers.Unfilled.Select(level => level.Unfilled.Value).Should().BeInAscendingOrder();
        plan.Tiers.Unfilled[^1].Unfilled.Value.Should().Be(4);
    }

    // Four courses of 36 ft take 36 panels; the prices that a program proposes first are no guide.
    [Fact]
    public void What_is_laid_in_haste_costs_little_more()
    {
        var problem = RunProblem.Create(Request([Run(432, 4)], Offcut(1, 30), Offcut(2, 36))).Value;
        var stopped = new MatchLimits { Cancel = new CancellationToken(canceled: true) };

        var hasty = RunFiller.Fill(problem, stopped).Tiers;

        hasty.UnfilledInAll.Value.Should().Be(0);
        hasty.Spend.Value.Should().BeInRange(35 * 1800, 42 * 1800);
    }

    [Fact]
    public void Rows_are_laid_no_further_once_time_is_over()
    {
        var part = RunPart.Of(RunProblem.Create(Request([Run(432, 4)], Offcut(1, 30))).Value, Foam);
        var prices = StockRelaxation.Solve(part, Filling.Empty(part) with { Filled = [true, true, true, true] }, RunGoal.Together, new Effort(MatchLimits.None)).Prices;
        var over = new Effort(new MatchLimits { Cancel = new CancellationToken(canceled: true) });
        var site = new Site(part, new WorthTable(part, prices), new Random(1)) { Until = over };

        site.LayFirmly(part.Rows[0], 6);

        site.Filling().Bars.Should().BeEmpty();
    }
}
