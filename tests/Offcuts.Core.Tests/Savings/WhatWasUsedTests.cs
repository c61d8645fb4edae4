using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Savings;

public sealed class WhatWasUsedTests
{
    private static Material Of(string name) => MaterialReader.Read(name).Value;

    private static PlannedPiece FromYard(string material, Length width, params (string Stage, int Start, int Inches)[] cuts) => new()
    {
        Source = new Piece { Code = default, Material = Of(material), Length = Length.Feet(20), Width = width },
        Cuts = [.. cuts.Select(cut => new PlannedCut(cut.Stage, "cut", Length.Inches(cut.Start), Length.Inches(cut.Inches), Use.Rough))],
        Remainders = [],
        SawCuts = cuts.Length,
    };

    [Fact]
    public void Only_the_cuts_count_not_kerf_nor_remainder()
    {
        var use = WhatWasUsed.Of(FromYard("2x10", default, ("Footing", 0, 96), ("Footing", 97, 96)), Species.Usual).Should().ContainSingle().Subject;
        use.Stage.Should().Be("Footing");
        Math.Round(use.BoardFeet.Value, 8).Should().Be(26.66666667m, "2 x 10/12 x 16");
        use.PanelFace.SquareFeet.Should().Be(0m, "a board is no panel");
        use.Pieces.Should().Be(1);
        Math.Round(use.Weight.Pounds, 2).Should().Be(44.86m, "1.5 x 9.25 / 144 x 16 x 29.0975");
        use.WoodWeight.Should().Be(use.Weight);
        use.WeightIsWhole.Should().BeTrue();
    }

    [Fact]
    public void A_piece_shared_by_two_stages_counts_once_for_the_stage_of_its_first_cut()
    {
        var uses = WhatWasUsed.Of(FromYard("2x4", default, ("Wall", 50, 24), ("Footing", 0, 48)), Species.Usual);
        uses.Select(use => (use.Stage, use.Pieces)).Should().Equal(("Footing", 1), ("Wall", 0));
        Math.Round(uses[0].BoardFeet.Value, 8).Should().Be(2.66666667m);
        Math.Round(uses[1].BoardFeet.Value, 8).Should().Be(1.33333333m);
    }

    // Of a board of 20 ft one cut of 4 ft came back and one of 2 ft did not; of a panel the only cut came back.
    [Fact]
    public void What_came_back_is_below_zero_and_a_piece_of_which_a_cut_stays_is_still_used()
    {
        PlannedPiece[] before = [FromYard("2x4", default, ("Wall", 0, 48), ("Wall", 50, 24)), FromYard("foam 2-1/2x12 II", default, ("Wall", 0, 36))];
        PlannedPiece[] after = [FromYard("2x4", default, ("Wall", 50, 24)), FromYard("foam 2-1/2x12 II", default)];

        var change = WhatWasUsed.Change(before, after, Species.Usual).Should().ContainSingle().Subject;

        (change.Stage, change.Pieces).Should().Be(("Wall", -1));
        Math.Round(change.BoardFeet.Value, 8).Should().Be(-2.66666667m, "2 x 4/12 x 4");
        change.PanelFace.SquareFeet.Should().Be(-3m);
        Math.Round((change.Weight - change.WoodWeight).Pounds, 5).Should().Be(-0.84375m);
        var used = WhatWasUsed.Of(before, Species.Usual).Single();
        Math.Round(used.Plus(change).BoardFeet.Value, 8).Should().Be(1.33333333m, "both together are what is used now");
        WhatWasUsed.Change(after, before, Species.Usual).Single().Pieces.Should().Be(1, "the other way round it is used");
    }

    [Fact]
    public void A_bought_piece_counts_nothing()
    {
        var bought = new PlannedPiece
        {
            Bought = new StorePrice { Material = Of("2x4"), Length = Length.Feet(8), Price = new Money(398) },
            Cuts = [new PlannedCut("Footing", "cut", default, Length.Feet(8), Use.Rough)],
            Remainders = [],
            SawCuts = 0,
        };
        WhatWasUsed.Of(bought, Species.Usual).Should().BeEmpty();
    }

