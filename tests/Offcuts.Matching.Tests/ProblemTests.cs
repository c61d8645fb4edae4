using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>What is refused before anything is solved, and what only looks as if it should be.</summary>
public sealed class ProblemTests
{
    private static readonly Hardware Bolt = (Hardware)MaterialReader.ReadCounted("bolt").Value;

    private static string[] Refusals(MatchRequest request) => [.. Problem.Create(request).Faults.Select(fault => fault.Sentence)];

    [Fact]
    public void A_hundred_thousand_cuts_are_not_too_many_and_one_more_in_any_stage_is()
    {
        Refusals(Request([], [Cut("1\"", 60_000), Cut("1\"", 40_000, stage: "roof")])).Should().BeEmpty();
        Refusals(Request([], [Cut("1\"", 60_000), Cut("1\"", 40_001, stage: "roof")])).Should().Equal("more than 100000 cuts in one plan; plan fewer stages at once");
    }

    [Fact]
    public void A_price_of_nothing_is_a_price() => Match(Request([], [Cut("50\"")], Price("8'", 0))).Pieces.Single().Bought!.Price.Should().Be(Money.Zero);

    [Fact]
    public void Faulty_stages_and_hardware_are_refused()
    {
        MatchRequest With(string stage, HardwareNeed need) => new() { Stages = [new Stage(stage, null, [], [need])] };

        Refusals(With("", new HardwareNeed("", "bolts", Bolt, 1))).Should().Equal(YardFaults.StageWithoutName().Sentence);
        Refusals(With("wall", new HardwareNeed("roof", "bolts", Bolt, 1))).Should().Equal("the cut bolts stands in the stage wall but names the stage roof");
        Refusals(With("wall", new HardwareNeed("wall", "bolts", Bolt, 0))).Should().Equal("bolts: a count is 1 or more");
        Refusals(With("wall", new HardwareNeed("wall", "bolts", Bolt, 1))).Should().BeEmpty();
    }

    [Fact]
    public void Faulty_pieces_and_bins_are_refused_and_pieces_that_are_gone_are_not_looked_at()
    {
        var outside = Board("60\"") with { BadSpots = [new Span(L("50\""), L("70\""))] };

        Refusals(Request([outside], [Cut("10\"")])).Should().Equal(YardFaults.BadSpotOutside(L("70\""), L("60\"")).Sentence);
        Refusals(Request([outside with { State = PieceState.Used }], [Cut("10\"")])).Should().BeEmpty();
        Refusals(Request([], [Cut("10\"")]) with { Bins = [new Bin(CodeOf(1), Bolt, -1)] }).Should().Equal(YardFaults.QuantityNegative().Sentence);
    }

    [Fact]
    public void Bad_spots_are_put_in_order_and_a_piece_in_order_stays_the_same_object()
    {
        var untidy = Board("100\"", 1) with { BadSpots = [new Span(L("60\""), L("70\"")), new Span(L("20\""), L("30\""))] };
        var tidy = Board("100\"", 2) with { BadSpots = [new Span(L("20\""), L("30\""))] };
        var problem = Problem.Create(Request([untidy, tidy], [Cut("10\"")])).Value;

        problem.Pieces[0].BadSpots.Select(spot => spot.Start).Should().Equal(L("20\""), L("60\""));
        problem.Pieces[1].Should().BeSameAs(tidy);
    }

    [Fact]
    public void Asking_for_a_stage_or_a_piece_that_is_not_there_is_a_bug()
    {
        var problem = Problem.Create(Request([Board("60\"")], [Cut("10\"")])).Value;

        problem.Invoking(one => one.StageIndex("roof")).Should().Throw<ArgumentException>().WithMessage("no stage roof*");
        problem.Invoking(one => one.PieceIndex(CodeOf(2))).Should().Throw<ArgumentException>().WithMessage($"no piece {CodeOf(2)}*");
    }
}
