using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

public class RunGrowthTests
{
    [Fact]
    public void A_long_course_with_several_offcuts_is_decided_in_every_tier()
    {
        // 16 ft from 30 in + 66 in of offcuts; what is left is 96 in, two panels. Every joint can lie on a foot mark but those by the
        // offcuts of 30 in and of 18 in, which meet at 48 in when laid side by side.
        var plan = Fill(Request([Run(192, stagger: 0)], Offcut(1, 30), Offcut(2, 18), Offcut(3, 48)));
        plan.Tiers.Spend.Should().Be(new Figure(3600, 3600));
        plan.Tiers.ExtraTies.Value.Should().Be(1);
        plan.Tiers.Joints.Value.Should().Be(4);
    }

    // 44 in from 2.5 to 46.5, lines at even places, shortest piece 8: 17.5 in of the first offcut up to the line at 20, 26.5 in of the second.
    // Many short offcuts of no value make the stock seem free, and with it once the panel, since a piece alone may have any price then.
    [Fact]
    public void A_yard_full_of_scrap_does_not_make_a_new_panel_seem_free()
    {
        Piece[] pieces = [Offcut(1, 18), Offcut(2, 28), .. Enumerable.Range(3, 58).Select(n => Offcut(n, n % 2 == 0 ? 8 : 10))];
        var run = Run(1).Over((2.5m, 46.5m)) with { Reversible = false };
        var plan = Fill(Request([run], pieces));
        plan.Tiers.Spend.Should().Be(new Figure(0, 0));
        plan.Tiers.Proven.Should().BeTrue();
    }

    [Fact]
    public void A_cancelled_search_hands_back_a_plan_whose_bounds_hold()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var problem = RunProblem.Create(Request([Run(432, 4)], Offcut(1, 30), Offcut(2, 36))).Value;
        var plan = RunFiller.Fill(problem, MatchLimits.None with { Cancel = cancel.Token });
        plan.Tiers.Spend.Bound.Should().BeLessThanOrEqualTo(plan.Tiers.Spend.Value);
        RunChecker.Faults(problem, plan).Should().BeEmpty();
    }

    [Fact]
    public void Value_given_up_is_bounded_by_what_the_spend_buys()
    {
        // One course of 8 ft, no shortest piece: two panels of 18.00, so no more than two of them can leave anything.
        var problem = RunProblem.Create(Request([Run(96) with { ShortestPiece = Length.Zero }])).Value;
        var part = RunPart.Of(problem, Foam);
        var two = Filling.Empty(part) with { Filled = [true] };
        two.Figures[1] = 3600;
        TrivialBounds.Of(part, two)[2].Should().BeInRange(-3700, 0);
        part.Rows[0].MostPieces.Should().Be(50);
    }
}
