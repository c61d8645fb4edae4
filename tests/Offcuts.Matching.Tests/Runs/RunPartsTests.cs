using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

/// <summary>Walls of more than one material, and pieces of more than one span.</summary>
public class RunPartsTests
{
    private static readonly Material Thick = MaterialReader.Read("foam 3-1/2x12").Value;

    private static readonly StorePrice ThickPanel = new() { Material = Thick, Length = In(48), Price = new Money(2500) };

    // Each material is a problem of its own: what is filled beside another costs what it costs alone.
    [Fact]
    public void The_figures_of_materials_are_added_and_so_are_their_bounds()
    {
        Run[] thin = [Run(62, 2)], thick = [Run(94, 2, name: "north inside") with { Material = Thick }];
        RunTiers Tiers(params Run[] runs) => Fill(Request(runs, Offcut(1, 20)) with { Prices = new PriceBook([Panel(), ThickPanel]) }).Tiers;
        static Figure[] All(RunTiers tiers) => [.. tiers.Unfilled.Select(level => level.Unfilled), tiers.Spend, tiers.ValueGivenUp, tiers.ExtraTies, tiers.Joints, tiers.SawCuts];

        var (one, other, both) = (All(Tiers(thin)), All(Tiers(thick)), All(Tiers([.. thin, .. thick])));

        both.Should().Equal(one.Zip(other, (a, b) => new Figure(a.Value + b.Value, a.Bound + b.Bound)));
        (one[2].Bound, other[2].Bound).Should().Be((3 * 1800, 4 * 2500));
    }

    // 40 in before a bad spot and 56 after it: 60 in take a piece from either side, and the cuts stand in the order in which they lie on the piece.
    [Fact]
    public void Cuts_from_both_sides_of_a_bad_spot_stand_from_the_marked_end_on()
    {
        var piece = Offcut(1, 100) with { BadSpots = [new Span(In(40), In(44))] };
        var plan = Fill(Request([Run(60), Run(36, name: "north inside")], piece) with { Buy = false });

        plan.Tiers.UnfilledInAll.Should().Be(Figure.Best(0));
        plan.Pieces.Should().ContainSingle().Which.Cuts.Select(cut => cut.Start).Should().BeInAscendingOrder().And.HaveCountGreaterThan(2);
        plan.Pieces[0].Untouched.Should().BeEmpty();
    }

    // Another part of the same piece stays as it is.
    [Fact]
    public void A_span_that_nothing_is_cut_from_stays_untouched()
    {
        var piece = Offcut(1, 100) with { BadSpots = [new Span(In(40), In(44))] };

        Fill(Request([Run(36)], piece) with { Buy = false }).Pieces.Should().ContainSingle().Which.Untouched.Should().Equal(new Span(In(44), In(100)));
    }
}
