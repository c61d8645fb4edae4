using System.Globalization;
using System.Text;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What stays of a kept filling while a wall is stacked course by course. All yards are our own invention.</summary>
public sealed class StackWallTests : IDisposable
{
    private static readonly DateOnly Today = new(2026, 6, 1);

    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public StackWallTests() => _yard = YardFile.Open(_folder.YardPath, _folder.Clock);

    private static MatchLimits Limits => MatchLimits.None;

    private KeptWallPlan Kept => _yard.WallPlans().Single();

    private StageWall Wall => _yard.Walls().Single();

    private KeptPlan Steps => _yard.Plan(Kept.PlanId)!;

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Stacking_a_course_leaves_the_others_kept_under_the_same_plan_until_the_wall_stands()
    {
        // 1' 10" on each face, two courses: four pieces of 22 in, two out of each new panel of 48 in.
        Yard("leg A: 1' 10\" end", "2'");
        var filled = Keep();
        filled.ToBuy.Single().Count.Should().Be(2);

        var first = Stack([1], Face.Outside);

        (first.PlanId, first.Kept, first.Open, first.GivenUp.Count).Should().Be((1, 3, 0, 0));
        StackedText.Rest(first, "wall").Should().Equal("The rest, 3 courses, stays kept as it was filled, by plan 1.");
        // 48 less 22 less the kerf of 1/8 in comes back, and the other piece of 22 in is cut from it.
        var aside = first.Carried.NewPieces.Should().ContainSingle().Subject;
        aside.Length.Should().Be(In(26) - _yard.Settings().Kerf(aside.Material));
        var later = Steps.Plan.Pieces.Select((piece, i) => (piece, Steps.Steps[i].State)).Single(one => one.piece.Source?.Code == aside.Code);
        later.State.Should().Be(StepState.Waiting);
        later.piece.Cuts.Should().ContainSingle().Which.Length.Should().Be(In(22));
        Steps.NotMade.Should().BeEmpty("what is put aside is cut later, and not lacking");

        Stack([1], Face.Inside).Kept.Should().Be(2);
        var last = Stack([2]);
        (last.Kept, last.Open, last.Carried.NewPieces.Count).Should().Be((0, 0, last.Carried.NewPieces.Count));
        _yard.WallPlans().Should().BeEmpty("the wall stands");
        _yard.StackedCourses().Should().HaveCount(4);
        _yard.Ledger().Sum(line => line.Spent.Cents).Should().Be(3000, "the panels are paid for once");
    }

    // What is put aside lies where the kerf of the day of filling left it: 22 in from 22-1/8 in on, or from 22 in on without a kerf.
    [Theory]
    [InlineData("1/8", "1/4", "25-7/8")]
    [InlineData("1/8", "1/16", "25-15/16")]
    [InlineData("1/8", "0", "26")]
    [InlineData("0", "1/8", "26")]
    [InlineData("0", "1/4", "26")]
    public void A_kerf_that_changes_after_keeping_saws_into_nothing_that_is_cut_later(string filled, string stacked, string aside)
    {
        Yard("leg A: 1' 10\" end", "2'");
        Kerf(_yard, filled);
        Keep();
        Kerf(_yard, stacked);

        var first = Stack([1], Face.Outside);

        (first.Kept, first.Open, first.GivenUp.Count).Should().Be((3, 0, 0));
        first.Carried.NewPieces.Should().ContainSingle().Which.Length.Should().Be(Length.Parse($"{aside}\"").Value);
        Strays(_yard).Should().BeEmpty();
        Stack([1], Face.Inside).Kept.Should().Be(2);
        Strays(_yard).Should().BeEmpty();
        new FillWall(_yard).Shown("wall").Ok.Should().BeTrue("it can still be looked at");
        Stack([2]).Kept.Should().Be(0);
        _yard.WallPlans().Should().BeEmpty("the wall stands");
        _yard.Ledger().Sum(line => line.Spent.Cents).Should().Be(3000, "the panels are paid for once");
    }

    [Fact]
    public void A_course_whose_piece_is_gone_is_given_up_with_its_reason_and_the_others_stay()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        var filled = Keep();
        filled.ToBuy.Should().BeEmpty("four pieces of 22 in lie there");
        var gone = Source("A inside", 2);
        new ChangePieces(_yard).Mark([gone], PieceState.Scrapped).Ok.Should().BeTrue();

        var done = Stack([1]);

