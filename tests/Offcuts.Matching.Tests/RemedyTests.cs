using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>What would have to change, where several pieces, cuts and lengths stand side by side. All yards here are invented.</summary>
public sealed class RemedyTests
{
    private static (RemedyKind Kind, string Text, int Fills)[] Remedies(MatchRequest request, string stage = "wall", string name = "cut")
    {
        var problem = Problem.Create(request).Value;
        var cut = problem.Stages.Single(one => one.Name == stage).Cuts.First(one => one.Name == name);
        return [.. Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), cut, MatchLimits.None).Remedies.Select(remedy => (remedy.Kind, remedy.Text, remedy.Fills))];
    }

    private static (RemedyKind, string, int)[] Only(RemedyKind kind, MatchRequest request) => [.. Remedies(request).Where(remedy => remedy.Kind == kind)];

    private static Piece Reserved(string length, int number) => Board(length, number) with { State = PieceState.Reserved, ReservedFor = "roof" };

    [Fact]
    public void Sheets_have_no_remedy() =>
        Remedies(Request([], [Cut("50\"") with { Material = MaterialReader.Read("plywood 3/4").Value }])).Should().BeEmpty();

    [Fact]
    public void A_longer_piece_is_measured_against_the_longest_span_that_may_serve()
    {
        Only(RemedyKind.LongerPiece, Request([Board("60\"", 1), Board("70\"", 2), Board("80\"", 3) with { Condition = Condition.Poor }], [Cut("7'")]))
            .Should().Equal((RemedyKind.LongerPiece, "a piece longer by 1' 2\" than the longest that may serve, which is 5' 10\"", 1));
        Only(RemedyKind.LongerPiece, Request([Board("7'")], [Cut("7'", 2)])).Should().BeEmpty("a piece of that length would do");
    }

    [Fact]
    public void Of_two_boards_that_give_as_many_only_the_shorter_is_told() =>
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("7'", 3)], Price("7'", 450, limit: 0), Price("8'", 500, limit: 0), Price("14 1/2'", 900, limit: 0)))
            .Should().Equal((RemedyKind.OneMoreBoard, "one more new board of 7'", 1), (RemedyKind.OneMoreBoard, "one more new board of 14' 6\"", 2));

    // 2 x 47 15/16 + 1/8 = 96 exactly; 2 x 48 + 1/8 is an eighth too much.
    [Theory]
    [InlineData("47 15/16\"", 2)]
    [InlineData("48\"", 1)]
    public void How_many_a_board_gives_counts_the_kerf_between_them(string length, int gives) =>
        Only(RemedyKind.OneMoreBoard, Request([], [Cut(length, 2)], Price("8'", 500, limit: 0))).Should().Equal((RemedyKind.OneMoreBoard, "one more new board of 8'", gives));

    [Fact]
    public void Of_two_boards_of_a_length_the_cheaper_is_told() =>
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("7'")], Price("8'", 500, limit: 0), Price("8'", 400, limit: 0, treated: true)))
            .Should().Equal((RemedyKind.OneMoreBoard, "one more new treated board of 8'", 1));

    [Fact]
    public void A_board_that_is_too_short_or_not_as_wished_does_not_count()
    {
        const string Some = "a board of 7' or more; no price is known for one";
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("7'")], Price("6'", 500))).Should().Equal((RemedyKind.OneMoreBoard, Some, 1));
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("7'") with { Treated = TreatedWish.Yes }], Price("8'", 500))).Should().Equal((RemedyKind.OneMoreBoard, Some, 1));
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("7'") with { Use = Use.Structural }], Price("8'", 500, limit: 0))).Should().Equal((RemedyKind.OneMoreBoard, "one more new board of 8'", 1));
    }

    // The poor board of 8 ft holds one of 7 ft; the cut beside it stays as it is.
    [Fact]
    public void A_looser_use_is_asked_for_one_cut_alone() =>
        Only(RemedyKind.LooserUse, Request([Board("3'", 1), Board("8'", 2) with { Condition = Condition.Poor }], [Cut("7'"), Cut("6'", name: "other")]))
            .Should().Equal((RemedyKind.LooserUse, "the use rough, if the work allows it", 1));

    [Fact]
    public void Other_treatment_may_come_from_the_store_in_exactly_the_length()
    {
        var request = Request([], [Cut("7'") with { Treated = TreatedWish.Yes }], Price("7'", 500), Price("6'", 900, treated: true));

        Only(RemedyKind.OtherTreatment, request).Should().Equal((RemedyKind.OtherTreatment, "untreated wood too, where the code allows it", 1));
        Only(RemedyKind.OtherTreatment, request with { Buy = false }).Should().BeEmpty();
    }

    [Fact]
    public void One_reserved_piece_is_let_go_and_no_other() =>
        Only(RemedyKind.ReservedPiece, Request([Board("7'", 1), Reserved("2'", 2), Reserved("8'", 3) with { BadSpots = [new Offcuts.Core.Yard.Span(L("7'"), L("91\""))] }, Reserved("8'", 4)], [Cut("7'", 3)]))
            .Should().Equal((RemedyKind.ReservedPiece, $"{CodeOf(3)}, which is reserved for roof", 1));

    [Fact]
    public void One_spared_piece_is_let_go_and_no_other() =>
        Only(RemedyKind.SparedPiece, Request([Board("7'", 1), Board("2'", 2), Board("7'", 3), Board("7'", 4)], [Cut("7'", 3)]) with
        { Wishes = new Wishes([], [new Spare(CodeOf(2)), new Spare(CodeOf(3)), new Spare(CodeOf(4))]) })
            .Should().Equal((RemedyKind.SparedPiece, $"{CodeOf(3)}, which is to be left alone", 1));

    // Both stages have a cut of the same name, and the wall another one beside it; only what was asked about is counted.
    [Fact]
    public void Only_the_cut_that_was_asked_about_is_explained()
    {
        var problem = Problem.Create(Request([Board("50\"", 1), Board("50\"", 2), Board("40\"", 3)], [Cut("48\""), Cut("39\"", name: "other"), Cut("48\"", 3, stage: "roof")])).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);
        Explanation Of(int stage) => Explainer.Of(problem, plan, problem.Stages[stage].Cuts[0], MatchLimits.None);

        Of(0).From.Should().Equal((0, 1));
        Of(0).Unfilled.Should().BeEmpty();
        Of(1).From.Should().Equal((1, 1));
        Of(1).Unfilled.Select(left => (left.Stage, left.Cut, left.Count)).Should().Equal(("roof", "cut", 2));
    }

    [Fact]
    public void Why_a_piece_may_not_serve_is_told_before_that_it_is_spared()
    {
        var problem = Problem.Create(Request([Board("8'", 1) with { Condition = Condition.Poor }, Board("8'", 2), Board("8'", 3)], [Cut("48\"")]) with
        { Wishes = new Wishes([], [new Spare(CodeOf(1)), new Spare(CodeOf(2))]) }).Value;

        Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None).Candidates.Select(one => one.WhyNot).Should().Equal(
            "it is poor, and nonstructural use takes sound or fair", "it is to be left alone", null);
    }

    // Were its pin released too, "b" would come from the 46 in board.
    [Fact]
    public void Without_a_pinned_piece_its_pins_for_other_cuts_still_hold()
    {
        var problem = Problem.Create(Request([Board("96\"", 1), Board("50\"", 2), Board("46\"", 3)], [Cut("40\"", name: "a"), Cut("45\"", name: "b")], Price("8'", 400)) with
        { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "a"), new Pin(CodeOf(1), "wall", "b")], []) }).Value;
        var why = Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None);
        var without = problem.Changed(request => request with { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "b")], [new Spare(CodeOf(1), "wall", "a")]) }).Value;

        why.Instead.Single().Pinned.Should().BeTrue();
        why.Instead.Single().Tiers.Should().BeEquivalentTo(Matcher.Match(without, MatchLimits.None).Tiers);
    }

    // Were that pin released too, the 46 in board would give the second copy.
    [Fact]
    public void Without_a_pinned_piece_other_pins_of_the_cut_still_hold()
    {
        var problem = Problem.Create(Request([Board("96\"", 1), Board("90\"", 2), Board("46\"", 3), Board("47\"", 4)], [Cut("45\"", 2)], Price("8'", 400)) with
        { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "cut"), new Pin(CodeOf(2), "wall", "cut")], []) }).Value;
        var why = Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None);
        var without = problem.Changed(request => request with { Wishes = new Wishes([new Pin(CodeOf(2), "wall", "cut")], [new Spare(CodeOf(1), "wall", "cut")]) }).Value;

        why.Instead[0].Piece.Code.Should().Be(CodeOf(1));
        why.Instead[0].Tiers.Should().BeEquivalentTo(Matcher.Match(without, MatchLimits.None).Tiers);
    }

    [Fact]
    public void What_else_is_unfilled_is_not_counted_to_what_a_board_gives() =>
        Only(RemedyKind.OneMoreBoard, Request([], [Cut("40\""), Cut("41\"", name: "other"), Cut("40\"", stage: "roof")], Price("8'", 500, limit: 0)))
            .Should().Equal((RemedyKind.OneMoreBoard, "one more new board of 8'", 1));

    // One treated 10 ft board; sound wood of 16 ft at the store, which the plan may not buy. The waler takes the treated board. With one 16 ft
    // board more the waler moves there, its 6 ft rest holds no stud, and the treated board is free for the sill.
    private static MatchRequest Earlier => Request(
        [Board("10'", 1) with { Treated = true }],
        [
            Cut("10'", stage: "a", name: "waler") with { Use = Use.Bracing },
            Cut("7 1/2'", stage: "b", name: "sill") with { Treated = TreatedWish.Yes },
            Cut("92 5/8\"", 2, stage: "c", name: "studs") with { Use = Use.Structural },
        ],
        Price("16'", 1000)) with
    { Buy = false };

    [Fact]
    public void A_board_that_an_earlier_stage_would_take_is_no_help() =>
        Remedies(Earlier, "c", "studs").Should().NotContain(remedy => remedy.Text == "one more new board of 16'")
            .And.Contain((RemedyKind.OneMoreBoard, "2 more new boards of 16'", 2));

    // Both want 14 ft or less and neither can have it: the first such board gives up less of value as the header of 11 ft, whose rest is kept.
    [Fact]
    public void Where_another_cut_would_have_the_first_board_that_has_no_price_the_next_is_told()
    {
        var request = Request([Board("12'")], [Cut("11'", name: "header") with { Use = Use.Structural }, Cut("14'")], Price("8'", 400));

        Only(RemedyKind.OneMoreBoard, request).Should().Equal((RemedyKind.OneMoreBoard, "2 boards of 14' or more; no price is known for one", 1));
        Remedies(request, name: "header").Should().Contain((RemedyKind.OneMoreBoard, "a board of 11' or more; no price is known for one", 1));
    }

    // 9 ft and 7 ft don't both come out of 10 ft. The 7 ft would do with the other board, the 9 ft would not.
    [Fact]
    public void Of_pins_that_stand_in_each_others_way_the_one_that_helps_when_it_is_let_go_is_told()
    {
        var request = Request([Board("10'", 1), Board("8'", 2)], [Cut("9'", name: "long"), Cut("7'", name: "short")], Price("8'", 400)) with
        { Wishes = new Wishes([new Pin(CodeOf(1), "wall", "long"), new Pin(CodeOf(1), "wall", "short")], []) };

        Remedies(request, name: "long").Should().Contain((RemedyKind.ReleasedPin, $"{CodeOf(1)} no longer pinned to short (wall)", 1))
            .And.NotContain(remedy => remedy.Text.Contains("pinned to long", StringComparison.Ordinal));
    }

    // Two of 5 ft don't come out of 8 ft; without that pin the other board gives the second.
    [Fact]
    public void Its_own_pin_that_keeps_a_cut_from_other_pieces_is_told()
    {
        var request = Request([Board("10'", 1), Board("8'", 2)], [Cut("5'", 2)]) with
        { Wishes = new Wishes([new Pin(CodeOf(2), "wall", "cut"), new Pin(CodeOf(2), "wall", "cut")], []) };

        Only(RemedyKind.ReleasedPin, request).Should().Equal((RemedyKind.ReleasedPin, $"{CodeOf(2)} no longer pinned to cut (wall)", 1));
    }

    [Fact]
    public void A_board_that_cannot_serve_the_cut_may_set_free_what_can() =>
        Remedies(Earlier, "b", "sill").Should().Contain((RemedyKind.OneMoreBoard, "one more new board of 16'", 1));

    // With exactly that board added, the plan fills exactly that.
    [Fact]
    public void What_a_board_is_said_to_fill_is_what_it_fills()
    {
        foreach (var (stage, name) in new[] { ("b", "sill"), ("c", "studs") })
        {
            var problem = Problem.Create(Earlier).Value;
            var plan = Matcher.Match(problem, MatchLimits.None);
            var cut = problem.Stages.SelectMany(one => one.Cuts).Single(one => (one.Stage, one.Name) == (stage, name));
            foreach (var remedy in Explainer.Of(problem, plan, cut, MatchLimits.None).Remedies.Where(one => one.Kind == RemedyKind.OneMoreBoard))
            {
                var count = remedy.Text.StartsWith("one", StringComparison.Ordinal) ? 1 : 2;
                Piece[] more = [.. Enumerable.Range(0, count).Select(i => Board("16'", 70 + i) with { Stamped = true })];
                var then = Match(Earlier with { Pieces = [.. Earlier.Pieces, .. more] });
                int Open(Plan of, string s, string c) => of.Unfilled.Where(one => (one.Stage, one.Cut) == (s, c)).Sum(one => one.Count);
                (Open(plan, stage, name) - Open(then, stage, name)).Should().Be(remedy.Fills);
                foreach (var other in remedy.Others) (Open(plan, other.Stage, other.Cut) - Open(then, other.Stage, other.Cut)).Should().Be(other.More);
            }
        }
    }

    [Fact]
    public void What_a_change_fills_of_other_cuts_is_told_with_it()
    {
        var request = Request([], [Cut("40\""), Cut("41\"", name: "other")], Price("8'", 500, limit: 0));
        var problem = Problem.Create(request).Value;
        Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None).Remedies.Single()
            .Others.Should().Equal(new OtherFill("wall", "other", 1));
    }

    // Two of 4 ft out of 8 ft: the saw takes 1/8 in between them.
    [Fact]
    public void What_only_the_saw_lacks_is_said_with_how_much_longer_would_do()
    {
        var request = Request([Board("8'", 5)], [Cut("4'", 2)]);
        Match(request).Unfilled.Single().Reason.Should()
            .Be("the saw takes 1/8\" between two cuts, and by 1/8\" what is left of the piece that would do is too short for one more");
        Remedies(request).Should().Contain((RemedyKind.LongerPiece, $"{CodeOf(5)} longer by 1/8\", or the cut shorter by that, if it may be", 1));
        Match(Request([Board("8' 1/8\"", 5)], [Cut("4'", 2)])).Unfilled.Should().BeEmpty();
        Match(Request([Board("95 3/4\"", 5)], [Cut("4'", 2)])).Unfilled.Single().Reason.Should().StartWith("the pieces that would do are taken", "that lacks more than a saw cut");
    }

    // The store sells boards of exactly that length, but there are none.
    [Fact]
    public void A_store_length_that_would_do_is_not_what_a_longer_piece_is_measured_against() =>
        Only(RemedyKind.LongerPiece, Request([Board("6'")], [Cut("7'")], Price("7'", 400, limit: 0)))
            .Should().Equal((RemedyKind.LongerPiece, "a piece longer by 1' than the longest that may serve, which is 6'", 1));

    [Fact]
    public void New_boards_count_as_stamped_where_a_structural_cut_asks_what_would_do()
    {
        Only(RemedyKind.LongerPiece, Request([], [Cut("10'") with { Use = Use.Structural }], Price("8'", 500)))
            .Should().Equal((RemedyKind.LongerPiece, "a piece longer by 2' than the longest that may serve, which is 8'", 1));
        Only(RemedyKind.OtherTreatment, Request([], [Cut("7'") with { Use = Use.Structural, Treated = TreatedWish.Yes }], Price("8'", 500)))
            .Should().Equal((RemedyKind.OtherTreatment, "untreated wood too, where the code allows it", 1));
    }

    [Theory]
    [InlineData(TreatedWish.Yes, true)]
    [InlineData(TreatedWish.No, false)]
    public void A_longer_piece_would_be_treated_as_the_cut_wants_it(TreatedWish wish, bool treated) =>
        Only(RemedyKind.LongerPiece, Request([Board("6'") with { Treated = treated }], [Cut("7'") with { Treated = wish }]))
            .Should().Equal((RemedyKind.LongerPiece, "a piece longer by 1' than the longest that may serve, which is 6'", 1));

    [Fact]
    public void A_cut_that_stays_unfilled_either_way_is_not_told_with_a_change()
    {
        var problem = Problem.Create(Request([], [Cut("7'"), Cut("20'", name: "ridge")], Price("8'", 500, limit: 0))).Value;

        Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], MatchLimits.None)
            .Remedies.Single(remedy => remedy.Kind == RemedyKind.OneMoreBoard).Others.Should().BeEmpty();
    }
}
