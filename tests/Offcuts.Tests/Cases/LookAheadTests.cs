using System.Text.Json;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Tests.Commands;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>Stages planned together and carried out one by one: what later ones rely on stays theirs.</summary>
public sealed class LookAheadTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string _stub;
    private readonly string _long;
    private readonly string _spare;

    // The stub is the footing's stake as it is, the long board for the wall's post; the third board is not needed.
    public LookAheadTests()
    {
        _yard.Must("add", "2x4 30");
        _yard.Must("add", "2x4 8'");
        _yard.Must("add", "2x4 10'");
        (_stub, _long, _spare) = (YardCommandTests.Code(_yard, 0, "list"), YardCommandTests.Code(_yard, 1, "list"), YardCommandTests.Code(_yard, 2, "list"));
        _yard.Must("price", "set", "2x4", "10'", "5.00");
        _yard.Must("stage", "new", "footing");
        _yard.Must("stage", "need", "footing", "stake: 2x4 30");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "post: 2x4 7'6");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Carrying_out_one_stage_reserves_what_the_plan_relies_on_for_the_next()
    {
        _yard.Must("plan", "--save");
        _yard.Must("list").Out.Should().NotContain("reserved");

        _yard.Must("cut", "--stage", "Footing").Out.Should().Contain($"reserved for walls: {_long}; let go with: offcuts free");

        _yard.Must("list").Out.Should().Contain("reserved for walls");
        _yard.Must("show", _long).Out.Should().Contain("reserved for walls");
        _yard.Must("stage", "list").Lines[2].Should().MatchRegex(@"^walls\s+1\s+1\s+1\s*$");
        _yard.Must("stage", "show", "walls").Out.Should().Contain($"Reserved for it; let go with: offcuts free\n  {_long}  2x4  8'");
        State(_spare).Should().Be(PieceState.InYard, "the plan does not rely on it");
    }

    [Fact]
    public void Undo_takes_the_reservation_back_with_the_cut()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");

        _yard.Must("undo");

        State(_long).Should().Be(PieceState.InYard);
        State(_stub).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_reservation_is_released_by_piece_or_by_stage()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");

        _yard.Must("free", "--stage", "walls").Out.Should().Be("Freed what was reserved for walls: 1 piece; given up of plan 1: 1 x post (walls)\n");
        State(_long).Should().Be(PieceState.InYard);
        _yard.Run("free", "--stage", "walls").Error.Should().Be("nothing is reserved for walls\n");
        _yard.Run("free").Error.Should().Be("name the pieces, or a stage with --stage, not both\n");
        _yard.Must("undo");
        _yard.Must("free", _long);
        State(_long).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void With_a_stage_that_is_removed_it_is_told_what_other_stages_lose()
    {
        _yard.Must("plan", "--save");

        _yard.Must("stage", "remove", "footing").Out.Should().Be("Removed stage footing; what waited in plan 1 is given up; no longer planned for walls: 1 x post\n");
        _yard.Must("sheet", "1").Out.Should().Contain($"{_long}, 2x4, 8': given up: dropped, or matched again").And.Contain("\nGIVEN UP: nothing of it waits any more.\n");
        _yard.Must("undo");
        _yard.Must("drop", "1");
        _yard.Must("stage", "remove", "footing").Out.Should().Be("Removed stage footing\n", "nothing of it waits any more");
    }

    [Fact]
    public void Of_a_plan_that_was_partly_cut_only_what_was_dropped_is_said_to_be_given_up()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("free", _long);
        _yard.Must("sheet", "1").Out.Should().NotContain("GIVEN UP", "a piece was let go, which is told by itself").And.Contain("given up: it was let go");
        _yard.Must("undo");

        _yard.Must("drop", "1");
        _yard.Must("sheet", "1").Out.Should().Contain("\nTHE REST IS GIVEN UP: nothing of it waits any more.\n");
    }

    // The post is an inch shorter by now: sawn as planned it would be one that nobody asked for.
    [Fact]
    public void What_a_plan_still_cuts_though_its_stage_asks_for_it_no_more_is_told()
    {
        const string Told = "ot asked for any more, or of another length or material: 1 x post (walls); match the rest again";
        _yard.Must("plan", "--save");
        _yard.Must("sheet", "1").Out.Should().NotContain("ASKED FOR");
        _yard.Must("today").Out.Should().NotContain(Told);

        _yard.Must("stage", "drop", "walls", "post");
        _yard.Must("stage", "need", "walls", "post: 2x4 7'5");

        _yard.Must("sheet", "1").Out.ReplaceLineEndings(" ").Should().Contain("NOT ASKED FOR ANY MORE: 1 x post (walls). The stage needs that no more, or of another length or material: match the rest again.");
        _yard.Must("today").Out.Should().Contain(Told).And.Contain("2 of 2 pieces to cut; 1 cut not asked for any more");
        _yard.Must("undo");
        _yard.Must("undo");
        _yard.Must("stage", "rename", "walls", "wall");
        _yard.Must("sheet", "1").Out.Should().NotContain("ASKED FOR");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("sheet", "1").Out.Should().NotContain("ASKED FOR", "what is cut is not lacking and waits no more");
    }

    [Theory]
    [InlineData("used")]
    [InlineData("missing")]
    [InlineData("scrapped")]
    public void Of_a_piece_that_is_gone_it_is_told_which_plan_counted_on_it(string what)
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");

        _yard.Must("mark", what, _long).Out.Should().Be($"Marked as {what}: {_long}; plan 1 counted on {_long} for 1 x post (walls): match the rest again\n");
        _yard.Must("mark", "back", _long).Out.Should().Be($"Marked as in the yard: {_long}\n");
        _yard.Must("mark", what, _spare).Out.Should().Be($"Marked as {what}: {_spare}\n", "no plan has it");
    }

    // Nothing waits any more, and still not all is filled.
    [Fact]
    public void Where_the_last_waiting_piece_is_let_go_the_sheet_says_what_is_planned_no_more()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("free", "--stage", "walls");

        _yard.Must("sheet", "1").Out.Should().Contain($"2: {_long}, 2x4, 8': given up: it was let go")
            .And.Contain("1 x post (walls): its piece was let go; match again")
            .And.NotContain("the rest was matched again").And.NotContain("every cut is filled");

        _yard.Must("plan", "--save");
        _yard.Must("sheet", "1").Out.Should().Contain($"2: {_long}, 2x4, 8': given up: dropped, or matched again").And.NotContain("let go");
        _yard.Must("undo");
        _yard.Must("sheet", "1").Out.Should().Contain("1 x post (walls): its piece was let go; match again");
    }

    [Fact]
    public void A_spoilt_piece_is_lacking_still_where_the_last_waiting_one_was_let_go()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--piece", _stub, "--spoilt");
        _yard.Must("free", "--stage", "walls");

        _yard.Must("sheet", "1").Out.Should().Contain("1 x stake (footing): it did not come out of its piece; match the rest again")
            .And.Contain("1 x post (walls): its piece was let go; match again").And.NotContain("every cut is filled");
    }

    // A wall's filling gives pieces up that its courses need no more: none of them was let go, whatever it is made of.
    [Fact]
    public void What_was_not_let_go_is_not_told_to_be()
    {
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        var plan = new MatchStages(yard).Match(new MatchWish([]), Matching.MatchLimits.None).Value;
        plan.Pieces.Should().HaveCount(2).And.OnlyContain(piece => piece.LineSpacing == null);
        var kept = new KeptPlan(1, new DateOnly(2026, 6, 1), plan, [PlanStep.Waiting, PlanStep.Dropped], HardwareDone: false);

        kept.LetGo.Should().BeEmpty();
        (kept with { Plan = plan with { LetGo = [1] } }).LetGo.Should().ContainSingle().Which.Cut.Should().Be("post");
        (kept with { Plan = plan with { LetGo = [1] }, Steps = [PlanStep.Dropped, PlanStep.Dropped] }).LetGo.Should().BeEmpty("the rest was matched again since");
    }

    // Another cut of the footing comes up. The wall's board was let go, so it serves that, and nothing is bought beside it.
    [Fact]
    public void A_piece_that_was_let_go_can_be_had_and_what_hung_on_it_is_planned_no_more()
    {
        _yard.Must("mark", "missing", _spare);
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("free", _long).Out.Should().Be($"Freed {_long}; given up of plan 1: 1 x post (walls)\n");
        _yard.Must("stage", "need", "footing", "waler: 2x4 7'6");

        CodesOf(_yard.Must("plan", "footing", "--json")).Should().Equal(_long.Replace(" ", "", StringComparison.Ordinal));
        _yard.Must("sheet", "1").Out.Should().Contain("given up");
        _yard.Must("stage", "show", "walls").Out.Should().Contain("post").And.NotContain("Reserved for it");
    }

    // The wall's board was let go once: a plan for the footing alone takes it or leaves it, but does not keep it for the wall again.
    [Fact]
    public void What_was_let_go_is_not_reserved_again_in_silence()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("free", "--stage", "walls");
        _yard.Must("stage", "need", "footing", "brace: 2x4 24");

        _yard.Must("plan", "footing", "--save").Out.Should().NotContain("reserved for walls").And.NotContain("is given up");
        State(_long).Should().Be(PieceState.InYard);
        _yard.Must("list").Out.Should().NotContain("reserved");
    }

    [Fact]
    public void Where_keeping_a_plan_reserves_for_other_stages_and_takes_from_their_plan_it_says_both()
    {
        _yard.Must("stage", "need", "walls", "stud: 2x4 9'11 x2");
        _yard.Must("plan", "--save");

        var told = _yard.Must("plan", "footing", "--save").Lines;

        told.Should().Contain("What waited in plan 1 is given up.")
            .And.Contain("No longer planned for walls: 1 x post, 2 x stud; no longer to be bought for it: 1 of 2x4 10'")
            .And.Contain($"Reserved for walls: {_long}, {_spare}; let go with: offcuts free");
    }

    // 30 and 84 in and two kerfs of 1/8 come out of one new board of 120 in.
    [Fact]
    public void A_new_board_for_several_stages_is_no_longer_to_be_bought_for_any_of_them()
    {
        using var yard = new TryYard();
        yard.Must("price", "set", "2x4", "10'", "5.00");
        yard.Must("stage", "new", "footing");
        yard.Must("stage", "need", "footing", "stake: 2x4 30");
        yard.Must("stage", "new", "walls");
        yard.Must("stage", "need", "walls", "post: 2x4 7'");
        yard.Must("plan", "--save");

        yard.Must("plan", "footing", "--save").Lines.Should().Contain("No longer planned for walls: 1 x post; no longer to be bought for it: 1 of 2x4 10', shared with footing");
        yard.Must("undo");
        yard.Must("plan", "walls", "--save").Lines.Should().Contain("No longer planned for footing: 1 x stake; no longer to be bought for it: 1 of 2x4 10', shared with walls");
    }

    // The footing's stake is spoilt, and the wall's post waits in the same plan: a plan of the footing alone would give that up.
    [Fact]
    public void After_a_mishap_all_stages_that_the_plan_still_concerns_are_to_be_planned_again()
    {
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "lath: 2x4 9'");
        _yard.Must("plan", "--save");

        _yard.Must("cut", "--piece", _stub, "--spoilt").Lines[^1].Should().Be("Match the rest again with: offcuts plan footing walls roof --save");
    }

    // The footing's stake is spoilt. Matched again for the footing alone, it may not eat what the wall relies on.
    [Fact]
    public void Planning_one_stage_anew_leaves_the_others_their_pieces()
    {
        _yard.Must("mark", "missing", _spare);
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--piece", _stub, "--spoilt");

        var again = _yard.Must("plan", "footing", "--save", "--json");

        CodesOf(again).Should().Equal([""], "the stake is bought, not cut from the wall's board");
        State(_long).Should().Be(PieceState.Reserved);
        CodesOf(_yard.Must("plan", "walls", "--json")).Should().Equal(_long.Replace(" ", "", StringComparison.Ordinal));
    }

    // Nothing is cut yet: the wall's piece is kept for it when the footing is planned by itself.
    [Fact]
    public void Keeping_a_plan_of_one_stage_reserves_what_the_older_plan_relied_on_for_the_other()
    {
        _yard.Must("plan", "--save");

        _yard.Must("plan", "footing", "--save");

        State(_long).Should().Be(PieceState.Reserved);
        _yard.Must("undo");
        State(_long).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_reservation_made_by_a_plan_gives_way_where_its_stages_are_planned_together_again()
    {
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "lath: 2x4 7'8");
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");
        _yard.Must("stage", "drop", "walls", "post");
        _yard.Must("mark", "missing", _spare);

        // The 8 ft board was reserved for the wall, which lacks nothing any more: it serves the roof, and is free of the wall once that is kept.
        _yard.Must("plan", "walls", "roof", "--save", "--json").Out.Should().Contain("lath").And.Contain(_long.Replace(" ", "", StringComparison.Ordinal));
        State(_long).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void What_another_stage_relies_on_can_not_be_pinned_and_may_be_spared()
    {
        _yard.Must("plan", "--save");

        var told = _yard.Run("plan", "footing", "--pin", $"{_long} for stake");

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{_long} can't be pinned: it waits to be cut for another plan or another stage of one\n");
        CodesOf(_yard.Must("plan", "footing", "--spare", _long, "--json")).Should().Equal(_stub.Replace(" ", "", StringComparison.Ordinal));
    }

    // One board is for a cut of each: matched again together, its reservation for the first of them stands in the way of neither.
    [Fact]
    public void A_piece_for_two_stages_serves_both_again_when_both_are_planned_again()
    {
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "strut: 2x4 27");
        _yard.Must("plan", "--save", "--pin", $"{_spare} for post", "--pin", $"{_spare} for strut");
        _yard.Must("cut", "--stage", "footing");
        State(_spare).Should().Be(PieceState.Reserved);

        var again = _yard.Must("plan", "walls", "roof", "--save", "--json");

        CodesOf(again).Should().Equal(_spare.Replace(" ", "", StringComparison.Ordinal));
        State(_spare).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_reservation_by_hand_does_not_give_way()
    {
        _yard.Must("reserve", "footing", _long);
        _yard.Must("mark", "missing", _spare);

        CodesOf(_yard.Must("plan", "--json")).Should().Equal(_stub.Replace(" ", "", StringComparison.Ordinal), "");
        _yard.Must("plan", "--save");
        State(_long).Should().Be(PieceState.Reserved);
    }

    [Fact]
    public void Giving_the_plan_up_frees_what_it_had_reserved()
    {
        _yard.Must("plan", "--save");
        _yard.Must("cut", "--stage", "footing");

        _yard.Must("drop", "1");

        State(_long).Should().Be(PieceState.InYard);
    }

    [Fact]
    public void A_stage_to_cut_that_cannot_be_is_refused()
    {
        _yard.Must("plan", "--save");
        _yard.Run("cut", "--stage", "roof").Error.Should().Be("the plan is not for a stage named roof\n");
        _yard.Run("cut", "--stage", "footing", "--all").Error.Should().Be("--stage goes without --all, --piece, --made and --spoilt\n");
        _yard.Must("cut", "--stage", "footing");
        _yard.Run("cut", "--stage", "footing").Error.Should().Be("nothing of this plan waits for footing\n");
    }

    // The wall's board waits in the kept plan: whoever asks why the footing's brace is bought is told of it, and what to do.
    [Fact]
    public void An_explanation_names_the_pieces_that_wait_in_another_plan()
    {
        _yard.Must("mark", "missing", _spare);
        _yard.Must("plan", "--save");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "lath: 2x4 7'");

        var told = _yard.Run("plan", "roof", "--explain", "lath").Lines;

        told.Should().Contain("Long enough, but waits in another plan").And.Contain($"  {_long} 8': waits in plan 1 for post (walls)")
            .And.Contain("  to have them, plan all its stages together: offcuts plan footing walls roof, or give plan 1 up: offcuts drop 1");
        _yard.Run("plan", "--explain", "lath").Lines.Should().NotContain("Long enough, but waits in another plan", "all are planned together");
    }

    // Poor by now, it would not serve the lath with all stages planned together either.
    [Fact]
    public void An_explanation_names_no_piece_that_could_not_serve_as_it_is_today()
    {
        _yard.Must("mark", "missing", _spare);
        _yard.Must("plan", "--save");
        _yard.Must("stage", "new", "roof");
        _yard.Must("stage", "need", "roof", "lath: 2x4 7'");
        _yard.Must("change", _long, "--condition", "poor");

        _yard.Run("plan", "roof", "--explain", "lath").Out.Should().Contain("lath (roof)").And.NotContain("waits in another plan");
    }

    private PieceState State(string code)
    {
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        return yard.Piece(Code.Parse(code).Value)!.State;
    }

    private static string[] CodesOf(Told told)
    {
        using var json = JsonDocument.Parse(told.Out);
        return [.. json.RootElement.GetProperty("pieces").EnumerateArray().Select(piece => piece.GetProperty("code").GetString()!)];
    }
}
