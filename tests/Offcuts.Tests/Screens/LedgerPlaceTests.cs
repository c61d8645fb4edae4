using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>What was saved, on the screen. All figures are our own invention.</summary>
[Collection(OnScreen.Name)]
public sealed class LedgerPlaceTests
{
    public static TheoryData<int, int> Sizes => GoldenScreenTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void By_stage(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
    {
        Book(run);
        Golden.Check($"ledger-stages-{width}x{height}", run.Press("F7").Text);
    });

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Over_time(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
    {
        Book(run);
        Golden.Check($"ledger-time-{width}x{height}", run.Press("F7", "Tab", "Ctrl+Home", "Down", "Down", "Down").Text);
    });

    [Fact]
    public void Nothing_carried_out_says_so() =>
        ScreenRun.OnKnownYard(80, 24, run => run.Press("F7").Text.Should().Contain("Nothing was carried out yet, so nothing is saved yet."));

    [Fact]
    public void What_is_planned_stands_apart_and_is_in_no_sum()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Book(run);
            run.Press("F7");
            var before = run.Lines[3];
            before.Should().Be("Done, all stages: saved $37.50 of $64.50 all new, $27.00 spent");

            run.Press("F4", "Ctrl+R", "Ctrl+K", "F7");

            run.Lines[3].Should().Be(before);
            run.Text.Should().Contain("Planned, in none of the figures above").And.Contain("plan 1, footing forms, stem wall: would save");
        });
    }

    [Fact]
    public void The_last_parts_are_reached_and_say_what_each_figure_is_measured_against()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Book(run);
            run.Press("F7", "Ctrl+End");
            run.Text.Should().Contain("What the figures of what was done are measured against").And.Contain("(1995)");
        });
    }

    [Fact]
    public void A_part_of_a_stages_name_counts_that_stage_alone()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            Book(run);
            run.Press("F7").Type("stem");
            run.Lines[3].Should().Be("Done, stages with \"stem\": saved $27.50 of $42.00 all new, $14.50 spent");
            run.Text.Should().NotContain("footing forms:");

            run.Type("q");
            run.Lines[3].Should().Be("No stage with \"stemq\" in its name is in the ledger");
            run.Press("Esc", "Esc");
            run.Lines[3].Should().StartWith("Done, all stages");
        });
    }

    [Fact]
    public void Enter_goes_to_the_plan_of_the_last_act()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F4", "Ctrl+R", "Ctrl+K", "Enter", "y", "F7");
            run.Lines[3].Should().StartWith("Done, all stages: ");
            run.Press("Enter");
            run.Lines[0].Should().Contain("[PLAN]");
            run.Lines[3].Should().StartWith("Plan 1 of 2026-06-01");
        });
    }

    [Fact]
    public void A_bar_is_to_scale_and_a_loss_has_a_sign_of_its_own()
    {
        var bars = LedgerBars.For([new Money(1000), new Money(500)], 21);
        bars.Stage(new Money(1000), new Money(250)).Should().Be("$$$$$===============");
        bars.Stage(new Money(500), new Money(1000)).Should().Be("$$$$$$$$$$<<<<<<<<<<");
        bars.Step(Money.Zero, new Money(500)).Should().Be("==========");
        bars.Step(new Money(500), new Money(1000)).Should().Be("----------==========");
        bars.Step(new Money(1000), new Money(500)).Should().Be("----------<<<<<<<<<<");
        bars.Step(new Money(500), new Money(500)).Should().Be("----------");
        bars.Step(Money.Zero, Money.Zero).Should().Be("|");
    }

    [Fact]
    public void A_sum_below_nothing_is_drawn_left_of_it()
    {
        var bars = LedgerBars.For([new Money(-500), new Money(500)], 21);
        bars.Step(Money.Zero, new Money(-500)).Should().Be("<<<<<<<<<<|");
        bars.Step(new Money(-500), new Money(-250)).Should().Be("=====-----|");
        LedgerBars.For([new Money(-500), new Money(500)], 41).Figures("$").Should().Be("-$5                $0                  $5");
    }

    // Two stages, four weeks, one loss.
    private static void Book(ScreenRun run)
    {
        run.Yard.Change("booked by hand", work =>
        {
            work.AddLedgerLine(Line(5, 4, "footing forms", 1250, 0, 4));
            work.AddLedgerLine(Line(5, 11, "footing forms", 1000, 1250, 1));
            work.AddLedgerLine(Line(5, 20, "stem wall", 2800, 450, 6));
            work.AddLedgerLine(Line(5, 29, "stem wall", 1400, 1000, 2));
        }).Ok.Should().BeTrue();
        run.Tick();
    }

    private static LedgerLine Line(int month, int day, string stage, int allNew, int spent, int pieces) => new()
    {
        Day = new DateOnly(2026, month, day),
        Stage = stage,
        AllNew = new Money(allNew),
        Spent = new Money(spent),
        PiecesUsed = pieces,
        BoardFeet = new BoardFeet(pieces * 8),
        Weight = new Weight(pieces * 11),
        WoodWeight = new Weight(pieces * 11),
    };
}
