using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>The place on which the screen opens.</summary>
[Collection(OnScreen.Name)]
public sealed class TodayPlaceTests
{
    public static TheoryData<int, int> Sizes => GoldenScreenTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Today(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
    {
        Busy(run);
        run.Press("Ctrl+Home");
        Golden.Check($"today-{width}x{height}", run.Text);
    }, at: Place.Today);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_help_of_today(int width, int height) => ScreenRun.OnKnownYard(width, height, run => Golden.Check($"today-help-{width}x{height}", run.Press("F1").Text), at: Place.Today);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_code_that_is_gone_to(int width, int height) =>
        ScreenRun.OnKnownYard(width, height, run => Golden.Check($"jump-{width}x{height}", run.Press("Ctrl+F").Type(KnownYard.Codes[3].Text).Text), at: Place.Prices);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void An_empty_yard(int width, int height) => ScreenRun.On(width, height, run => Golden.Check($"today-empty-{width}x{height}", run.Text), at: Place.Today);

    [Fact]
    public void Enter_goes_to_where_the_chosen_matter_is_dealt_with()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Busy(run);
            foreach (var (kind, head, sign) in new[]
            {
                (MatterKind.Stage, "[STAGES]", "footing forms needs"),
                (MatterKind.Plan, "[PLAN]", "Plan 1 of"),
                (MatterKind.Order, "[PLAN]", "Plan 1 of"),
                (MatterKind.Labels, "[STRIP]", "labels wait to be printed"),
                (MatterKind.Foam, "[YARD]", "find   foam @tarp"),
                (MatterKind.Nails, "[YARD]", "find   nails in"),
                (MatterKind.OldPrices, "[PRICES]", "OLD"),
            })
            {
                Choose(run, kind);
                run.Press("Enter");
                run.Lines[0].Should().Contain(head, $"{kind} is dealt with there");
                run.Text.Should().Contain(sign);
                run.Press("F10");
            }
        }, at: Place.Today);
    }

    [Fact]
    public void The_last_change_is_taken_back_once_that_is_meant()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Choose(run, MatterKind.LastChange);
            run.Text.Should().Contain("set prices (2026-06-01 12:00)");

            run.Press("Enter");
            run.Text.Should().Contain("Take back: set prices?").And.Contain("y take it back");
            run.Press("Esc");
            run.Yard.Prices().All.Should().NotBeEmpty();

            run.Press("Enter", "y");
            run.Yard.Prices().All.Should().BeEmpty();
            run.Text.Should().NotContain("set prices (").And.Contain("first       Enter what new lengths cost");
        }, at: Place.Today);
    }

    [Fact]
    public void Words_typed_here_are_looked_for_in_the_yard_and_a_scan_opens_its_piece()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Type("2x4 8'+");
            run.Lines[3].Should().EndWith("Enter looks for this in the yard");
            run.Press("Enter");
            run.Lines[2].Should().Be("find   2x4 8'+");
            run.Lines[3].Should().StartWith("3 of 9:");

            run.Press("Ctrl+A");
            run.Lines[2].Should().Be("find", "the line of Today is its own");
            run.Scan(KnownYard.Codes[3]);
            run.Shell.State.Place.Should().Be(Place.Yard);
            run.Shell.State.Yard.Closer.Should().BeTrue();
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[3]);
        }, at: Place.Today);
    }

    [Fact]
    public void The_chosen_matter_stays_chosen_as_others_come_before_it()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Choose(run, MatterKind.LastChange);
            Choose(run, MatterKind.Stage);
            new CataloguePieces(run.Yard).Save(new CataloguePieces(run.Yard).Read(["2x4 7' nails"]).Value).Ok.Should().BeTrue();
            Busy(run);
            run.Shell.State.Today.Matter!.Kind.Should().Be(MatterKind.Stage);
            run.Shell.State.Today.Yard.Matters.Should().Contain(matter => matter.Kind == MatterKind.Nails);
        }, at: Place.Today);
    }

    [Fact]
    public void A_wall_of_the_stage_in_hand_tells_its_courses_and_that_its_filling_is_not_planned()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Text.Should().Contain("shed: 0 of 4 courses stacked, all faces counted; how the");
            Choose(run, MatterKind.Wall);
            run.Shell.State.Today.Matter!.What.Should().EndWith("how the rest is filled is not planned, nor what of it is to be bought");
            run.Press("Enter");
            run.Lines[0].Should().Contain("[WALLS]");
            run.Shell.State.Walls.Wall!.Sheet.Name.Should().Be("shed");
        }, KnownWall.FillSmall, at: Place.Today);
    }

    [Fact]
    public void Another_programs_change_shows_and_what_it_did_away_with_is_gone()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Choose(run, MatterKind.LastChange);
            run.Press("Enter");
            run.Text.Should().Contain("Take back: set prices?");
            new ChangeStages(run.Yard).Rename("stem wall", "wall").Ok.Should().BeTrue();
            run.Tick();
            run.Text.Should().NotContain("Take back: set prices?", "that would take back something else by now").And.Contain("renamed stem wall to wall");
        }, at: Place.Today);
    }

    [Fact]
    public void A_plan_that_was_found_and_is_not_kept_stays_where_another_is_gone_to()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Busy(run);
            run.Press("F4", "Ctrl+R", "F10");
            Choose(run, MatterKind.Plan);
            run.Press("Enter");
            run.Lines[3].Should().StartWith("Found, not kept yet");
            run.Text.Should().Contain("the plan that was found is not kept yet; then Tab goes on to plan 1");
        }, at: Place.Today);
    }

    [Fact]
    public void An_answer_that_is_being_written_stays_about_what_it_was_asked_of()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Down", "Ctrl+E").Press("Ctrl+U").Type("cellar").Press("F10");
            Choose(run, MatterKind.Stage);
            run.Shell.State.Today.Matter!.Subject.Should().Be("footing forms");

            run.Press("Enter");
            run.Lines[3].Should().Be("What is stem wall to be called?");
            run.Text.Should().Contain("a question is open here; answer it, or Esc");
            run.Press("Enter");
            run.Yard.Stages().Select(stage => stage.Name).Should().Equal("footing forms", "cellar");
        }, at: Place.Today);
    }

    [Fact]
    public void With_nothing_to_do_it_says_so()
    {
        var last = new Matter(MatterKind.LastChange, "cut 3 pieces (2026-06-01 12:00); can be taken back", [], "offcuts undo");
        var rows = TodayRows.Parts(TodayModel.Start(new YardSnapshot { Matters = [last] }), 80).SelectMany(part => part).Select(row => row.Text).ToArray();
        rows[0].Should().StartWith("  done last   cut 3 pieces");
        rows[^2..].Should().Equal("Nothing waits today: every stage has what it needs, and no label, order or board", "asks for a hand.");
    }

    private static void Choose(ScreenRun run, MatterKind kind)
    {
        var at = run.Shell.State.Today.Yard.Matters.Select((matter, i) => (matter, i)).First(one => one.matter.Kind == kind).i;
        run.Press("Ctrl+Home").Press([.. Enumerable.Repeat("Down", at)]);
        run.Shell.State.Today.Matter!.Kind.Should().Be(kind);
    }

    // A day on which nearly everything matters: a plan that buys, foam that lies open, a board with nails, old prices.
    private static void Busy(ScreenRun run)
    {
        new ChangePrices(run.Yard).Set("2x10 16' 24.50 lead 20 from the mill", new DateOnly(2026, 2, 1)).Ok.Should().BeTrue();
        new ChangeStages(run.Yard).SetDate("stem wall", new DateOnly(2026, 6, 18)).Ok.Should().BeTrue();
        new ChangeSettings(run.Yard).Set("foam 0").Ok.Should().BeTrue();
        new ChangeSettings(run.Yard).Set("foam 1").Ok.Should().BeTrue();
        var piece = run.Yard.Piece(KnownYard.Codes[1])!;
        run.Yard.Change("nails seen", work =>
        {
            work.Update(piece with { Nails = true });
            work.QueueLabels([KnownYard.Codes[0], KnownYard.Codes[1]]);
        }).Ok.Should().BeTrue();
        new KeepPlan(run.Yard).Keep(new MatchStages(run.Yard).Match(new MatchWish([], Buy: true), new Matching.MatchLimits()).Value).Ok.Should().BeTrue();
        run.Folder.Clock.Pass(TimeSpan.FromDays(2));
        run.Yard.Change("looked at it", work => work.Update(piece with { Nails = true, Note = "looked at" })).Ok.Should().BeTrue();
        run.Tick();
    }
}