    // ASTM C578 type II: 1.35 lb/ft3; 2-1/2 in x 12 in x 36 in is 0.625 ft3, 0.84375 lb.
    [Fact]
    public void Foam_counts_its_face_and_the_least_weight_of_its_type()
    {
        var use = WhatWasUsed.Of(FromYard("foam 2-1/2x12 II", default, ("Wall", 0, 36)), Species.Usual).Single();
        use.PanelFace.SquareFeet.Should().Be(3m);
        Math.Round(use.Weight.Pounds, 5).Should().Be(0.84375m);
        use.WoodWeight.Pounds.Should().Be(0m);
        use.BoardFeet.Value.Should().Be(0m);
    }

    [Fact]
    public void An_unknown_weight_counts_nothing_and_says_so()
    {
        var use = WhatWasUsed.Of([FromYard("foam 2x12", default, ("Wall", 0, 36)), FromYard("#4", default, ("Wall", 0, 120))], Species.Usual).Single();
        use.WeightIsWhole.Should().BeFalse();
        use.Weight.Pounds.Should().Be(6.68m, "0.668 lb/ft x 10 ft, ASTM A615 Table 1");
        use.Pieces.Should().Be(2);
    }

    [Fact]
    public void A_sheet_counts_both_its_sides()
    {
        var use = WhatWasUsed.Of(FromYard("plywood 3/4", Length.Feet(4), ("Wall", 0, 96)), Species.Usual).Single();
        use.PanelFace.SquareFeet.Should().Be(32m);
        use.WoodWeight.Pounds.Should().Be(72m, "32 x 3/4 x 3, rule of thumb under PS 1");
    }

    [Fact]
    public void Done_and_waiting_are_told_apart_and_what_really_happened_counts()
    {
        var planned = FromYard("2x4", default, ("Wall", 0, 96));
        var really = FromYard("2x4", default, ("Wall", 0, 48));
        var kept = new KeptPlan(1, new DateOnly(2026, 5, 1), Plan(planned, planned, planned, planned),
            [PlanStep.Done, PlanStep.Waiting, new PlanStep(StepState.DoneOtherwise, really), PlanStep.Dropped], HardwareDone: true);

        Math.Round(WhatWasUsed.Done(kept, Species.Usual).Single().BoardFeet.Value, 6).Should().Be(8m, "8 ft planned and cut, 4 ft really: 12 x 2/3");
        WhatWasUsed.Done(kept, Species.Usual).Single().Pieces.Should().Be(2);
        Math.Round(WhatWasUsed.Waiting(kept, Species.Usual).Single().BoardFeet.Value, 6).Should().Be(5.333333m);
    }

    [Fact]
    public void A_use_becomes_a_line_of_the_ledger_with_nothing_lost()
    {
        var line = WhatWasUsed.Of(FromYard("2x4", default, ("Wall", 0, 96)), Species.Usual).Single()
            .ToLine(new DateOnly(2026, 5, 1), planId: 3, new Money(398), new Money(100), hardwareUsed: 5);
        line.Stage.Should().Be("Wall");
        line.Day.Should().Be(new DateOnly(2026, 5, 1));
        line.PlanId.Should().Be(3);
        line.Saved.Cents.Should().Be(298);
        Math.Round(line.BoardFeet.Value, 6).Should().Be(5.333333m);
        line.PiecesUsed.Should().Be(1);
        line.HardwareUsed.Should().Be(5);
        line.WoodWeight.Should().Be(line.Weight);
    }

    private static Plan Plan(params PlannedPiece[] pieces) => new()
    {
        Stages = ["Wall"],
        Tiers = new Tiers(Figure.Best(0), [Figure.Best(0)], Figure.Best(0), Figure.Best(0), 0),
        Pieces = pieces,
        Hardware = [],
        Unfilled = [],
        Savings = new PlanSavings(Money.Zero, Money.Zero, true, []),
        Unpriced = [],
    };
}
