using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Sawing lengthwise, rule by rule. All yards and prices here are invented.</summary>
public sealed class RipTests
{
    private static Material M(string name) => MaterialReader.Read(name).Value;

    private static Piece Wide(string material, string length, int number = 1) => Board(length, number) with { Material = M(material) };

    private static RequiredCut Rip(string length, int count = 1, string material = "2x4", string? longest = null, string name = "cut") =>
        Cut(length, count, name: name, longest: longest) with { Material = M(material), Rip = true };

    private static StorePrice At(string material, string length, long cents) => Price(length, cents) with { Material = M(material) };

    private static MatchRequest NoBuy(IEnumerable<Piece> yard, IEnumerable<RequiredCut> cuts, params StorePrice[] prices) => Request(yard, cuts, prices) with { Buy = false };

    private static PlannedCut Only(MatchRequest request) => Match(request).Pieces.Single().Cuts.Single();

    // Widths: PS 20-20 Table 3, dry: 2x2 1-1/2, 2x4 3-1/2, 2x6 5-1/2, 2x8 7-1/4, 2x10 9-1/4, 2x12 11-1/4 in. The strip is the
    // difference less a kerf: 5-1/2 - 3-1/2 - 1/8 = 1-7/8 and so on. Kerf of 1/8 in: common practice.
    [Theory]
    [InlineData("2x6", "2x4", "1/8\"", "1 7/8\"", "2x2", 2)]
    [InlineData("2x8", "2x4", "1/8\"", "3 5/8\"", "2x4", 2)]
    [InlineData("2x8", "2x6", "1/8\"", "1 5/8\"", "2x2", 2)]
    [InlineData("2x10", "2x4", "1/8\"", "5 5/8\"", "2x6", 2)]
    [InlineData("2x12", "2x4", "1/8\"", "7 5/8\"", "2x8", 2)]
    [InlineData("2x8", "2x4", "1/4\"", "3 1/2\"", "2x4", 1)]
    [InlineData("foam 2-1/2x16", "foam 2-1/2x12", "0\"", "4\"", "foam 2-1/2x4", 1)]
    public void A_strip_is_the_difference_less_a_kerf_and_kept_as_the_widest_it_can_be(string from, string into, string kerf, string strip, string kept, int saws)
    {
        var list = (string[])["2x2", "2x4", "2x6", "2x8", "foam 2-1/2x4", "foam 2-1/2x12"];
        var request = NoBuy([Wide(from, "48\"")], [Rip("48\"", material: into)], [.. list.Select(name => At(name, "8'", 400))]);

        var plan = Match(request with { Settings = YardSettings.Usual with { KerfElsewhere = L(kerf) } });

        plan.Pieces.Single().Cuts.Single().Rip.Should().Be(new PlannedRip(M(into), Ripping.Width(M(into))!.Value, L(strip), M(kept)));
        plan.Tiers.Rips.Should().Be(Figure.Best(1));
        plan.Tiers.SawCuts.Should().Be(saws, "the board is as long as the cut, so nothing is cut across");
        plan.Proven.Should().BeTrue();
    }

    [Fact]
    public void Progress_tells_ripped_cuts_where_some_may_be_and_only_there()
    {
        List<MatchProgress> Told(RequiredCut cut)
        {
            var told = new Heard();
            Match(NoBuy([Wide("2x6", "48\"")], [cut]), new MatchLimits { Progress = told });
            return told.All;
        }

        var last = Told(Rip("48\""))[^1];
        last.Unfilled.Value.Should().Be(0);
        last.Rips.Should().Be(Figure.Best(1));
        Told(Rip("48\"") with { Rip = false }).Should().OnlyContain(step => step.Rips == null);
    }

    private sealed class Heard : IProgress<MatchProgress>
    {
        public List<MatchProgress> All { get; } = [];

        public void Report(MatchProgress value) => All.Add(value);
    }

    [Fact]
    public void A_strip_of_a_width_that_is_not_listed_is_scrap_and_needs_one_rip()
    {
        var plan = Match(NoBuy([Wide("2x6", "48\"")], [Rip("48\"")]));

        plan.Pieces.Single().Cuts.Single().Rip.Should().Be(new PlannedRip(Stud, L("3 1/2\""), L("1 7/8\""), null));
        plan.Tiers.SawCuts.Should().Be(1);
    }

    // Of 2x12 to 2x4 a strip of 7-5/8 in is left: it is a 2x8 or nothing, though a 2x2 would be long enough.
    [Fact]
    public void A_strip_that_is_shorter_than_its_keep_length_is_scrap_whatever_narrower_it_could_be()
    {
        var request = NoBuy([Wide("2x12", "48\"")], [Rip("48\"")], At("2x8", "8'", 900), At("2x2", "8'", 200));

        Only(request).Rip!.KeptAs.Should().Be(M("2x8"));
        Only(request with { Settings = YardSettings.Usual with { Keeps = YardSettings.Usual.Keeps.Add("2x8", L("49\"")) } }).Rip!.KeptAs.Should().BeNull();
    }

