using CsCheck;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>This piece for that cut; never touch this piece. All yards here are invented.</summary>
public sealed class WishTests
{
    private static Wishes Pinned(params (int Piece, string Cut)[] pins) =>
        new([.. pins.Select(pin => new Pin(CodeOf(pin.Piece), "wall", pin.Cut))], []);

    private static Wishes Spared(params int[] pieces) => new([], [.. pieces.Select(piece => new Spare(CodeOf(piece)))]);

    private static string[] Refusals(MatchRequest request) => [.. Problem.Create(request).Faults.Select(fault => fault.Sentence)];

    // The 50 in board serves the 48 in cut with the least value given up; pinned, the long one does.
    [Fact]
    public void A_pinned_copy_is_cut_from_its_piece_even_where_another_would_be_better()
    {
        var request = Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"")], Price("8'", 400));
        Match(request).Pieces.Single().Source!.Code.Should().Be(CodeOf(1));

        var plan = Match(request with { Wishes = Pinned((2, "cut")) });

        plan.Pieces.Single().Source!.Code.Should().Be(CodeOf(2));
        plan.Wishes.Pins.Should().Equal(new Pin(CodeOf(2), "wall", "cut"));
        plan.Proven.Should().BeTrue();
    }

    [Fact]
    public void Only_the_pinned_copies_are_bound_the_others_stay_free()
    {
        var plan = Match(Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"", 2)], Price("8'", 400)) with { Wishes = Pinned((2, "cut")) });

        plan.Tiers.Spend.Should().Be(Figure.Best(0));
        plan.Pieces.Select(piece => (piece.Source!.Code, piece.Cuts.Count)).Should().Equal((CodeOf(1), 1), (CodeOf(2), 1));
    }

    [Fact]
    public void Two_equal_pins_are_two_copies_from_one_piece()
    {
        var plan = Match(Request([Board("50\"", 1), Board("60\"", 2), Board("100\"", 3)], [Cut("48\"", 2)]) with { Buy = false, Wishes = Pinned((3, "cut"), (3, "cut")) });

        plan.Pieces.Single().Source!.Code.Should().Be(CodeOf(3));
        plan.Pieces.Single().Cuts.Should().HaveCount(2);
    }

    // Both are pinned to a board that holds one: the other is not cut from the free board and not bought.
    [Fact]
    public void A_pinned_copy_without_room_stays_unfilled_and_says_so()
    {
        var plan = Match(Request([Board("50\"", 1), Board("60\"", 2)], [Cut("48\"", name: "a"), Cut("47\"", name: "b")], Price("8'", 400)) with { Wishes = Pinned((2, "a"), (2, "b")) });

        plan.Tiers.Unfilled.Should().Be(Figure.Best(1));
        plan.Tiers.Spend.Value.Should().Be(0);
        plan.Unfilled.Single().Reason.Should().Be($"it is pinned to {CodeOf(2)}, which has no room for it beside the other cuts");
    }

    [Fact]
    public void A_spared_piece_is_not_touched_though_a_new_one_must_be_bought()
    {
        var plan = Match(Request([Board("60\"", 1)], [Cut("48\"")], Price("8'", 400)) with { Wishes = Spared(1) });

        plan.Tiers.Spend.Should().Be(Figure.Best(400));
        plan.Pieces.Single().Source.Should().BeNull();
    }

    [Fact]
    public void What_only_a_spared_piece_could_give_stays_unfilled_and_says_so()
    {
        var plan = Match(Request([Board("60\"", 1)], [Cut("48\"")]) with { Buy = false, Wishes = Spared(1) });

        plan.Unfilled.Single().Reason.Should().Be($"what would do is to be left alone: {CodeOf(1)}");
    }

    [Fact]
    public void A_piece_spared_for_one_cut_serves_the_others()
    {
        var request = Request([Board("60\"", 1)], [Cut("48\"", name: "a"), Cut("48\"", name: "b")]) with
        {
            Buy = false,
            Wishes = new Wishes([], [new Spare(CodeOf(1), "wall", "a")]),
        };

        Match(request).Pieces.Single().Cuts.Single().Cut.Should().Be("b");
    }

    [Fact]
    public void A_pin_that_cannot_hold_is_refused_with_the_reason()
    {
        var request = Request(
            [Board("40\"", 1), Board("60\"", 2) with { Condition = Condition.Poor }, Board("60\"", 3) with { State = PieceState.Reserved, ReservedFor = "roof" }, Board("60\"", 4) with { Material = MaterialReader.Read("2x6").Value }],
            [Cut("48\"", 4)]);

        Refusals(request with { Wishes = Pinned((1, "cut"), (2, "cut"), (3, "cut"), (4, "cut")) }).Should().Equal(
            $"{CodeOf(1)} can't be pinned to cut: it is too short by 8\": its longest usable stretch is 3' 4\"",
            $"{CodeOf(2)} can't be pinned to cut: it is poor, and nonstructural use takes sound or fair",
            $"{CodeOf(3)} can't be pinned to cut: it is reserved for roof",
            $"{CodeOf(4)} can't be pinned to cut: it is 2x6, and the cut is of 2x4");
    }

    [Fact]
    public void A_pin_to_a_piece_without_the_stamp_or_the_treatment_is_refused()
    {
        RequiredCut[] cuts = [Cut("48\"", name: "post") with { Use = Use.Structural }, Cut("48\"", name: "sill") with { Treated = TreatedWish.Yes }];

        Refusals(Request([Board("60\"", 1)], cuts) with { Wishes = Pinned((1, "post"), (1, "sill")) }).Should().Equal(
            $"{CodeOf(1)} can't be pinned to post: it is not stamped, and structural use asks for it",
            $"{CodeOf(1)} can't be pinned to sill: it is untreated, and the cut wants treated");
    }

    [Fact]
    public void Wishes_for_what_is_not_there_are_refused()
    {
        var request = Request([Board("60\"", 1)], [Cut("48\"")]);

        Refusals(request with { Wishes = Pinned((9, "cut")) }).Should().Equal($"a wish names {CodeOf(9)}, but no such piece is in the yard; release it");
        Refusals(request with { Wishes = Pinned((1, "other")) }).Should().Equal($"a wish for {CodeOf(1)} names the cut other of wall, but no such cut is to be planned");
        Refusals(request with { Wishes = new Wishes([new Pin(CodeOf(1), "roof", "cut")], []) }).Should().Equal($"a wish for {CodeOf(1)} names the cut cut of roof, but no such cut is to be planned");
        Refusals(request with { Wishes = Spared(9) }).Should().Equal($"a wish names {CodeOf(9)}, but no such piece is in the yard; release it");
        Refusals(request with { Wishes = Pinned((1, "cut")).And(Spared(1)) }).Should().Equal($"{CodeOf(1)} can't be pinned to cut and spared; take one of the two back");
        Refusals(request with { Wishes = Pinned((1, "cut"), (1, "cut")) }).Should().Equal("cut: 2 pieces are pinned, but only 1 is needed");
        Refusals(Request([Board("60\"", 1)], [Cut("48\""), Cut("40\"")]) with { Wishes = Pinned((1, "cut")) }).Should().Equal("wall has two cuts named cut; give them names of their own to pin one");
    }

    [Fact]
    public void The_checker_sees_a_plan_that_goes_against_a_wish()
    {
        var request = Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"")], Price("8'", 400));
        var free = Match(request);
        IReadOnlyList<string> Faults(Wishes wishes) => PlanChecker.Faults(Problem.Create(request with { Wishes = wishes }).Value, free with { Wishes = wishes });

        Faults(Wishes.None).Should().BeEmpty();
        Faults(Pinned((1, "cut"))).Should().BeEmpty("the plan cuts from that piece");
        Faults(Pinned((2, "cut"))).Should().Equal("the cuts cut of wall do not fit what was asked");
        Faults(Spared(1)).Should().Equal("the cuts cut of wall do not fit what was asked");
        Faults(new Wishes([], [new Spare(CodeOf(1), "wall", "cut")])).Should().Equal("the cuts cut of wall do not fit what was asked");
        PlanChecker.Faults(Problem.Create(request).Value, free with { Wishes = Spared(2) }).Should().Equal("the wishes are not the problem's");
    }

    // Pinning what the best plan does anyway changes no tier; sparing what it does not touch changes none either.
    [Fact]
    public void Wishes_that_the_best_plan_keeps_anyway_cost_nothing() =>
        Gen.Int[0, 1_000_000].Sample(
            seed =>
            {
                var request = RandomYards.Draw(seed, 8, 8);
                var free = Match(request);
                if (!free.Proven) return true;
                var pins = free.Pieces.Where(piece => piece.Source is not null)
                    .SelectMany(piece => piece.Cuts.Select(cut => new Pin(piece.Source!.Code, cut.Stage, cut.Cut))).ToArray();
                var untouched = request.Pieces.Where(piece => piece.OnHand && free.Pieces.All(used => used.Source?.Code != piece.Code)).Select(piece => new Spare(piece.Code));
                var bound = Match(request with { Wishes = new Wishes(pins, [.. untouched]) });
                return bound.Proven && bound.Tiers with { SawCuts = 0, UnfilledByStage = [] } == free.Tiers with { SawCuts = 0, UnfilledByStage = [] };
            },
            iter: 20);

    // Sparing any one piece never makes an earlier tier better, and the plan leaves it alone.
    [Fact]
    public void Sparing_a_piece_never_makes_fill_or_spend_better() =>
        Gen.Int[0, 1_000_000].Sample(
            seed =>
            {
                var request = RandomYards.Draw(seed, 8, 8);
                var free = Match(request);
                if (!free.Proven || free.Pieces.FirstOrDefault(piece => piece.Source is not null) is not { } first) return true;
                var bound = Match(request with { Wishes = new Wishes([], [new Spare(first.Source!.Code)]) });
                return bound.Pieces.All(piece => piece.Source?.Code != first.Source.Code)
                    && Early(bound).Zip(Early(free), (a, b) => a.CompareTo(b)).FirstOrDefault(order => order != 0) >= 0;
            },
            iter: 20);

    private static IEnumerable<long> Early(Plan plan) => plan.Tiers.UnfilledByStage.Select(figure => figure.Value).Append(plan.Tiers.Spend.Value);

    [Fact]
    public void A_wish_that_names_a_bin_is_told_which_bin_it_is()
    {
        Hardware Counted(string name) => (Hardware)MaterialReader.ReadCounted(name).Value;
        var request = Request([Board("60\"", 1)], [Cut("48\"")]) with { Bins = [new Bin(CodeOf(7), Counted("bolt"), 3), new Bin(CodeOf(8), Counted("tie"), 2)] };

        Refusals(request with { Wishes = Pinned((8, "cut")) }).Should().Equal(YardFaults.IsABin(CodeOf(8).ToString(), "tie").Sentence);
        Refusals(request with { Wishes = Spared(7) }).Should().Equal(YardFaults.IsABin(CodeOf(7).ToString(), "bolt").Sentence);
        Refusals(request with { Wishes = Spared(9) }).Should().Equal($"a wish names {CodeOf(9)}, but no such piece is in the yard; release it");
    }
}
