using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>A wall taken off while it is filled, stacked, and while its stage needs other things too. The yard is our own invention.</summary>
public sealed class TakeOffWallTests : ShedYard
{
    private WallTakenOff Taken => new TakeOffWall(_yard).Of("shed").Value;

    [Fact]
    public void The_ties_of_the_joints_of_the_kept_filling_are_counted()
    {
        // 10 ft: ties at 0 to 10 ft, 11; in course 1 the hatch from 4 to 6 ft leaves those at 4 and 6 ft standing and takes the one at 5: 10.
        var before = Taken.Takeoff.Hardware[0].Count.Figure;
        before.Should().Be(21);
        var filled = Keep();

        Taken.Takeoff.Hardware[0].Count.Figure.Should().Be(21 + filled.Plan.ExtraTies.Count);
        filled.Plan.ExtraTies.Should().NotBeEmpty();
        Taken.Left.Should().BeEquivalentTo(new { Standing = 0, Courses = 4, FromYard = filled.Plan.Pieces.Count(piece => piece.Source is not null), ToBuy = filled.Plan.Pieces.Count(piece => piece.Bought is not null) });
    }

    [Fact]
    public void After_a_course_is_stacked_only_the_rest_is_needed_and_compared_with_what_is_on_hand()
    {
        var filled = Keep();
        var foam = Line("foam 2-1/2x12");
        // Course 1 is 8 ft on each face, course 2 10 ft: 36 ft.
        foam.NeededLength.Should().Be(Length.Feet(36));

        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1])).Ok.Should().BeTrue();

        Line("foam 2-1/2x12").NeededLength.Should().Be(Length.Feet(20));
        var extra = filled.Plan.ExtraTies.Count(tie => tie.Course == 1);
        var above = filled.Plan.ExtraTies.Count(tie => tie.Course == 2);
        Line("panel tie").NeededCount.Should().Be(11 + above, "the regular ones of course 2 and those of its joints as they are kept");
        Taken.Takeoff.Hardware[0].Count.Figure.Should().Be(21 + extra + above, "the wall takes those of the joints that stand as well");
        (Taken.Left.Standing, Taken.Left.Courses, Taken.Left.Kept!.PlanId).Should().Be((2, 4, 1));
        Taken.Left.Lines(LengthUnit.Inch, Today).Should().ContainSingle().Which.Should().StartWith($"2 of 4 courses stand, all faces counted; to cut yet by plan 1: {Taken.Left.FromYard} pieces of the yard, {Taken.Left.ToBuy} new. On hand: ");
    }

    [Fact]
    public void A_course_that_stands_is_drawn_with_what_it_was_laid_from_and_undo_takes_that_back_too()
    {
        var filled = Keep();
        var laid = filled.Plan.Courses.Single(course => course is { Run: "A outside", Course: 1 });
        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1])).Ok.Should().BeTrue();

        var stood = new SeeWall(_yard).Of("shed").Value.Stacked.Single(course => course.Run == "A outside");
        stood.Pieces.Select(piece => (piece.From, piece.To, piece.Code)).Should().Equal(laid.Pieces.Select(piece => (piece.From, piece.To, filled.Plan.Pieces[piece.Piece].Source?.Code ?? default)));
        Print.Elevation.Text(new SeeWall(_yard).Of("shed").Value, new Print.ElevationOptions()).Should().Contain("course 1, stacked: ").And.MatchRegex("course 2: [NS][0-9]+[A-Z] ");

        _yard.Undo().Ok.Should().BeTrue();
        new SeeWall(_yard).Of("shed").Value.Stacked.Should().BeEmpty();
    }

    [Fact]
    public void What_else_the_stage_needs_comes_off_and_what_a_plan_counts_out_for_it_is_not_on_hand_any_more()
    {
        var line = Line("panel tie");
        (line.OnHandCount, line.OtherCount).Should().Be((60, 0));
        new ChangeStages(_yard).AddNeeds("walls", ["panel tie x50", "lid: foam 2-1/2x12 3' x1 rough"], newNames: true).Ok.Should().BeTrue();

        line = Line("panel tie");
        (line.OnHandCount, line.OtherCount, line.ShortBy).Should().Be((60, 50, 11), "21 and 50 of 60");
        TakeoffText.Of(line, LengthUnit.Inch, Today).Should().Be("panel tie: 21 needed at least, 60 on hand, of which other needs of the stage take 50: short by at least 11");
        var free = Line("foam 2-1/2x12");
        free.OtherLength.Should().Be(Length.Feet(3));

        // Planned, the panel and the ties wait in that plan: they are not on hand, and the needs ask for nothing more.
        var problem = new MatchStages(_yard).Problem(new MatchWish([], Buy: false)).Value;
        new KeepPlan(_yard).Keep(Matcher.Match(problem, new MatchLimits())).Ok.Should().BeTrue();
        line = Line("panel tie");
        (line.OnHandCount, line.OtherCount, line.ShortBy).Should().Be((10, 0, 11));
        Line("foam 2-1/2x12").OtherLength.Should().Be(Length.Zero);
        Line("foam 2-1/2x12").OnHandLength.Should().BeLessThan(free.OnHandLength);
    }

    [Fact]
    public void What_the_wall_itself_entered_is_its_own_need_and_planned_once()
    {
        new ChangeWalls(_yard).Enter("shed", newNames: true).Ok.Should().BeTrue();
        var line = Line("panel tie");
        (line.NeededCount, line.OtherCount).Should().Be((21, 0));

        var problem = new MatchStages(_yard).Problem(new MatchWish([], Buy: false)).Value;
        new KeepPlan(_yard).Keep(Matcher.Match(problem, new MatchLimits())).Ok.Should().BeTrue();
        Taken.Stock.Should().NotContain(one => one.Material.Name == "panel tie", "the plan counts them out");
    }

    // Along a footing of 10 ft and 6 in beyond each end there are 4 spreaders at every 3 ft: at 0, 3, 6, 9 ft.
    [Fact]
    public void Ties_that_a_plan_counts_out_are_no_spreaders_that_are_made_though_both_are_called_so()
    {
        Hardware spreader = (Hardware)MaterialReader.ReadCounted("spreader").Value;
        new ChangeSystems(_yard).Set(_yard.Systems().Single() with { Tie = spreader }, replace: true).Ok.Should().BeTrue();
        _folder.Must("add", "--new", "spreader x60 @shelf");
        new ChangeWalls(_yard).Enter("shed", newNames: true).Ok.Should().BeTrue();
        var problem = new MatchStages(_yard).Problem(new MatchWish([], Buy: false)).Value;
        new KeepPlan(_yard).Keep(Matcher.Match(problem, new MatchLimits())).Ok.Should().BeTrue();

        var footing = new FootingForms
        {
            Board = (Lumber)MaterialReader.Read("2x10").Value,
            Beyond = Length.Inches(6),
            Spacing = Length.Feet(3),
            Stake = MaterialReader.Read("2x4").Value,
            StakeLength = Length.Inches(24),
            Spreader = MaterialReader.Read("1x4").Value,
        };
        new ChangeWalls(_yard).Set("walls", _yard.Walls().Single().Sheet with { Footing = footing }, replace: true).Ok.Should().BeTrue();

        Taken.Still.Cuts.Single(cut => cut.Cut.Name == "shed / spreader").Count.Figure.Should().Be(4);
        Taken.Still.Hardware[0].Count.Figure.Should().Be(0, "the plan counts all 21 out");
    }

    [Fact]
    public void What_is_entered_after_a_course_stands_is_what_is_left_to_get()
    {
        // Two free ends take 2 brackets each in each of 2 courses: 8; ties as above.
        new ChangeWalls(_yard).Enter("shed", newNames: true).Ok.Should().BeTrue();
        Needed().Should().Equal(("shed / panel tie", 21), ("shed / end bracket", 8));
        var above = Keep().Plan.ExtraTies.Count(tie => tie.Course == 2);
        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1])).Ok.Should().BeTrue();

        new ChangeWalls(_yard).Enter("shed", newNames: true).Value.ToString().Should().Contain(" counted things of courses that stand are not asked for, and bins that they came from still count them until told how many are left; not entered, since several");

        Needed().Should().Equal(("shed / panel tie", 11 + above), ("shed / end bracket", 4));
        Line("end bracket").Should().Match<Offcuts.Walls.StockLine>(line => line.NeededCount == 4 && line.OnHandCount == 0 && line.ShortBy == 4);
    }

    [Fact]
    public void Needs_that_have_changed_since_they_were_entered_are_told_with_both_numbers()
    {
        Taken.Changed.Should().BeEmpty("nothing is entered yet");
        Enter();
        Taken.Changed.Should().BeEmpty();

        var ties = 21 + Keep().Plan.ExtraTies.Count;
        Taken.Changed.Should().Equal(new ChangedNeed("panel tie", 21, ties));
        Told().Should().ContainSingle(line => line.Contains("changed since")).Which.Should().Be($"  ! needs in walls have changed since they were entered: panel tie 21, now {ties}; enter them again: offcuts wall enter shed");

        Enter();
        Told().Should().NotContain(line => line.Contains("changed since"));

        void Enter() => new ChangeWalls(_yard).Enter("shed", newNames: true).Ok.Should().BeTrue();
        IEnumerable<string> Told() => TakeoffText.Lines(Taken, LengthUnit.Inch, Today, open: false);
    }

    // The wall asks for panel ties, which lie in a bin, and for end brackets, which nothing has yet.
    [Fact]
    public void Only_those_new_names_are_entered_that_were_said_to_be_meant()
    {
        var walls = new ChangeWalls(_yard);
        walls.NewNames("shed").Value.Select(name => name.Material.Name).Should().Equal("end bracket");

        walls.Enter("shed", name => name.Material.Name == "corner bracket").Fault.Sentence.Should().Contain("end bracket", "another program may have changed the system since it was asked");
        walls.Enter("shed", name => name.Material.Name == "end bracket").Ok.Should().BeTrue();
        walls.NewNames("shed").Value.Should().BeEmpty();
    }

    [Fact]
    public void What_is_not_proven_is_named_with_what_more_time_may_bring()
    {
        var filled = new FillWall(_yard).Fill("shed", buy: true, new MatchLimits { Time = TimeSpan.FromMilliseconds(1), Clock = TimeProvider.System }).Value;
        filled.TimeUp.Should().Be(TimeSpan.FromMilliseconds(1), "its time was up");
        var tiers = new RunTiers([new(1, Figure.Best(0))], Figure.Best(10500), Figure.Best(0), Figure.Best(0), new Figure(12, 9), new Figure(144, 20));
        filled = filled with { Plan = filled.Plan with { Tiers = tiers }, TimeUp = TimeSpan.FromSeconds(20) };

        LayingFacts.NotProven(filled).Should().Equal("Not proven to be the best there is: joints, saw cuts. The search was ended after 20 s; more time may bring less of them: offcuts wall fill shed --time 60");
        FillText.Lines(filled, _yard.Settings(), Today, code => code.ToString()).Should().Contain("Saw cuts:                     144  at best 20, off by 124 at most").And.Contain(LayingFacts.NotProven(filled));
        LayText.Lines(filled, _yard.Settings()).Should().Contain(LayingFacts.NotProven(filled));
        LayText.InShort(filled, "$").Should().EndWith("best found, more time may bring better");
        LayingFacts.NotProven(filled with { Plan = filled.Plan with { Tiers = tiers with { Joints = Figure.Best(12), SawCuts = Figure.Best(20) } } }).Should().BeEmpty();
    }

    [Fact]
    public void Panels_of_another_type_of_foam_are_named_with_what_the_system_sheet_would_say()
    {
        Taken.LeftOut.Should().NotContain(line => line.Contains("but for the type"));
        _folder.Must("add", "--new", "foam 2-1/2x12 II 4' x2 @bay");
        _folder.Must("add", "--new", "foam 2-1/2x12 II 4' poor @bay");

        Taken.LeftOut[0].Should().Be("2 pieces of foam 2-1/2x12 II would do but for the type of foam: if the wall may be of it, its system sheet says foam type II.");
    }

    [Fact]
    public void Another_wall_of_which_no_filling_is_kept_is_told_as_left_out()
    {
        Taken.LeftOut.Should().Equal("On hand leaves out what is reserved for other stages and what waits in other plans; what else the stage walls needs comes off it. What other stages need and nobody has planned or reserved yet does not.");
        var shed = _yard.Walls().Single().Sheet;
        new ChangeWalls(_yard).Set("walls", shed with { Name = "barn" }).Ok.Should().BeTrue();
        Taken.LeftOut[1].Should().Be("Not counted: what barn takes of panels and boards, of which no filling is kept.");
    }

    [Fact]
    public void A_piece_of_the_kept_filling_that_is_gone_is_named()
    {
        var filled = Keep();
        var code = filled.Plan.Pieces.First(piece => piece.Source is not null).Source!.Code;
        new ChangePieces(_yard).Mark([code], PieceState.Scrapped).Ok.Should().BeTrue();

        Taken.Left.Gone.Should().Equal(code);
        Taken.Left.Lines(LengthUnit.Inch, Today).Last().Should().Be($"! not as planned any more: {code}; fill it again");
    }

    [Fact]
    public void A_filling_that_rests_on_a_piece_or_a_sheet_that_is_another_now_is_not_kept()
    {
        var filled = new FillWall(_yard).Fill("shed", buy: true, Limits).Value;
        var code = filled.Plan.Pieces.First(piece => piece.Source is not null).Source!.Code;
        new ChangePieces(_yard).Mark([code], PieceState.Scrapped).Ok.Should().BeTrue();
        new FillWall(_yard).Keep(filled).Fault.Sentence.Should().Be($"{code} is not free any more as it was when the wall shed was filled; fill it again");

        var shed = _yard.Walls().Single().Sheet;
        new ChangeWalls(_yard).Set("walls", shed with { Height = Length.Feet(3) }, replace: true).Ok.Should().BeTrue();
        new FillWall(_yard).Keep(filled).Fault.Sentence.Should().Be("the sheet of the wall shed is another than when it was filled; fill it again");
    }

    [Fact]
    public void A_filling_is_not_kept_over_a_course_that_was_stacked_while_it_was_found()
    {
        Keep();
        var found = new FillWall(_yard).Fill("shed", buy: true, Limits).Value;
        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1])).Ok.Should().BeTrue();
        var free = found with { Plan = found.Plan with { Pieces = [.. found.Plan.Pieces.Select(piece => piece with { Source = null, Bought = piece.Bought ?? _yard.Prices().Of(piece.Material)[0] })] } };

        new FillWall(_yard).Keep(free).Fault.Sentence.Should().Be(StoreFaults.ChangedMeanwhile().Sentence);
    }

    [Fact]
    public void Once_everything_is_cut_nothing_is_to_be_bought_any_more()
    {
        var filled = Keep();
        var plan = _yard.WallPlans().Single().PlanId;
        filled.ToBuy.Should().NotBeEmpty();
        CutActs.Read(_yard.Plan(plan)!, new CutWords([], All: true, [], Spoilt: false, []), new YardSettings(), []).TryGet(out var all).Should().BeTrue();
        new CarryOut(_yard, Today, Limits).Do(plan, all!, hardware: false).Ok.Should().BeTrue();

        Taken.Left.Lines(LengthUnit.Inch, Today).Should().Equal($"0 of 4 courses stand, 4 are cut and wait to be stacked, all faces counted; to cut yet by plan {plan}: 0 pieces of the yard, 0 new. On hand: enough for all that is not stacked");
        new TakeOffWall(_yard).Of("shed").Value.LeftOut.Should().HaveCount(1);
        Taken.Stock.Should().NotContain(line => line.Material is FoamPanel, "its panels are cut and lie there");
        Line("panel tie").NeededCount.Should().Be(21 + filled.Plan.ExtraTies.Count, "a tie is set as its course is stacked");

        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [1])).Ok.Should().BeTrue();
        Line("panel tie").NeededCount.Should().Be(11 + filled.Plan.ExtraTies.Count(tie => tie.Course == 2));
        new StackWall(_yard, Today, Limits).Do(new StackedWish("shed", [2])).Ok.Should().BeTrue();
        Taken.Stock.Should().NotContain(line => line.Material is FoamPanel);
        Taken.Still.Hardware.Sum(one => one.Count.Figure).Should().Be(0);
    }

    [Fact]
    public void Of_a_course_that_is_cut_in_part_only_the_rest_of_its_panels_is_needed()
    {
        Keep();
        var (kept, plan) = (_yard.WallPlans().Single().Plan, _yard.WallPlans().Single().PlanId);
        var before = Line("foam 2-1/2x12").NeededLength;
        var piece = kept.Courses.First(course => course.Pieces.Count > 1).Pieces[0].Piece;
        var made = kept.Courses.SelectMany(course => course.Pieces).Where(one => one.Piece == piece).Sum(one => (one.To - one.From).Units);

        new CarryOut(_yard, Today, Limits).Do(plan, [new CutAct(piece)], hardware: false).Ok.Should().BeTrue();

        Line("foam 2-1/2x12").NeededLength.Should().Be(before - Length.FromUnits(made));
    }

    [Fact]
    public void What_was_cut_for_a_wall_is_known_after_it_is_moved_or_its_system_is_another()
    {
        Keep();
        var plan = _yard.WallPlans().Single().PlanId;
        CutActs.Read(_yard.Plan(plan)!, new CutWords([], All: true, [], Spoilt: false, []), new YardSettings(), []).TryGet(out var all).Should().BeTrue();
        new CarryOut(_yard, Today, Limits).Do(plan, all!, hardware: false).Ok.Should().BeTrue();
        new ChangeStages(_yard).Add("later", null).Ok.Should().BeTrue();

        new ChangeWalls(_yard).Move("shed", "later").Ok.Should().BeTrue();

        _yard.WallPlans().Should().BeEmpty();
        _yard.StackedCourses().Should().HaveCount(4).And.OnlyContain(course => course.OnlyCut);
        _yard.Undo();
        _yard.StackedCourses().Should().BeEmpty();
        var system = _yard.Systems().Single();
        new ChangeSystems(_yard).Set(system with { AtCorner = [] }, replace: true).Ok.Should().BeTrue();
        _yard.StackedCourses().Should().HaveCount(4);
    }

    [Fact]
    public void A_wall_or_a_system_whose_notes_alone_are_others_keeps_its_filling_and_stacks_nothing()
    {
        Keep();
        CutAll();
        var (wall, system) = (_yard.Walls().Single(), _yard.Systems().Single());

        new ChangeWalls(_yard).Set(wall.Stage, wall.Sheet with { Notes = ["from the drawing of May"] }, replace: true).Ok.Should().BeTrue();
        new ChangeSystems(_yard).Set(system with { Notes = ["from the paper of May"] }, replace: true).Ok.Should().BeTrue();

        _yard.WallPlans().Should().ContainSingle();
        _yard.StackedCourses().Should().BeEmpty("that all is cut is known from the plan, which is still there");
    }

    [Fact]
    public void What_was_cut_for_a_wall_is_known_after_its_plan_is_dropped()
    {
        var filled = Keep();
        CutAll();
        _yard.Change("dropped it", work => work.DropWallPlan("shed")).Ok.Should().BeTrue();

        _yard.StackedCourses().Should().HaveCount(filled.Plan.Courses.Count);
    }

    [Fact]
    public void Filled_again_a_wall_that_was_filled_without_buying_buys_nothing_until_it_is_let()
    {
        var fill = new FillWall(_yard);
        fill.Keep(fill.Fill("shed", buy: false, Limits).Value).Ok.Should().BeTrue();

        _yard.WallPlans().Single().Plan.Buys.Should().BeFalse();
        fill.Asked("shed").Value.Problem.Buy.Should().BeFalse();
        fill.Asked("shed", buy: true).Value.Problem.Buy.Should().BeTrue();
    }

    [Fact]
    public void A_filling_says_nothing_of_how_the_other_needs_of_its_stage_are_planned()
    {
        new ChangeStages(_yard).AddNeeds("walls", ["shelf: foam 2-1/2x12 20"]).Ok.Should().BeTrue();
        var problem = new MatchStages(_yard).Problem(new MatchWish([], Buy: true) { Order = TierOrder.SawCutsFirst }).Value;
        new KeepPlan(_yard).Keep(Matcher.Match(problem, new MatchLimits())).Ok.Should().BeTrue();
        Keep();

        new MatchStages(_yard).Problem(new MatchWish([], Buy: true)).Value.Order.Should().Be(TierOrder.SawCutsFirst);
    }

    private void CutAll()
    {
        var plan = _yard.WallPlans().Single().PlanId;
        CutActs.Read(_yard.Plan(plan)!, new CutWords([], All: true, [], Spoilt: false, []), new YardSettings(), []).TryGet(out var all).Should().BeTrue();
        new CarryOut(_yard, Today, Limits).Do(plan, all!, hardware: false).Ok.Should().BeTrue();
    }

    private WallFilled Keep()
    {
        var fill = new FillWall(_yard);
        var filled = fill.Fill("shed", buy: true, Limits).Value;
        fill.Keep(filled).Ok.Should().BeTrue();
        return filled;
    }

    private IEnumerable<(string, int)> Needed() => _yard.Stages().Named("walls")!.Hardware.Select(need => (need.Name, need.Count));

    private Offcuts.Walls.StockLine Line(string material) => Taken.Stock.Single(line => line.Material.Name == material);
}