    [Fact]
    public void Without_the_word_nothing_is_ripped()
    {
        var plan = Match(NoBuy([Wide("2x6", "60\"")], [Cut("48\"")]));

        plan.Tiers.Unfilled.Value.Should().Be(1);
        plan.Tiers.Rips.Should().BeNull();
    }

    // The 2x4 of 16 ft gives up far more of the yard's value than a stub of a 2x6 does. It is cut all the same.
    [Fact]
    public void Nothing_is_ripped_while_a_piece_of_the_right_width_would_do_at_the_same_spend()
    {
        var plan = Match(Request([Wide("2x6", "50\"", 1), Board("192\"", 2)], [Rip("48\"")], Price("8'", 400), At("2x6", "8'", 700)));

        plan.Pieces.Single().Source!.Code.Should().Be(CodeOf(2));
        plan.Tiers.Rips.Should().Be(Figure.Best(0));
        plan.Proven.Should().BeTrue();
    }

    [Fact]
    public void A_board_is_ripped_sooner_than_one_is_bought()
    {
        var plan = Match(Request([Wide("2x6", "50\"")], [Rip("48\"")], Price("8'", 400)));

        plan.Tiers.Spend.Should().Be(Figure.Best(0));
        plan.Tiers.Rips.Should().Be(Figure.Best(1));
    }

    // The stub is too short to be ripped for anything, and only joins the two. What both cost together is no bound for one of them.
    [Fact]
    public void Materials_that_ripping_joins_and_that_are_both_bought_are_each_decided_by_their_own_spend()
    {
        RequiredCut[] studs = [.. Enumerable.Range(0, 10).Select(i => Rip($"{41 + 3 * i}\"", 4, name: $"stud {i}"))];
        RequiredCut[] wide = [.. Enumerable.Range(0, 3).Select(i => Cut($"{60 + i}\"", 2, name: $"wide {i}") with { Material = M("2x6") })];
        Piece[] yard = [Wide("2x6", "10\"", 1), Board("95\"", 2), Board("71\"", 3), Board("66\"", 4)];
        StorePrice[] prices = [Price("8'", 400), Price("12'", 590), At("2x6", "8'", 700), At("2x6", "12'", 1000)];

        var together = Match(Request(yard, [.. studs, .. wide], prices));

        var (alone, others) = (Match(Request(yard[1..], [.. studs.Select(cut => cut with { Rip = false })], prices[..2])), Match(Request(yard[..1], wide, prices[2..])));
        (alone.Proven, others.Proven).Should().Be((true, true));
        together.Tiers.Spend.Should().Be(Figure.Best(alone.Tiers.Spend.Value + others.Tiers.Spend.Value));
        together.Tiers.ValueGivenUp.Should().Be(Figure.Best(alone.Tiers.ValueGivenUp.Value + others.Tiers.ValueGivenUp.Value));
    }

    // Two of three must be ripped; the one stud takes the third.
    [Fact]
    public void As_few_are_ripped_as_the_spend_allows()
    {
        var plan = Match(Request([Wide("2x6", "150\"", 1), Board("60\"", 2)], [Rip("48\"", 3)], Price("8'", 400)));

        plan.Tiers.Rips.Should().Be(Figure.Best(2));
        plan.Pieces.Select(piece => (piece.Source!.Code, piece.Cuts.Count)).Should().Equal((CodeOf(1), 2), (CodeOf(2), 1));
    }

    [Fact]
    public void No_board_is_bought_to_be_ripped()
    {
        var plan = Match(Request([], [Rip("48\"")], At("2x6", "8'", 1), Price("8'", 400)));

        plan.Pieces.Single().Bought!.Material.Should().Be(Stud);
        Match(Request([], [Rip("48\"")], At("2x6", "8'", 1))).Tiers.Unfilled.Should().Be(Figure.Best(1));
    }

