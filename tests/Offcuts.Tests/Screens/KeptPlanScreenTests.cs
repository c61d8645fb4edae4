using Offcuts.Core.Plans;

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
}
