using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Why this piece, and what would have to change. All yards here are invented.</summary>
public sealed class ExplainerTests
{
    private static Explanation Explain(MatchRequest request, string cut = "cut")
    {
        var problem = Problem.Create(request).Value;
        return Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages.SelectMany(stage => stage.Cuts).First(one => one.Name == cut), MatchLimits.None);
    }

    private static (RemedyKind, string, int)[] Remedies(MatchRequest request) =>
        [.. Explain(request).Remedies.Select(remedy => (remedy.Kind, remedy.Text, remedy.Fills))];

    // V(50) = 4.00 x (50/96)^2 = 1.085, V(96) = 4.00, V(47 7/8) = 0.99: the short board gives up 1.09, the long one 3.01.
    [Fact]
    public void It_names_the_piece_and_what_the_plan_without_it_gives_up_in_each_tier()
    {
        var request = Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"")], Price("8'", 400));
        var why = Explain(request);

        why.From.Should().Equal((0, 1));
        why.NotTried.Should().Be(0);
        var without = why.Instead.Single();
        without.Piece.Code.Should().Be(CodeOf(1));
        without.Pinned.Should().BeFalse();
        without.Tiers.Unfilled.Should().Be(Figure.Best(0));
        without.Tiers.Spend.Should().Be(Figure.Best(0));
        Match(request).Tiers.ValueGivenUp.Should().Be(Figure.Best(109));
        without.Tiers.ValueGivenUp.Should().Be(Figure.Best(301));
    }

    [Fact]
    public void Without_the_only_piece_a_board_is_bought()
    {
        var without = Explain(Request([Board("50\"", 1)], [Cut("48\"")], Price("8'", 400))).Instead.Single();

        without.Tiers.Spend.Should().Be(Figure.Best(400));
    }

    [Fact]
    public void It_says_of_every_piece_of_the_material_whether_it_could_have_served_and_what_it_does()
    {
        var why = Explain(Request(
            [Board("50\"", 1), Board("40\"", 2), Board("96\"", 3), Board("60\"", 4) with { Condition = Condition.Poor }, Board("60\"", 5) with { Material = MaterialReader.Read("2x6").Value }],
            [Cut("48\"")],
            Price("8'", 400)) with
        { Wishes = new Wishes([], [new Spare(CodeOf(3), "wall", "cut")]) });

        why.Candidates.Select(one => (one.Piece.Code, one.WhyNot, one.UsedFor.Count)).Should().Equal(
            (CodeOf(1), null, 1),
            (CodeOf(2), "it is too short by 8\": its longest usable stretch is 3' 4\"", 0),
            (CodeOf(3), "it is to be left alone", 0),
            (CodeOf(4), "it is poor, and nonstructural use takes sound or fair", 0));
    }

    [Fact]
    public void A_pinned_piece_is_told_as_pinned()
    {
        var request = Request([Board("50\"", 1), Board("96\"", 2)], [Cut("48\"")], Price("8'", 400)) with { Wishes = new Wishes([new Pin(CodeOf(2), "wall", "cut")], []) };

        var without = Explain(request).Instead.Single();

        without.Pinned.Should().BeTrue();
        without.Tiers.ValueGivenUp.Should().Be(Figure.Best(109), "the short board is then free to serve");
    }

    [Fact]
    public void Without_a_limit_of_time_many_pieces_are_tried_and_the_rest_is_counted()
    {
        var why = Explain(Request(Enumerable.Range(1, 26).Select(i => Board("50\"", i)), [Cut("48\"", 26)], Price("8'", 400)));

        why.Instead.Should().HaveCount(24);
        why.NotTried.Should().Be(2);
    }

    // Each look at this clock takes a second of the three that there are: no time is left for a piece beyond the first three.
    [Fact]
    public void Beyond_the_first_three_pieces_are_tried_while_there_is_time()
    {
        var problem = Problem.Create(Request(Enumerable.Range(1, 5).Select(i => Board("50\"", i)), [Cut("48\"", 5)], Price("8'", 400))).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);

        var why = Explainer.Of(problem, plan, problem.Stages[0].Cuts[0], new MatchLimits { Time = TimeSpan.FromSeconds(3), Clock = new HastyClock() });

        why.Instead.Should().HaveCount(3);
        why.NotTried.Should().Be(2);
        Explainer.Of(problem, plan, problem.Stages[0].Cuts[0], new MatchLimits { Time = TimeSpan.FromMinutes(1), Clock = TimeProvider.System }).NotTried.Should().Be(0);
    }

    private sealed class HastyClock : TimeProvider
    {
        private long _seconds;

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Interlocked.Increment(ref _seconds);
    }

    [Fact]
    public void Too_short_says_by_how_much_and_which_board_would_do()
    {
        Remedies(Request([Board("6'")], [Cut("7'", 2)], Price("8'", 400, limit: 0), Price("16'", 900, limit: 0))).Should().Equal(
            (RemedyKind.LongerPiece, "a piece longer by 1' than the longest that may serve, which is 6'", 1),
            (RemedyKind.OneMoreBoard, "one more new board of 8'", 1),
            (RemedyKind.OneMoreBoard, "one more new board of 16'", 2));
    }

    [Fact]
    public void Without_a_price_it_says_how_long_a_board_must_be() =>
        Remedies(Request([], [Cut("7'")])).Should().Equal((RemedyKind.OneMoreBoard, "a board of 7' or more; no price is known for one", 1));

    [Fact]
    public void A_looser_use_is_told_where_it_would_fill_the_cut() =>
        Remedies(Request([Board("8'") with { Condition = Condition.Poor }], [Cut("7'")])).Should().Equal(
            (RemedyKind.OneMoreBoard, "a board of 7' or more; no price is known for one", 1),
            (RemedyKind.LooserUse, "the use rough, if the work allows it", 1));

    // The one poor board is taken by an earlier stage, so loosening the later cut's use fills nothing.
    [Fact]
    public void A_looser_use_that_fills_nothing_is_not_told() =>
        Remedies(Request([Board("8'") with { Condition = Condition.Poor }], [Cut("7'", stage: "first", name: "stake") with { Use = Use.Rough }, Cut("7'", stage: "later")]))
            .Select(remedy => remedy.Item1).Should().Equal(RemedyKind.OneMoreBoard);

    [Fact]
    public void Treatment_reservation_and_a_spared_piece_are_told()
    {
        Remedies(Request([Board("8'")], [Cut("7'") with { Treated = TreatedWish.Yes }])).Should().Contain(
            (RemedyKind.OtherTreatment, "untreated wood too, where the code allows it", 1));
        Remedies(Request([Board("8'") with { State = PieceState.Reserved, ReservedFor = "roof" }], [Cut("7'")])).Should().Contain(
            (RemedyKind.ReservedPiece, $"{CodeOf(1)}, which is reserved for roof", 1));
        Remedies(Request([Board("8'")], [Cut("7'")]) with { Wishes = new Wishes([], [new Spare(CodeOf(1))]) }).Should().Contain(
            (RemedyKind.SparedPiece, $"{CodeOf(1)}, which is to be left alone", 1));
    }

    [Fact]
    public void A_filled_cut_needs_no_remedy() =>
        Explain(Request([Board("8'")], [Cut("7'")])).Remedies.Should().BeEmpty();

    [Fact]
    public void Cancelled_it_hands_back_what_the_rules_alone_say()
    {
        var problem = Problem.Create(Request([Board("50\"", 1)], [Cut("48\"")])).Value;
        var why = Explainer.Of(problem, Matcher.Match(problem, MatchLimits.None), problem.Stages[0].Cuts[0], new MatchLimits { Cancel = new CancellationToken(canceled: true) });

        why.Candidates.Should().HaveCount(1);
        why.Instead.Should().BeEmpty();
        (why.NotTried, why.Stopped).Should().Be((1, true));
    }

    [Fact]
    public void Cancelled_it_tries_nothing_that_might_fill_more()
    {
        var problem = Problem.Create(Request([Board("6'")], [Cut("7'", 2)], Price("8'", 400, limit: 0))).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);

        Explanation Within(MatchLimits limits) => Explainer.Of(problem, plan, problem.Stages[0].Cuts[0], limits);

        Within(MatchLimits.None).Remedies.Should().NotBeEmpty();
        Within(MatchLimits.None).Stopped.Should().BeFalse();
        var stopped = Within(new MatchLimits { Cancel = new CancellationToken(canceled: true) });
        stopped.Remedies.Should().BeEmpty("each of them would be a match");
        stopped.Stopped.Should().BeTrue();
    }
}
