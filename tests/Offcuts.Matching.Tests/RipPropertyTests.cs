using Offcuts.Core.Plans;
using Offcuts.Matching.Tests.Independent;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>What holds of ripping in every drawn problem; each is drawn again from the seed that a failure names.</summary>
public sealed class RipPropertyTests
{
    private static readonly Size Middle = new(10, 8, 1);

    private static MatchRequest WithoutTheWord(MatchRequest request) =>
        request with { Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Select(cut => cut with { Rip = false })] })] };

    private static IEnumerable<long> FillAndSpend(Plan plan) => plan.Tiers.UnfilledByStage.Select(figure => figure.Value).Append(plan.Tiers.Spend.Value);

    [Fact]
    public void Allowing_a_rip_never_makes_fill_or_spend_worse_and_changes_nothing_where_none_is_made()
    {
        var (helped, idle) = (0, 0);
        foreach (var seed in Enumerable.Range(40_000, 60))
        {
            var request = RippingYards.Draw(seed, Middle);
            var (with, without) = (Match(request), Match(WithoutTheWord(request)));
            var because = $"of seed {seed}:\n{DrawnYards.Describe(request)}\n";

            without.Tiers.Rips.Should().BeNull(because);
            without.Pieces.SelectMany(piece => piece.Cuts).Where(cut => cut.Rip is not null).Should().BeEmpty(because);
            (with.Proven && without.Proven).Should().BeTrue(because);
            var gained = FillAndSpend(without).Zip(FillAndSpend(with), (a, b) => a.CompareTo(b)).FirstOrDefault(order => order != 0);
            gained.Should().BeGreaterThanOrEqualTo(0, because);
            (with.Tiers.Rips?.Value > 0).Should().Be(gained > 0, "a piece is ripped only where that fills a cut or saves money: " + because);
            if (gained > 0) helped++;
            else
            {
                idle++;
                Text(with).Should().Be(Text(without), because);
            }
        }

        helped.Should().BeGreaterThan(10, "else little was ripped");
        idle.Should().BeGreaterThan(10, "else ripping was always of use");
    }

    [Fact]
    public void The_order_of_cuts_and_of_pieces_changes_no_figure()
    {
        foreach (var seed in Enumerable.Range(41_000, 20))
        {
            var request = RippingYards.Draw(seed, Middle);
            var turned = request with
            {
                Pieces = [.. request.Pieces.Reverse()],
                Stages = [.. request.Stages.Select(stage => stage with { Cuts = [.. stage.Cuts.Reverse()] })],
            };

            var (plan, other) = (Match(request), Match(turned));
            (Figures(other), other.Tiers.Rips, other.Tiers.SawCuts).Should().Be((Figures(plan), plan.Tiers.Rips, plan.Tiers.SawCuts), $"of seed {seed}");
            Text(Match(request)).Should().Be(Text(plan), $"of seed {seed}");
        }
    }

    [Fact]
    public void Larger_plans_with_ripping_can_be_carried_out_and_their_figures_add_up()
    {
        foreach (var seed in Enumerable.Range(42_000, 10))
        {
            var request = RippingYards.Draw(seed, new Size(24, 20, 1));
            PlanReview.Faults(request, Match(request)).Should().BeEmpty($"of seed {seed}:\n{DrawnYards.Describe(request)}\n");
        }
    }
}
