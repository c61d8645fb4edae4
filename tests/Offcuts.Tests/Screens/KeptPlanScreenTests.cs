using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Tests.Screens;

/// <summary>What the plan's place says of plans that are kept, carried out, taken back and given up.</summary>
[Collection(OnScreen.Name)]
public sealed class KeptPlanScreenTests
{
    [Fact]
    public void What_carrying_out_did_is_said_until_it_is_taken_back()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+O").Type("y");
            run.Text.Should().Contain("✓ footing forms: saved").And.Contain("✓ back to the yard, labels waiting:");
            run.Press("Ctrl+Z");
            run.Text.Should().NotContain("✓ footing forms").And.NotContain("back to the yard").And.Contain("Took back");
            run.Press("Ctrl+Z");
            run.Text.Should().NotContain("✓");
            run.Press("Ctrl+Y", "Ctrl+Y");
            run.Text.Should().NotContain("✓ footing forms", "what is done again is said at the foot").And.Contain("Did again");
        });
    }

    [Fact]
    public void What_carrying_out_did_is_said_no_more_once_the_yard_is_another()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+O").Type("y").Press("F2", "F5");
            run.Text.Should().Contain("✓ back to the yard, labels waiting:", "looking elsewhere changes nothing");
            run.Folder.Must("add", "2x6 7'");
            run.Tick();
            run.Text.Should().NotContain("labels waiting:");
        });
    }

    [Fact]
    public void A_plan_whose_rest_a_newer_one_takes_over_is_called_given_up()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K");
            var planned = run.Yard.Plans().Single().Steps.Count;
            run.Press("Enter", "y", "Ctrl+R", "Ctrl+K");
            run.Text.Should().Contain("Kept as plan 2; what waited in plan 1 is given up. ^O says that all is cut");
            run.Press("Tab");
            run.Text.Should().Contain($"Plan 1 of 2026-06-01, given up: 1 done, {planned - 1} given up").And.NotContain("all done");
        });
    }

    [Fact]
    public void A_piece_that_is_not_found_is_marked_as_missing_where_its_cutting_is_asked_about_and_the_rest_matched_without_it()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K");
            var first = run.Yard.Plans().Single().Plan.Pieces.First(piece => piece.Source is not null).Source!.Code;
            run.Press("Ctrl+Home", "Enter").Text.Should().Contain("n not found");
            run.Type("n").Text.Should().Contain($"Marked as missing: {first}").And.Contain($"not as planned any more: {first} (missing); ^R matches the rest again").And.Contain($"MISSING: {first}");
            run.Yard.Piece(first)!.State.Should().Be(PieceState.Missing);

            run.Press("Ctrl+R", "Ctrl+K");
            run.Yard.Plans().Single(plan => plan.Open).Plan.Pieces.Should().NotContain(piece => piece.Source != null && piece.Source.Code == first);
        });
    }

    [Fact]
    public void What_a_stage_asks_for_no_more_is_told_with_the_plan_that_still_cuts_it()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K").Text.Should().NotContain("not asked for any more");
            var cut = run.Yard.Plans().Single().Plan.Pieces[0].Cuts[0];
            run.Folder.Must("stage", "drop", cut.Stage, cut.Cut);
            run.Tick();
            string.Join(' ', run.Lines.Select(line => line.Trim())).Should().MatchRegex($@"! not asked for any more, or of another length or material: \d+ x {cut.Cut} \({cut.Stage}\); \^R matches the rest again");
        });
    }

    // The third is named by its number, and the first is chosen.
    [Fact]
    public void What_went_otherwise_is_asked_of_the_piece_that_is_named_on_the_line()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+Home").Type("3").Press("Ctrl+E");
            run.Text.Should().Contain($"3, {run.Yard.Plans().Single().Plan.Pieces[2].Source!.Code}: which cuts came out right");
            run.Press("Ctrl+U").Type("none").Press("Enter");
            run.Yard.Plans().Single().Steps.Select(step => step.State).Take(3).Should().Equal(StepState.Waiting, StepState.Waiting, StepState.DoneOtherwise);

            run.Type("99").Press("Ctrl+E").Text.Should().Contain("\"99\" is no piece of this plan").And.NotContain("hich cuts came out right");
            run.Press("Ctrl+U").Type("3").Press("Ctrl+E").Text.Should().Contain("choose a piece that still waits").And.NotContain("hich cuts came out right");
            var second = run.Yard.Plans().Single().Plan.Pieces[1].Source!.Code;
            run.Type("2").Press("Ctrl+T").Text.Should().Contain($"{second}: what of it, when it is matched again?");
        });
    }

    [Fact]
    public void What_waits_is_given_up_by_a_key_that_asks_first_and_taken_back()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+X").Text.Should().Contain("no plan yet; ^R finds one");
            run.Press("Ctrl+R", "Ctrl+X").Text.Should().Contain("keep the plan first (^K)");
            run.Press("Ctrl+K", "Enter", "y", "Ctrl+X");
            var waiting = run.Yard.Plans().Single().Count(StepState.Waiting);
            run.Text.Should().Contain($"Give up what waits in plan 1: {waiting} pieces").And.Contain("what is cut stays done");
            run.Press("Esc");
            run.Yard.Plans().Single().Open.Should().BeTrue();

            run.Press("Ctrl+X").Type("y").Text.Should().Contain("Gave up the rest of plan 1").And.Contain($"given up: 1 done, {waiting} given up");
            run.Press("Ctrl+X").Text.Should().Contain("othing of plan 1 waits any more");
            run.Press("Ctrl+Z");
            run.Yard.Plans().Single().Count(StepState.Waiting).Should().Be(waiting, "it is one change");
            run.Press("F1").Text.Should().Contain("Give up what still waits in the plan");
        });
    }

    [Fact]
    public void What_waits_stands_on_top_then_what_is_cut_and_what_is_given_up_last()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K");
            string[] Signs() => [.. run.Text.Split('\n').Where(line => line.Contains("[ ]", StringComparison.Ordinal) || line.Contains("[x]", StringComparison.Ordinal) || line.Contains("[-]", StringComparison.Ordinal)).Select(line => line.Trim()[..7])];
            var (first, second) = (Signs()[0], Signs()[1]);
            first.Should().StartWith("[ ]").And.EndWith("1");
            run.Press("Enter", "y");
            Signs()[0].Should().Be(second, "what is to be done next is on top");
            run.Yard.Plans().Single().Steps[0].State.Should().Be(StepState.Done);
            run.Press("Ctrl+Home", "Enter", "y", "Ctrl+Home", "Enter", "y");
            run.Yard.Plans().Single().Count(StepState.Done).Should().Be(3, "the arrows go by what stands there");

            run.Press("Ctrl+R", "Ctrl+K", "Tab");
            var all = string.Concat(Signs().Select(sign => sign[1]));
            all.Should().MatchRegex("^x+-+$");
        });
    }

    [Fact]
    public void The_plan_with_something_waiting_comes_back_when_its_keeping_is_done_again()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+R", "Ctrl+K");
            run.Text.Should().Contain("Plan 2 of");
            run.Press("Ctrl+Z");
            run.Text.Should().Contain("Plan 1 of").And.Contain("wait");
            run.Yard.Plans().Single().Open.Should().BeTrue();
            run.Press("Ctrl+Y");
            run.Yard.Plans().Select(plan => plan.Open).Should().Equal(false, true);
            run.Text.Should().Contain("Plan 2 of").And.NotContain("Plan 1 of");
        });
    }

    [Fact]
    public void A_plan_that_is_all_done_stays_on_show_while_another_waits()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Folder.Run("plan", "footing forms", "--save");
            run.Folder.Run("plan", "stem wall", "--save");
            run.Tick().Press("F5");
            run.Text.Should().Contain("Plan 2 of");
            run.Press("Ctrl+O").Type("y");
            run.Text.Should().Contain("Plan 2 of 2026-06-01, all done").And.Contain("✓ stem wall: saved");
        });
    }

    // A board is entered after the match: a better plan may exist, so it is asked once, and nothing is called proven then.
    [Fact]
    public void A_plan_that_was_found_before_the_yard_changed_is_kept_only_when_asked_and_not_called_proven()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R");
            run.Folder.Must("add", "2x4 3' @north rack");
            run.Tick().Press("Ctrl+K");
            run.Yard.Plans().Should().BeEmpty();
            run.Text.Should().Contain("The yard has changed since this plan was found, and a better one may exist (^R). Keep it").And.Contain("y keep it as it was found");

            run.Press("y");

            run.Yard.Plans().Single().Plan.Earlier.Should().BeTrue();
            run.Text.Should().Contain("Plan 1 of").And.NotContain("proven best");
        });
    }

    [Fact]
    public void A_plan_that_was_found_is_not_kept_when_a_piece_of_it_is_gone()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R");
            run.Folder.Must("mark", "scrapped", KnownYard.Codes[1].ToString());
            run.Tick();
            run.Text.Should().Contain($"! not as planned any more: {KnownYard.Codes[1]} (scrapped); ^R matches again");

            run.Press("Ctrl+K");

            run.Yard.Plans().Should().BeEmpty();
            run.Text.Should().Contain($"{KnownYard.Codes[1]} is not as planned any more (scrapped)");
        });
    }

    [Fact]
    public void A_kept_plan_shows_its_pieces_as_they_are_by_now()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K");
            run.Folder.Must("change", KnownYard.Codes[2].ToString(), "--place", "truck", "--nails", "yes", "--new");
            run.Tick();
            run.Text.Should().Contain("@truck  first pull nails, scrape concrete");
            run.Press("Down", "Enter");
            run.Text.Should().Contain($"{KnownYard.Codes[2]} is cut: as the plan says? By the yard nails are still in it");
            run.Press("Esc");
            run.Folder.Must("mark", "missing", KnownYard.Codes[2].ToString());
            run.Tick();
            run.Text.Should().Contain($"MISSING: {KnownYard.Codes[2]}").And.Contain($"! not as planned any more: {KnownYard.Codes[2]} (missing); ^R matches the rest again");
        });
    }

    // The stem wall's board was reserved when the footing was cut; let go, it is anybody's.
    [Fact]
    public void What_was_let_go_is_told_where_the_plan_is()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+O", "1");
            run.Text.Should().Contain("reserved for stem wall:");
            var reserved = run.Yard.Pieces().Where(piece => piece.ReservedFor == "stem wall").ToArray();
            run.Folder.Must("free", reserved[0].Code.ToString());
            run.Tick();
            run.Text.Should().ContainAny("! planned here no more, since its piece was let go", "given up");
        });
    }

    // The last piece that waits is let go: the plan fills everything no more, and says which.
    [Fact]
    public void A_plan_of_which_the_last_waiting_piece_was_let_go_is_not_said_to_fill_everything()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Folder.Must("stage", "new", "sill");
            run.Folder.Must("stage", "need", "sill", "sill: 2x4 7'");
            run.Folder.Must("stage", "new", "rack");
            run.Folder.Must("stage", "need", "rack", "rack: 2x4 11'");
            run.Folder.Must("plan", "sill", "rack", "--save");
            run.Tick().Press("F5");
            run.Text.Should().Contain("fills everything");
            run.Folder.Must("cut", "--stage", "sill");
            run.Folder.Must("free", "--stage", "rack");

            run.Tick();

            run.Text.Should().Contain("was to fill everything").And.NotContain("  fills everything")
                .And.Contain("! planned here no more, since its piece was let go: 1 x rack (rack); ^R matches again");
        });
    }

    // One stage was picked on Stages; on Plan that goes unseen, so it is said, and undo goes back to the plan's own.
    [Fact]
    public void Stages_that_were_picked_elsewhere_are_named_where_the_plan_on_show_is_of_others()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "F4", "Ctrl+L", "Ctrl+R", "Ctrl+K");
            run.Yard.Plans()[1].Plan.Stages.Should().ContainSingle();
            run.Text.Should().NotContain("^R matches only", "the plan on show is of just that stage");
            run.Press("Tab");
            run.Text.Should().Contain("Plan 1 of").And.Contain("^R matches only footing forms, as picked on Stages");
            run.Press("Tab", "Ctrl+Z");
            run.Text.Should().Contain("Plan 1 of").And.NotContain("^R matches only");
            run.Press("Ctrl+R");
            run.Text.Should().Contain("Found, not kept yet: footing forms, stem wall");
        });
    }
}