        (done.Kept, done.Open).Should().Be((1, 1));
        done.GivenUp.Should().ContainSingle().Which.Should().Match<LaidCourse>(course => course.Run == "A inside" && course.Course == 2);
        StackedText.Rest(done, "wall").Should().Equal(
            "The rest, 1 course, stays kept as it was filled, by plan 1.",
            $"given up: A inside, course 2: {gone} is not there any more as planned",
            "1 course neither stands nor is filled; what does not stand is filled again with: offcuts wall fill wall --keep");
        Kept.Plan.Courses.Single(course => course is { Run: "A inside", Course: 2 }).Unfilled.Should().BeTrue();
        Kept.Plan.Tiers.UnfilledInAll.Value.Should().Be(1);
        Do([2], Face.Inside).Faults.Select(fault => fault.Sentence).Should().Equal("A inside, course 2: the kept filling leaves it unfilled, so it can't be stacked");
        Stack([2], Face.Outside).Courses.Should().ContainSingle();

        _yard.Undo().Ok.Should().BeTrue();
        _yard.Undo().Ok.Should().BeTrue("stacking and giving up are one change");
        Kept.Plan.Courses.Should().OnlyContain(course => !course.Unfilled);
        _yard.StackedCourses().Should().BeEmpty();
    }

    [Fact]
    public void A_course_of_which_a_piece_came_out_otherwise_is_not_stacked_as_planned()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 22\", 22\" line 0 @loft");
        Keep();
        var spoilt = Kept.Plan.Courses[0].Pieces[0].Piece;
        new CarryOut(_yard, Today, Limits).Do(1, [new CutAct(spoilt) { Otherwise = new WhatHappened([], []) }], hardware: false).Ok.Should().BeTrue();

        Do([1]).Faults.Select(fault => fault.Sentence).Should().Equal("A outside, course 1: a piece of it did not come out as planned, so it can't be stacked as it was filled; fill it again, or name what lies there piece by piece, with --laid or on the screen behind a colon, and write cut for each piece that came out as planned: cut, new 2', cut");
        Stack([1], Face.Inside).Should().Match<WallStacked>(done => done.Kept == 0 && done.Open == 1);
    }

    [Fact]
    public void What_was_cut_already_and_waits_to_be_stacked_stays_so_while_others_are_stacked()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        Keep();
        var above = Kept.Plan.Courses.Single(course => course is { Run: "A outside", Course: 2 }).Pieces[0].Piece;
        new CarryOut(_yard, Today, Limits).Do(1, [new CutAct(above)], hardware: false).Ok.Should().BeTrue();

        var done = Stack([1]);

        (done.Kept, done.Open).Should().Be((2, 0), "course 2 outside is cut, course 2 inside is kept");
        Steps.Steps[above].State.Should().Be(StepState.Done);
        new FillWall(_yard).Standing(Wall).Should().HaveCount(2);
        new FillWall(_yard).StandingOrCut(Wall).Should().HaveCount(3).And.ContainSingle(course => course.OnlyCut).Which.Run.Should().Be("A outside");
    }

    [Fact]
    public void What_is_cut_does_not_stand_until_it_is_said_to_be_stacked()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        Keep();
        Cut([0, 1, 2, 3]);

        _yard.StackedCourses().Should().BeEmpty();
        Do([2]).Faults.Select(fault => fault.Sentence).Should().Contain("A outside, course 2: the course below it does not stand yet", "course 1 is cut and lies there");
        Stack([1]).Should().Match<WallStacked>(done => done.Courses.Count == 2 && done.Kept == 2 && done.Open == 0 && done.GivenUp.Count == 0 && done.Carried.Lines.Count == 0);
        Do([1]).Faults.Select(fault => fault.Sentence).Should().Equal("A inside, course 1: it stands already");
        Stack([2]).Kept.Should().Be(0);
        _yard.StackedCourses().Should().HaveCount(4).And.OnlyContain(course => !course.OnlyCut);
        _yard.WallPlans().Should().BeEmpty("the wall stands");
    }

    [Fact]
    public void What_was_cut_by_a_filling_that_is_kept_no_more_waits_and_is_stacked_all_the_same()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        Keep();
        var first = Kept.Plan.Courses.Single(course => course is { Run: "A outside", Course: 1 }).Pieces[0].Piece;
        Cut([first]);
        // The rest is filled again: what is cut is left as it is.
        Keep().Plan.Courses.Should().HaveCount(3);
        _yard.StackedCourses().Should().ContainSingle().Which.OnlyCut.Should().BeTrue();
        Do([1], Face.Outside, "new").Faults.Select(fault => fault.Sentence).Should().Equal("A outside, course 1: it was cut by a filling that is kept no more, so only that it is stacked as it was cut can be said");

        Stack([1]).Should().Match<WallStacked>(done => done.Courses.Count == 2 && done.Kept == 2 && done.Open == 0);

        _yard.StackedCourses().Should().HaveCount(2).And.OnlyContain(course => !course.OnlyCut);
        _yard.Undo().Ok.Should().BeTrue();
        _yard.StackedCourses().Should().ContainSingle().Which.OnlyCut.Should().BeTrue("it waits again");
        // Another sheet gives the filling up; what is cut still waits and can be stacked by itself.
        new ChangeStages(_yard).Add("later", null).Ok.Should().BeTrue();
        new ChangeWalls(_yard).Move("wall", "later").Ok.Should().BeTrue();
        _yard.WallPlans().Should().BeEmpty();
        Do([1]).Fault.Sentence.Should().StartWith("no filling of the wall wall is kept", "course 1 inside was not cut");
        Stack([1], Face.Outside).Should().Match<WallStacked>(done => done.Courses.Count == 1 && done.Kept == 0 && done.Open == 3);
    }

    [Fact]
    public void A_piece_that_was_spoilt_leaves_its_course_open_in_every_count_and_drawing_until_something_takes_its_place()
    {
        // 8 ft of one course: two pieces at least on each face.
        Yard("leg A: 8' end", "1'", "foam 2-1/2x12 4' x5 line 0 @loft");
        Keep();
        var course = Kept.Plan.Courses.Single(one => one.Run == "A inside");
        course.Pieces.Should().HaveCountGreaterThan(1);
        Cut([course.Pieces[0].Piece]);
        var left = () => LeftToLay.Of(_yard, new ChangeWalls(_yard).Laid("wall").Value);
        left().Lines(LengthUnit.Inch, Today).Single().Should().EndWith("On hand: enough for all that is not stacked");
        new CarryOut(_yard, Today, Limits).Do(1, [new CutAct(course.Pieces[^1].Piece) { Otherwise = new WhatHappened([], []) }], hardware: false).Ok.Should().BeTrue();

        left().Lines(LengthUnit.Inch, Today).Single().Should().EndWith("On hand: not enough by this filling any more: 1 course lacks a piece, so fill it again");
        var filled = new FillWall(_yard).Shown("wall").Value;
        LayingFacts.Unfilled(filled).Should().ContainSingle().Which.Should().Match<LaidCourse>(open => open.Run == "A inside" && open.Reason == "a piece of it did not come out as planned");
        var drawn = new SeeWall(_yard).Of("wall").Value;
        drawn.Plan!.Courses.Single(one => one.Run == "A inside").Pieces.Should().HaveCount(course.Pieces.Count - 1, "the scrapped one is not drawn");
        Do([1]).Ok.Should().BeFalse();

        // Another panel took its place: the one that was cut lies where it was to lie.
        var panel = _yard.Pieces().First(piece => piece.OnHand && Steps.Plan.Pieces.Zip(Steps.Steps).All(one => one.First.Source?.Code != piece.Code || one.Second.State != StepState.Waiting)).Code;
        Do([1], Face.Inside, "new, cut").Fault.Sentence.Should().Be("A inside, course 1: no piece that begins at 48\" was cut for it; write new or a code there");
        var done = Stack([1], Face.Inside, string.Join(", ", Enumerable.Repeat("cut", course.Pieces.Count - 1).Append(panel.Text)));
        (done.Kept, done.Open, done.GivenUp.Count, done.Mind.Count).Should().Be((1, 0, 0, 0));
        var stood = _yard.StackedCourses().Single();
        stood.Pieces[^1].Code.Should().Be(panel);
        stood.Pieces[0].Code.Should().Be(course.Pieces[0] is var one ? Steps.Plan.Pieces[one.Piece].Source!.Code : default);
        left().Lines(LengthUnit.Inch, Today).Single().Should().EndWith("On hand: enough for all that is not stacked");
    }

    [Fact]
    public void What_was_cut_for_a_course_and_does_not_lie_in_it_is_named_since_no_list_has_it()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 22\", 22\" line 0 @loft");
        Keep();
        Cut([Kept.Plan.Courses.Single(one => one.Run == "A inside").Pieces[0].Piece]);

        Stack([1], Face.Inside, "new").Mind.Should().Equal("A inside, course 1: cut for it and not laid there: 22\"; catalogue what is left of it");
    }

    [Fact]
    public void A_course_laid_of_a_new_panel_instead_of_its_offcut_leaves_that_free_and_the_rest_kept()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        Keep();
        var planned = Source("A outside", 1);

        var done = Stack([1], Face.Outside, "new");

        (done.Kept, done.Open, done.GivenUp.Count).Should().Be((3, 0, 0));
        done.Carried.NewPieces.Should().ContainSingle().Which.Should().Match<Piece>(left => left.Length == In(26) - _yard.Settings().Kerf(left.Material) && left.FirstLine != null);
        _yard.Ledger().Sum(line => line.Spent.Cents).Should().Be(1500);
        _yard.Piece(planned)!.OnHand.Should().BeTrue();
        Steps.Plan.Pieces.Zip(Steps.Steps).Where(piece => piece.Second.State == StepState.Waiting).Should().NotContain(piece => piece.First.Source!.Code == planned, "it is free again");
        StackedText.InShort(done with { Mind = ["a", "b"] }).Should().Be("; 3 courses stay kept; 2 to mind, first: a");
        _yard.StackedCourses().Single().Pieces.Should().ContainSingle().Which.Code.IsNone.Should().BeTrue();
        Faults(_yard).Should().BeEmpty();
        _yard.Undo().Ok.Should().BeTrue();
        (_yard.StackedCourses().Count, Kept.Plan.Pieces.Count, _yard.Ledger().Count).Should().Be((0, 4, 0), "it was one change");
    }

    [Fact]
    public void A_course_laid_of_a_piece_that_was_planned_for_another_gives_up_that_one_alone()
    {
        Yard("leg A: 1' 10\" end", "2'", "foam 2-1/2x12 22\", 22\", 22\", 22\" line 0 @loft");
        Keep();
        var other = Source("A outside", 2);

        var done = Stack([1], Face.Outside, other.ToString());

        (done.Kept, done.Open).Should().Be((2, 1));
        StackedText.Rest(done, "wall").ElementAt(1).Should().Be($"given up: A outside, course 2: {other} was laid in A outside, course 1");
        _yard.Piece(other)!.OnHand.Should().BeFalse();
        Faults(_yard).Should().BeEmpty();
    }

    [Fact]
    public void A_course_laid_with_other_joints_gives_up_the_one_above_whose_joints_would_be_too_near()
    {
        // 8 ft: a joint of course 1 right below the first one of course 2 outside. The stagger is 1 ft.
        Yard("leg A: 8' end", "2'");
        Keep();
        var joint = Kept.Plan.Courses.Single(course => course is { Run: "A outside", Course: 2 }).Joints.First();

        var done = Stack([1], Face.Outside, With(joint));

        (done.Kept, done.Open).Should().Be((2, 1));
        done.GivenUp.Should().ContainSingle().Which.Should().Match<LaidCourse>(course => course.Run == "A outside" && course.Course == 2 && course.Reason == "a joint of it would lie too near one of course 1 as that stands");
        Faults(_yard).Should().BeEmpty();
        Stack([1], Face.Inside);
        var under = _yard.StackedCourses().Single(course => course.Run == "A inside").Joints[0];
        Do([2], Face.Inside, With(under)).Value.Mind.Should().Contain($"A inside, course 2: the joint at {under} lies nearer than the stagger of 12\" to one of course 1");
    }

    [Theory]
    [InlineData("new 1'", "A outside, course 1: nothing is laid from 12\" to 96\"")]
    [InlineData("new, new, new", "A outside, course 1: more is laid than the 96\" that it takes")]
    [InlineData("new, new 5'", "A outside: of a new piece there is only 48\"")]
    [InlineData("new 40\", new 40\", new 20\"", "A outside, course 1: a piece lies from 80\" to 100\", but what is to be covered there ends at 96\"")]
    [InlineData("HNEWPH3 2'", "HNE WPH3 is not in the yard")]
    public void What_cannot_have_been_laid_is_refused(string laid, string sentence)
    {
        Yard("leg A: 8' end", "1'");
        Keep();

        Do([1], Face.Outside, laid).Faults.Select(fault => fault.Sentence).Should().Equal(sentence);
        _yard.StackedCourses().Should().BeEmpty();
    }

    [Fact]
    public void What_is_left_of_a_piece_that_was_laid_otherwise_comes_back_without_a_line_since_nobody_knows_where_it_was_cut()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 40\" line 0 @loft");
        Keep();
        var piece = _yard.Pieces().Single();

        var done = Stack([1], Face.Outside, $"{piece.Code} 22\"");

        var left = done.Carried.NewPieces.Should().ContainSingle().Subject;
        (left.Length, left.FirstLine, left.CutFrom).Should().Be((In(18) - _yard.Settings().Kerf(left.Material), (Length?)null, piece.Code));
        done.Mind.Should().Equal($"where the first pattern line is on what is left of {piece.Code} is not known; measure it and say it by its new code: offcuts change CODE --line LENGTH");
    }

    [Fact]
    public void What_is_left_of_a_piece_with_a_bad_spot_is_not_guessed()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 40\" bad 30..32 line 0 @loft");
        Keep();
        var piece = _yard.Pieces().Single();

        var done = Stack([1], Face.Outside, $"{piece.Code} 22\"");

        done.Carried.NewPieces.Should().BeEmpty();
        done.Mind.Should().Equal($"what is left of {piece.Code} is not entered, since part of it can't be used: catalogue it where it is worth that");
    }

    // It lies there: what of it is bad or trimmed lies there with it, which is the builder's to judge.
    [Theory]
    [InlineData("40\" bad 30..32", "3'", " 36\"")]
    [InlineData("40\" trim 1; 0", "3' 4\"", "")]
    [InlineData("40\" trim 0; 2", "3' 3\"", "")]
    public void A_piece_with_a_bad_spot_or_a_trimmed_end_that_was_laid_over_it_stands_all_the_same(string piece, string leg, string length)
    {
        Yard($"leg A: {leg} end", "1'", $"foam 2-1/2x12 {piece} line 0 @loft");
        Keep();
        var code = _yard.Pieces().Single().Code;

        var done = Stack([1], Face.Outside, $"{code}{length}");

        done.Carried.NewPieces.Should().BeEmpty();
        _yard.StackedCourses().Single().Pieces.Single().Code.Should().Be(code);
        _yard.Piece(code)!.OnHand.Should().BeFalse();
        new SeeWall(_yard).Of("wall").Ok.Should().BeTrue();
        _folder.Must("sheet", "1").Out.Should().Contain($"{code}, foam 2-1/2x12, 3' 4\": cut, but not as planned");
    }

    [Fact]
    public void An_explanation_of_what_waits_for_a_wall_names_the_wall_and_not_its_stage()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 22\", 22\" line 0 @loft");
        Keep().ToBuy.Should().BeEmpty("both pieces wait for the wall");
        var stages = new ChangeStages(_yard);
        stages.Add("later", null).Ok.Should().BeTrue();
        stages.AddNeeds("later", ["pad: foam 2-1/2x12 20"]).Ok.Should().BeTrue();
        var problem = new MatchStages(_yard).Problem(new MatchWish(["later"])).Value;

        WaitElsewhere.Lines(_yard, problem, problem.Stages[0].Cuts[0]).Should().HaveCount(4)
            .And.EndWith("  to have them, fill the wall wall otherwise, or give plan 1, which fills it, up: offcuts drop 1");
    }

    [Fact]
    public void Of_another_material_reserved_for_others_or_new_without_a_price_nothing_is_laid()
    {
        Yard("leg A: 1' 10\" end", "1'", "foam 2-1/2x12 40\" line 0 @loft", "2x4 40\" @loft");
        Keep();
        var (foam, board) = (_yard.Pieces().Single(piece => piece.Material is FoamPanel).Code, _yard.Pieces().Single(piece => piece.Material is Lumber).Code);
        new ChangeStages(_yard).Add("later", null).Ok.Should().BeTrue();
        _yard.Change("reserved it", work => work.Update(_yard.Piece(foam)! with { State = PieceState.Reserved, ReservedFor = "later" })).Ok.Should().BeTrue();
        _yard.Change("dropped the price", work => work.RemovePrice(_yard.Prices().All.Single().Material, Length.Feet(4), treated: false)).Ok.Should().BeTrue();

        string Refused(string laid) => Do([1], Face.Outside, laid).Fault.Sentence;
        Refused(board.ToString()).Should().Be($"{board} is 2x4, and foam 2-1/2x12 is laid there");
        Refused(foam.ToString()).Should().Be($"{foam} is reserved for later; if it is laid here all the same, free it first: offcuts free {foam.ToString().Replace(" ", "", StringComparison.Ordinal)}");
        Refused("new").Should().Be("foam 2-1/2x12 has no price, so it is not known how long a new piece is; set one with: offcuts price set");
    }

    [Fact]
    public void What_is_laid_is_written_as_it_is_read_and_a_slip_is_pointed_at()
    {
        var wish = StackedLine.Read("3 leg A inside: new, HNE WPH3 2', hnewph3, new 18", "wall").Value;

        (wish.Courses.Single(), wish.Leg, wish.Face).Should().Be((3, "A", Face.Inside));
        wish.Laid!.Select(one => (one.Code.IsNone, one.Length)).Should().Equal((true, null), (false, Length.Feet(2)), (false, null), (true, In(18)));
        StackedLine.Write(wish).Should().Be("3 leg A inside: new, HNE WPH3 2', HNE WPH3, new 1' 6\"");
        StackedLine.Read("3 leg A inside: new, nw 2'", "wall").Fault.Should().Match<Core.Faults.Fault>(fault => fault.Column == 22 && fault.Sentence.StartsWith("\"nw 2'\" is no piece; write new, cut or a code"));
        StackedLine.Write(StackedLine.Read("3 leg A inside: CUT, new 2'", "wall").Value).Should().Be("3 leg A inside: cut, new 2'");
        StackedLine.Read("3 leg A inside: new, cut 2'", "wall").Fault.Should().Match<Core.Faults.Fault>(fault => fault.Column == 22 && fault.Sentence == "a piece that came out as planned is as long as it was planned; write cut without a length");
        StackedLine.Read("3 leg A: new", "wall").Fault.Sentence.Should().Be("what was laid is said of one course of one leg and face at a time: 3 leg A inside: new, new 1' 6\"");
    }

    [Fact]
    public void Whatever_is_laid_otherwise_what_stays_kept_can_be_laid_from_what_is_left()
    {
        var times = int.Parse(Environment.GetEnvironmentVariable("OFFCUTS_STACKINGS") ?? "8", CultureInfo.InvariantCulture);
        Enumerable.Range(1000, times).Sum(OtherwiseAtRandom).Should().BeGreaterThan(0, "something stays kept after something was laid otherwise");
    }

    // How often something stayed kept after a course was laid otherwise.
    private static int OtherwiseAtRandom(int seed)
    {
        var luck = new Random(seed);
        var (length, courses, stayed) = (luck.Next(30, 131), luck.Next(2, 4), 0);
        using var folder = new TryYard();
        using var yard = YardFile.Open(folder.YardPath, folder.Clock);
        FreeWall.Draw(yard, $"leg A: {length}\" end", $"{courses}'", [.. Enumerable.Range(0, luck.Next(7)).Select(_ => $"foam 2-1/2x12 {luck.Next(10, 48)}\" line 0 @loft")]);
        var fill = new FillWall(yard);
        var filled = fill.Fill("wall", buy: true, new MatchLimits { Time = TimeSpan.FromSeconds(0.5), Clock = folder.Clock }).Value;
        if (filled.Plan.Courses.Any(course => course.Unfilled)) return 0;
        fill.Keep(filled).Ok.Should().BeTrue();
        while (yard.WallPlans().SingleOrDefault() is { } kept)
        {
            var stands = fill.Standing(yard.Walls().Single()).Select(course => (course.Run, course.Course)).ToHashSet();
            var open = kept.Plan.Courses.Where(course => !stands.Contains((course.Run, course.Course))).GroupBy(course => course.Run).Select(run => run.MinBy(course => course.Course)!).ToArray();
            var next = open[luck.Next(open.Length)];
            var free = yard.Pieces().Where(piece => piece.OnHand && piece.Length < In(length)).ToArray();
            LaidThere[] laid = [.. free.Length > 0 && luck.Next(2) == 0 ? [new LaidThere(free[luck.Next(free.Length)].Code, null)] : Array.Empty<LaidThere>(), .. Enumerable.Repeat(new LaidThere(default, null), 4)];
            var wish = new StackedWish("wall", [next.Course], "A", next.Run == "A outside" ? Face.Outside : Face.Inside);
            var otherwise = next.Unfilled || luck.Next(2) == 0;
            var done = Enumerable.Range(1, laid.Length).Select(many => new StackWall(yard, Today, new MatchLimits()).Do(otherwise ? wish with { Laid = laid[..many] } : wish)).First(one => one.Ok).Value;
            if (done.Kept == 0) break;
            Faults(yard).Should().BeEmpty($"seed {seed}: {next.Run}, course {next.Course} was laid {(otherwise ? $"of {LaidLine.Write(laid)}" : "as planned")} of {length} in");
            if (otherwise) stayed++;
        }

        return stayed;
    }

    [Fact]
    public void Whatever_is_stacked_first_the_rest_can_be_laid_from_what_is_left()
    {
        // Drawn walls and yards; the checker of runs derives the rest again from the yard as it is then.
        var times = int.Parse(Environment.GetEnvironmentVariable("OFFCUTS_STACKINGS") ?? "12", CultureInfo.InvariantCulture);
        var stackings = Enumerable.Range(0, times).Sum(seed => StackedAtRandom(seed));
        stackings.Should().BeGreaterThan(times, "most drawn walls are filled and stacked in several goes");
    }

    [Fact]
    public void Whatever_becomes_of_the_kerf_while_a_wall_is_stacked_each_course_is_cut_from_what_is_there()
    {
        // The kerf of the day of filling, then one drawn before each course: up, down, to nothing and from nothing.
        var times = int.Parse(Environment.GetEnvironmentVariable("OFFCUTS_STACKINGS") ?? "12", CultureInfo.InvariantCulture);
        var stackings = Enumerable.Range(2000, times).Sum(seed => StackedAtRandom(seed, kerfs: ["0", "1/16", "1/8", "1/4", "3/8"]));
        stackings.Should().BeGreaterThan(times, "most drawn walls are filled and stacked in several goes");
    }

    private static int StackedAtRandom(int seed, string[]? kerfs = null)
    {
        var luck = new Random(seed);
        var (length, courses, stackings) = (luck.Next(30, 131), luck.Next(1, 4), 0);
        using var folder = new TryYard();
        using var yard = YardFile.Open(folder.YardPath, folder.Clock);
        FreeWall.Draw(yard, $"leg A: {length}\" end", $"{courses}'", [.. Enumerable.Range(0, luck.Next(7)).Select(_ => $"foam 2-1/2x12 {luck.Next(10, 48)}\" line 0 @loft")]);
        if (kerfs is not null) Kerf(yard, kerfs[luck.Next(kerfs.Length)]);
        var fill = new FillWall(yard);
        var filled = fill.Fill("wall", buy: true, new MatchLimits { Time = TimeSpan.FromSeconds(0.5), Clock = folder.Clock }).Value;
        if (filled.Plan.Courses.Any(course => course.Unfilled)) return 0;
        fill.Keep(filled).Ok.Should().BeTrue();
        for (var left = 2 * courses; left > 0; stackings++)
        {
            var stands = fill.Standing(yard.Walls().Single()).Select(course => (course.Run, course.Course)).ToHashSet();
            var open = filled.Plan.Courses.Where(course => !stands.Contains((course.Run, course.Course))).GroupBy(course => course.Run).Select(run => run.MinBy(course => course.Course)!).ToArray();
            var next = open[luck.Next(open.Length)];
            if (kerfs is not null) Kerf(yard, kerfs[luck.Next(kerfs.Length)]);
            var done = new StackWall(yard, Today, new MatchLimits()).Do(new StackedWish("wall", [next.Course], "A", next.Run == "A outside" ? Face.Outside : Face.Inside)).Value;
            left -= done.Courses.Count;
            // The checker of runs reckons with the kerf of today, and the cuts lie where that of another day put them.
            var rest = left == 0 ? [] : (kerfs is null ? Faults(yard) : Strays(yard)).ToArray();
            rest.Should().BeEmpty($"seed {seed}: {next.Run}, course {next.Course} was stacked of {length} in, {courses} courses");
            (done.Kept, done.Open, done.GivenUp.Count).Should().Be((left, 0, 0), $"seed {seed}");
        }

        yard.WallPlans().Should().BeEmpty();
        yard.Ledger().Sum(line => line.Spent.Cents).Should().Be(filled.Plan.Tiers.Spend.Value, $"seed {seed}: what is bought is paid for once");
        return stackings;
    }

    // What is wrong with where a kept filling's courses are cut from: each of its laid pieces is one cut of its own, as long as what it covers, and
    // the cuts of what waits lie on a piece of the yard beside each other.
    private static IEnumerable<string> Strays(YardFile yard)
    {
        if (yard.WallPlans().SingleOrDefault() is not { } kept) yield break;
        var (steps, plan) = (yard.Plan(kept.PlanId)!, kept.Plan);
        var laid = plan.Courses.SelectMany(course => course.Pieces.Select(one => (course.Run, course.Course, One: one))).ToArray();
        foreach (var same in laid.GroupBy(one => (one.One.Piece, one.One.Cut)).Where(same => same.Count() > 1)) yield return $"{same.Key} covers {string.Join(" and ", same)}";
        foreach (var (run, course, one) in laid)
        {
            if (one.Cut >= plan.Pieces[one.Piece].Cuts.Count) yield return $"{run}, course {course}: {one} is no cut of its piece";
            else if (plan.Pieces[one.Piece].Cuts[one.Cut].Length != one.To - one.From) yield return $"{run}, course {course}: {one} is cut {plan.Pieces[one.Piece].Cuts[one.Cut].Length} long";
        }

        foreach (var (piece, i) in plan.Pieces.Select((piece, i) => (piece, i)).Where(one => steps.Steps[one.i].State == StepState.Waiting))
        {
            if (piece.Source is { } source && yard.Piece(source.Code)?.StillServesAs(source) is not true) yield return $"piece {i} is cut from {source.Code}, which is not there";
            var end = Length.Zero;
            foreach (var cut in piece.Cuts.OrderBy(cut => cut.Start))
            {
                if (cut.Start < end || cut.Start + cut.Length > piece.Length) yield return $"piece {i} of {piece.Length}: a cut lies from {cut.Start} to {cut.Start + cut.Length}, the one before it ends at {end}";
                end = cut.Start + cut.Length;
            }
        }
    }

    private static void Kerf(YardFile yard, string inches) =>
        new ChangeSettings(yard).Set("kerf", ["foam", $"{inches}\""]).Ok.Should().BeTrue(inches);

    // The rest of a kept filling as a plan of its own for what is left of the wall and of the yard, checked from the definition. No value given up
    // is claimed of it.
    private static IEnumerable<string> Faults(YardFile yard)
    {
        var problem = new FillWall(yard).Asked("wall").Value.Problem;
        var kept = yard.WallPlans().Single();
        var steps = yard.Plan(kept.PlanId)!;
        var yardOrder = problem.Pieces.Select((piece, i) => (piece.Code, i)).ToDictionary(one => one.Code, one => one.i);
        var order = Enumerable.Range(0, kept.Plan.Pieces.Count).Where(i => steps.Steps[i].State == StepState.Waiting)
            .OrderBy(i => kept.Plan.Pieces[i].Source is { } source ? yardOrder[source.Code] : int.MaxValue).ToList();
        PlannedPiece[] pieces = [.. order.Select(i => kept.Plan.Pieces[i].Source is { } source ? kept.Plan.Pieces[i] with { Source = problem.Pieces[yardOrder[source.Code]] } : kept.Plan.Pieces[i])];
        LaidCourse[] courses =
        [
            .. from run in problem.Runs
               from course in run.Courses
               let laid = kept.Plan.Courses.Single(one => (one.Run, one.Course) == (run.Name, course.Number))
               select laid with { Pieces = [.. laid.Pieces.Select(one => one with { Piece = order.IndexOf(one.Piece) })] },
        ];
        var lines = problem.Runs[0].Lines;
        ExtraTie[] ties = [.. courses.SelectMany(course => course.Joints.Where(at => !lines.IsTie(at)).Select(at => new ExtraTie("A", course.Course, at, null))).Distinct()];
        var rest = kept.Plan with
        {
            Courses = courses,
            Pieces = pieces,
            ExtraTies = ties,
            Tiers = new RunTiers(
                [.. courses.Select(course => course.Course).Distinct().Order().Select(number => new CourseFigure(number, Figure.Best(courses.Count(course => course.Course == number && course.Unfilled))))],
                Figure.Best(pieces.Sum(piece => piece.Bought?.Price.Cents ?? 0)),
                Figure.Best(0),
                Figure.Best(ties.Length),
                Figure.Best(courses.Sum(course => course.Joints.Count())),
                Figure.Best(pieces.Sum(piece => piece.SawCuts))),
        };
        return RunChecker.Faults(problem, rest).Where(fault => !fault.StartsWith("the value given up is said to be", StringComparison.Ordinal));
    }

    // New panels over 8 ft with the first joint there.
    private static string With(Length joint) => $"new {joint.InInches}\", new{(joint == In(48) ? "" : ", new")}";

    private static Length In(long inches) => Length.Inches(inches);

    private Code Source(string run, int course) => Kept.Plan.Pieces[Kept.Plan.Courses.Single(one => one.Run == run && one.Course == course).Pieces[0].Piece].Source!.Code;

    private Core.Faults.Result<WallStacked> Do(int[] courses, Face? face = null, string? laid = null) =>
        new StackWall(_yard, Today, Limits).Do(new StackedWish("wall", courses, face is null ? null : "A", face) { Laid = laid is null ? null : LaidLine.Read(laid, LengthUnit.Inch).Value });

    private void Cut(int[] pieces) => new CarryOut(_yard, Today, Limits).Do(Kept.PlanId, [.. pieces.Select(piece => new CutAct(piece))], hardware: false).Ok.Should().BeTrue();

    private WallStacked Stack(int[] courses, Face? face = null, string? laid = null) => Do(courses, face, laid).Value;

    private WallFilled Keep()
    {
        var fill = new FillWall(_yard);
        var filled = fill.Fill("wall", buy: true, Limits).Value;
        fill.Keep(filled).Ok.Should().BeTrue();
        return filled;
    }

    private void Yard(string leg, string height, params string[] lines) => FreeWall.Draw(_yard, leg, height, lines);
}
