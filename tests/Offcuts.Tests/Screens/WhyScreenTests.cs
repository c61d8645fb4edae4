namespace Offcuts.Tests.Screens;

/// <summary>Why this piece, and several plans to pick from, on the plan's place.</summary>
[Collection(OnScreen.Name)]
public sealed class WhyScreenTests
{
    [Fact]
    public void The_chosen_piece_says_why_and_what_the_plan_without_it_would_cost()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+W");
            run.Text.Should().Contain("no plan yet; ^R finds one");
            run.Press("Ctrl+R", "Ctrl+W");
            if (run.Text.Contains("Why is which cut filled so?", StringComparison.Ordinal)) run.Press("a");

            run.Text.Should().Contain("It is cut from").And.Contain($"Without {run.Shell.State.Plan.Piece!.Source!.Code} for this cut the best plan would").And.Contain("Esc back to the plan");
            run.Press("Esc");
            run.Text.Should().NotContain("It is cut from").And.Contain("[ ]   1");
        });
    }

    [Fact]
    public void A_kept_plan_says_why_too_and_the_rest_of_one_is_matched_again_for_it()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "Ctrl+K", "Ctrl+W");
            if (run.Text.Contains("Why is which cut filled so?", StringComparison.Ordinal)) run.Press("a");
            run.Text.Should().Contain("It is cut from").And.NotContain("matched again");

            // The fourth piece gives two of the eight dowels; the third is then chosen.
            run.Press("Esc", "Down", "Down", "Down", "Enter", "y").Press("Down", "Down", "Ctrl+W");
            run.Text.Should().Contain("Plan 1 is partly done, or the yard has changed: this is what is lacking still, matched again")
                .And.Contain("dowels (stem wall): #4 2' 6\", nonstructural; 6 needed, all filled");
        });
    }

    [Fact]
    public void What_is_unfilled_says_what_would_have_to_change()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R").Press([.. Enumerable.Repeat("Down", run.Shell.State.Plan.Plan!.Pieces.Count)]).Press("Ctrl+W");

            run.Text.Should().Contain("waler (stem wall): 2x10 13', nonstructural; 1 needed, 1 unfilled")
                .And.Contain("a piece longer by 1' than the longest that may serve, which is 12' (fills 1)");
        });
    }

    [Fact]
    public void A_cut_is_explained_by_its_name_on_the_line_whatever_is_chosen()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R").Type("Waler").Press("Ctrl+W").Text.Should().Contain("waler (stem wall): 2x10 13', nonstructural; 1 needed, 1 unfilled");

            run.Press("Esc").Type("walr").Press("Ctrl+W").Text.Should().Contain("\"walr\" is no cut of this plan; name one, or clear the line (^U) and choose").And.NotContain("1 needed, 1 unfilled");
        });
    }

    [Fact]
    public void Of_several_plans_one_is_taken_and_kept()
    {
        ScreenRun.OnKnownYard(60, 30, run =>
        {
            run.Press("F5", "Ctrl+B");
            run.Text.Should().Contain("1 best").And.Contain("2 fewest saw cuts").And.Contain("3 nothing bought").And.Contain("Which of these plans is taken?");
            run.Lines.Should().Contain("For footing forms, stem wall.");
            run.Press("Esc");
            run.Text.Should().NotContain("1 best").And.Contain("No plan yet");

            run.Press("Ctrl+B", "3");
            run.Text.Should().Contain("this is the nothing bought plan; ^K keeps it");
            run.Shell.State.Plan.Plan!.Tiers.Spend.Value.Should().Be(0);
            run.Press("Ctrl+K");
            run.Yard.Plans().Single().Plan.Tiers.Spend.Value.Should().Be(0);
        });
    }

    [Fact]
    public void A_plan_of_before_a_change_does_not_say_why()
    {
        ScreenRun.OnKnownYard(100, 40, run =>
        {
            run.Press("F5", "Ctrl+R", "F2", "Ctrl+L", "F5", "Ctrl+W");

            run.Text.Should().Contain("the yard has changed since this plan was found");
        });
    }
}