    // V(60 in of 2x8) = 9.00 x (60/96)^2 = 3.52. Left along the board are 60 - 48 - 1/8 = 11-7/8 in: scrap. The strip of 3-5/8 in is
    // brought to a 2x4: V(48 in) = 4.00 x (48/96)^2 = 1.00. Given up are 2.52, with one saw cut across and two lengthwise.
    [Fact]
    public void A_kept_strip_counts_for_what_it_is_worth()
    {
        var plan = Match(NoBuy([Wide("2x8", "60\"")], [Rip("48\"")], At("2x8", "8'", 900), Price("8'", 400)));

        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(252));
        plan.Tiers.SawCuts.Should().Be(3);
        plan.Pieces.Single().Remainders.Should().Equal(new PlannedRemainder(L("48 1/8\""), L("11 7/8\""), Kept: false));
    }

    // The strip has the board's condition: 0.7 of 1.00 for a fair one.
    [Fact]
    public void A_kept_strip_has_the_boards_condition() =>
        Match(NoBuy([Wide("2x8", "48\"") with { Condition = Condition.Fair }], [Rip("48\"")], Price("8'", 400))).Tiers.ValueGivenUp.Should().Be(Figure.Best(-70));

    // A strip of 48 in would give the second cut, but not in this plan.
    [Fact]
    public void A_strip_serves_no_other_cut_of_its_plan()
    {
        var plan = Match(NoBuy([Wide("2x8", "60\"")], [Rip("48\"", 2)]));

        plan.Tiers.Unfilled.Should().Be(Figure.Best(1));
        plan.Pieces.Single().Cuts.Single().Rip!.KeptAs.Should().Be(Stud);
    }

    [Fact]
    public void A_range_takes_a_whole_span_ripped_but_not_cut_across()
    {
        var plan = Match(NoBuy([Wide("2x6", "50\"")], [Rip("48\"", longest: "52\"")]));

        plan.Pieces.Single().Cuts.Single().Length.Should().Be(L("50\""));
        plan.Pieces.Single().Remainders.Should().BeEmpty();
        plan.Tiers.SawCuts.Should().Be(1);
    }

    [Fact]
    public void Ripped_and_crosscut_cuts_come_out_of_one_board()
    {
        var plan = Match(NoBuy([Wide("2x6", "100\"")], [Rip("48\"", name: "nailer"), Cut("40\"", name: "header") with { Material = M("2x6") }]));

        plan.Tiers.Unfilled.Value.Should().Be(0);
        plan.Pieces.Single().Cuts.Select(cut => (cut.Cut, cut.Rip?.Into)).Should().Equal(("nailer", Stud), ("header", null));
        plan.Pieces.Single().Cuts[1].Start.Should().Be(L("48 1/8\""));
    }

    [Theory]
    [InlineData("2x4", "2x6", "a narrower one")]
    [InlineData("4x6", "2x4", "another thickness")]
    [InlineData("6x8", "6x6", "a timber")]
    [InlineData("foam 2x16 II", "foam 2x12", "another type of foam")]
    [InlineData("foam 3x16", "foam 2x12", "another thickness of foam")]
    [InlineData("#5", "#4", "a bar")]
    public void Only_a_wider_piece_as_thick_is_ripped(string from, string into, string because) =>
        Match(NoBuy([Wide(from, "60\"")], [Rip("48\"", material: into)])).Tiers.Unfilled.Value.Should().Be(1, because);

    // A grade is given for the whole section (common practice).
    [Fact]
    public void A_ripped_board_counts_as_not_stamped()
    {
        var board = Wide("2x6", "60\"") with { Stamped = true };
        Match(NoBuy([board], [Rip("48\"") with { Use = Use.Structural }])).Tiers.Unfilled.Value.Should().Be(1);
        Match(NoBuy([board], [Rip("48\"") with { Use = Use.Bracing }])).Tiers.Unfilled.Value.Should().Be(0);
    }

    [Fact]
    public void A_wide_board_that_is_reserved_or_spared_is_not_ripped()
    {
        var request = NoBuy([Wide("2x6", "60\"")], [Rip("48\"")]);

        Match(request with { Wishes = new Wishes([], [new Spare(CodeOf(1))]) }).Unfilled.Single().Reason.Should().Be($"what would do is to be left alone: {CodeOf(1)}");
        Match(NoBuy([Wide("2x6", "60\"") with { State = PieceState.Reserved, ReservedFor = "roof" }], [Rip("48\"")])).Unfilled.Single().Reason
            .Should().Be("what would do is reserved for the stage roof");
    }

    [Fact]
    public void A_pinned_board_is_ripped_though_one_of_the_right_width_would_do()
    {
        var request = NoBuy([Wide("2x6", "60\"", 1), Board("60\"", 2)], [Rip("48\"")]) with { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "cut")], []) };

        Match(request).Pieces.Single().Source!.Code.Should().Be(CodeOf(1));
        Match(request).Tiers.Rips.Should().Be(Figure.Best(1));
    }

    [Fact]
    public void A_pin_that_ripping_cannot_keep_is_refused()
    {
        string Refused(string material, RequiredCut cut) =>
            Problem.Create(NoBuy([Wide(material, "60\"")], [cut]) with { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "cut")], []) }).Faults.Single().Sentence;

        Refused("2x6", Cut("48\"")).Should().Be($"{CodeOf(1)} can't be pinned to cut: it is 2x6, and the cut is of 2x4");
        Refused("2x6", Rip("48\"") with { Use = Use.Structural }).Should().Be(
            $"{CodeOf(1)} can't be pinned to cut: it is 2x6 and would have to be ripped, which takes its grade, and structural use asks for a stamp");
    }

    // Both boards are ripped once; from the 2x8 the strip takes a second rip to become a 2x4. Value goes before saw cuts, or after.
    [Fact]
    public void Saw_cuts_lengthwise_count_and_may_come_before_value()
    {
        var request = NoBuy([Wide("2x8", "48\"", 1), Wide("2x6", "48\"", 2)], [Rip("48\"")], Price("8'", 400));

        Match(request).Pieces.Single().Source!.Code.Should().Be(CodeOf(1), "the strip is worth 1.00");
        var saws = Match(request with { Order = TierOrder.SawCutsFirst });
        saws.Pieces.Single().Source!.Code.Should().Be(CodeOf(2), "it is scrap there, and one rip does");
        saws.Tiers.SawCutsBound.Should().Be(1);
    }

    [Fact]
    public void What_ripping_cuts_into_without_a_price_is_named() =>
        Match(Request([Wide("2x6", "60\"")], [Rip("48\"")], Price("8'", 400))).Unpriced.Should().Equal("2x6");

    // All new, the cut is a stud.
    [Fact]
    public void All_new_a_rip_cut_costs_what_its_own_material_costs() =>
        Match(Request([Wide("2x6", "60\"")], [Rip("48\"")], Price("8'", 400), At("2x6", "8'", 700))).Savings.Saved.Cents.Should().Be(400);

    [Fact]
    public void An_unfilled_cut_says_that_ripping_would_fill_it()
    {
        var problem = Problem.Create(NoBuy([Wide("2x6", "60\"")], [Cut("48\"")])).Value;
        var why = Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None);

        why.Remedies.Should().Contain(new Remedy(RemedyKind.Ripping, "ripping it out of a wider piece (rip: yes)", 1));
        why.Candidates.Should().BeEmpty();
    }

    [Fact]
    public void A_wide_board_is_among_the_candidates_of_a_cut_that_may_be_ripped()
    {
        var problem = Problem.Create(NoBuy([Wide("2x6", "40\"", 1), Wide("2x6", "60\"", 2), Wide("2x2", "60\"", 3)], [Rip("48\"")])).Value;
        var why = Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None);

        why.Candidates.Select(one => (one.Piece.Code, one.WhyNot, one.UsedFor.Count)).Should().Equal(
            (CodeOf(1), "it is too short by 8\": its longest usable stretch is 3' 4\"", 0),
            (CodeOf(2), null, 1));
        why.Instead.Single().Tiers.Unfilled.Value.Should().Be(1);
    }

    // The widths below: 2x8 gives 2x6, 2x6 gives 2x4; so the three are one problem, and #4 is another.
    [Fact]
    public void Materials_that_ripping_joins_are_bought_in_their_order()
    {
        var plan = Match(Request(
            [Wide("2x8", "50\"", 1), Wide("2x6", "50\"", 2)],
            [Rip("48\"", 2, "2x4", name: "a"), Rip("48\"", 2, "2x6", name: "b"), Rip("48\"", 2, "2x8", name: "c"), Cut("48\"", name: "d") with { Material = M("#4") }],
            At("2x8", "4'", 900), At("2x6", "4'", 700), Price("4'", 400), At("#4", "4'", 300)));

        // The 2x6 serves a b and the 2x8 a c: whatever they serve, the dearest is saved by using each as it is.
        plan.Tiers.Spend.Should().Be(Figure.Best(400 + 400 + 700 + 900 + 300));
        plan.Tiers.Rips.Should().Be(Figure.Best(0));
        plan.Pieces.Where(piece => piece.Bought is not null).Select(piece => piece.Material.Name).Should().Equal("2x4", "2x4", "2x6", "2x8", "#4");
    }

    // V(50) of the 2x8 = 7.00 x (50/96)^2 = 1.899; its strip is kept as a 2x4: V(50) = 4.00 x (50/96)^2 = 1.085, but of 48 in only 1.00. Taken whole the strip is
    // as long as the board, and 1.90 - 1.09 are given up; cut to 48 in it would be 1.90 - 1.00.
    [Fact]
    public void Of_a_board_that_is_taken_whole_the_strip_is_worth_its_whole_length()
    {
        var plan = Match(NoBuy([Wide("2x8", "50\"")], [Rip("48\"", longest: "50\"")], At("2x4", "8'", 400), At("2x8", "8'", 700)));

        plan.Pieces.Single().Cuts.Single().Length.Should().Be(L("50\""));
        plan.Tiers.ValueGivenUp.Should().Be(Figure.Best(190 - 109));
    }
}
