using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;

namespace Offcuts.Core.Tests.Savings;

/// <summary>All figures are our own invention and are added up by hand.</summary>
public sealed class LedgerTests
{
    private static readonly LedgerLine[] Lines =
    [
        new()
        {
            Day = new DateOnly(2026, 5, 1), Stage = "Footing", PlanId = 1, AllNew = new Money(12_000), Spent = new Money(2_000),
            BoardFeet = new BoardFeet(40.5m), PanelFace = new Area(92_903.04m), Weight = new Weight(100.25m), WoodWeight = new Weight(80.1m), PiecesUsed = 6, HardwareUsed = 20,
        },
        new()
        {
            Day = new DateOnly(2026, 6, 1), Stage = "Wall", PlanId = 2, AllNew = new Money(500), Spent = new Money(900),
            BoardFeet = new BoardFeet(1m), Weight = new Weight(5m), WoodWeight = new Weight(5m), PiecesUsed = 1,
        },
        new()
        {
            Day = new DateOnly(2026, 6, 2), Stage = "Footing", PlanId = 1, AllNew = new Money(3_000), Spent = new Money(0),
            BoardFeet = new BoardFeet(10m), Weight = new Weight(48.4m), WoodWeight = new Weight(48.4m), PiecesUsed = 3, HardwareUsed = 4,
        },
    ];

    [Fact]
    public void Lines_add_up_by_stage()
    {
        var footing = Ledger.Of(Lines).ByStage[0];
        footing.Stage.Should().Be("Footing");
        footing.AllNew.Cents.Should().Be(15_000);
        footing.Spent.Cents.Should().Be(2_000);
        footing.Saved.Cents.Should().Be(13_000);
        footing.BoardFeet.Value.Should().Be(50.5m);
        footing.PanelFace.SquareFeet.Should().Be(1m, "92,903.04 mm2 is a square foot");
        footing.Weight.Pounds.Should().Be(148.65m);
        footing.WoodWeight.Pounds.Should().Be(128.5m);
        footing.PiecesUsed.Should().Be(9);
        footing.HardwareUsed.Should().Be(24);
    }

    [Fact]
    public void A_loss_is_a_negative_saving() => Ledger.Of(Lines).ByStage[1].Saved.Cents.Should().Be(-400);

    [Fact]
    public void All_together_is_what_the_stages_add_up_to()
    {
        var all = Ledger.Of(Lines).InAll;
        all.Stage.Should().BeEmpty();
        all.Saved.Cents.Should().Be(12_600);
        all.BoardFeet.Value.Should().Be(51.5m);
        all.Weight.Pounds.Should().Be(153.65m);
        all.PiecesUsed.Should().Be(10);
        all.HardwareUsed.Should().Be(24);
    }

    [Fact]
    public void Stages_come_in_the_order_asked_for_and_those_without_a_line_are_left_out()
    {
        Ledger.Of(Lines).ByStage.Select(sum => sum.Stage).Should().Equal("Footing", "Wall");
        Ledger.Of(Lines, ["Cabin", "Wall"]).ByStage.Select(sum => sum.Stage).Should().Equal("Wall", "Footing");
    }

    [Fact]
    public void An_empty_ledger_saved_nothing()
    {
        Ledger.Of([]).ByStage.Should().BeEmpty();
        Ledger.Of([]).InAll.Saved.Should().Be(Money.Zero);
    }

    // NAHB Research Center, 1995: 267 lb of loose solid sawn wood a cubic yard. 133.5 / 267 = 0.5.
    [Fact]
    public void The_skip_volume_is_the_weight_of_the_wood_over_a_loose_cubic_yard()
    {
        Ledger.Of(Lines).InAll.SkipCubicYards().Should().Be(0.5m);
        Ledger.Of(Lines).InAll.SkipCubicYards(400m).Should().Be(0.33375m);
        var asking = () => Ledger.Of(Lines).InAll.SkipCubicYards(0m);
        asking.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void The_skip_line_names_its_factor_and_its_source() =>
        MeasuredAgainst.Skip(267m).Should().Be(
            "Skip volume: the weight of the wood at 267 lb a cubic yard, loose. 267 is the NAHB Research Center's (1995); other published figures are 300 and 400, so set your own.");
}
